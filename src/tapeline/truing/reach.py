"""How a sleeve hangs, and how far the arm reaches in it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.pattern import Garment
from tapeline.problems import Problem, Severity

__all__ = ["Hang", "hang_note", "sleeve_hang"]

_MEANINGS = (
    (25, "flat: the arm lifts freely, with cloth in folds under it when it hangs"),
    (35, "easy: the arm lifts well, with a little cloth under it when it hangs"),
    (45, "neat: hangs with few folds; lifting the arm pulls at the side"),
    (90, "formal: hangs smooth; lifting the arm lifts the garment"),
)
"""Up to which angle in degrees a sleeve hangs how; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Hang:
    """A sleeve's cap height in mm, width in mm, and the angle in radians at which it hangs from the level."""

    cap_height_mm: float
    width_mm: float
    angle: float
    means: str


def sleeve_hang(garment: Garment) -> Hang | None:
    """Angle of the straight line from underarm to crown; None for a garment without a set-in sleeve."""
    sizes = {size.name: size.length.mm for size in garment.sizes}
    if "cap_height" not in sizes:
        return None
    height, width = sizes.get("lower_cap_height", sizes["cap_height"]), sizes["sleeve_width"]
    angle = math.atan2(height, width / 2)
    means = next(words for limit, words in _MEANINGS if math.degrees(angle) <= limit)
    return Hang(height, width, angle, means)


def hang_note(hang: Hang) -> Problem:
    """The hang, in words."""
    return Problem(
        "sleeve-hang",
        Severity.NOTE,
        f"the sleeve hangs at {math.degrees(hang.angle):.0f} degrees: {hang.means}",
        "sleeve",
        "a higher share in garment.sleeve.cap hangs neater and reaches less",
    )
