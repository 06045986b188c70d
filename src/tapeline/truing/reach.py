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
    """0 for a sleeve that is cut in one: it has no cap."""
    width_mm: float
    angle: float
    means: str
    reach: float | None = None
    """For a sleeve cut in one: to which angle below the level the arm lifts before the underarm pulls, radians."""

    @property
    def lifts_to(self) -> str:
        """The reach in words; empty where there is none.

        >>> Hang(0, 400, 0.7, "flat", math.radians(20)).lifts_to, Hang(0, 400, 0.7, "flat", math.radians(-5)).lifts_to
        ('20 degrees below the level', '5 degrees above the level')
        """
        if self.reach is None:
            return ""
        return f"{abs(math.degrees(self.reach)):.0f} degrees {'below' if self.reach >= 0 else 'above'} the level"


RUN_MM = 140.0
"""Falls are told over 14 cm."""


def sleeve_hang(garment: Garment) -> Hang | None:
    """Angle of the straight line from underarm to crown, or at which a sleeve that is cut in one was drawn.

    None for a garment without sleeves.
    """
    sizes = {size.name: size.length.mm for size in garment.sizes}
    if "arm_fall" in sizes:
        # Cut in one, what the sleeve is like depends on how far the arm lifts, not on how it lies.
        angle, reach = (math.atan2(sizes[name], RUN_MM) for name in ("arm_fall", "arm_reach_fall"))
        means = next(words for limit, words in _MEANINGS if math.degrees(reach) <= limit)
        return Hang(0.0, sizes["sleeve_width"], angle, means, reach)
    if "cap_height" not in sizes:
        return None
    height, width = sizes.get("lower_cap_height", sizes["cap_height"]), sizes["sleeve_width"]
    angle = math.atan2(height, width / 2)
    means = next(words for limit, words in _MEANINGS if math.degrees(angle) <= limit)
    return Hang(height, width, angle, means)


def hang_note(hang: Hang) -> Problem:
    """The hang, in words; where a sleeve is cut in one, also how far the arm lifts."""
    hangs = f"the sleeve hangs at {math.degrees(hang.angle):.0f} degrees"
    if hang.lifts_to:
        return Problem(
            "sleeve-hang",
            Severity.NOTE,
            f"{hangs}, and the arm lifts to {hang.lifts_to} before the underarm pulls: {hang.means}",
            "arm",
            "a smaller garment.arm.hang, a larger garment.arm.curve or a gusset lets the arm lift further",
        )
    return Problem(
        "sleeve-hang",
        Severity.NOTE,
        f"{hangs}: {hang.means}",
        "sleeve",
        "a higher share in garment.sleeve.cap hangs neater and reaches less",
    )
