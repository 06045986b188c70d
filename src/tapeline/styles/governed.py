"""Which lines of a docket govern which points of the drawing, and which way a point goes when the line grows.

The page puts a handle on each; the tests draft with the line changed and measure that the point goes as is said here.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.geometry import Vector
from tapeline.lengths import Length
from tapeline.pattern import Choice, Garment, choices_of

__all__ = ["GOVERNED", "Governed", "Handle", "handles"]

_WAYS = {"down": Vector(0, -1), "up": Vector(0, 1), "out": Vector(1, 0), "inward": Vector(-1, 0)}


@dataclass(frozen=True, slots=True)
class Governed:
    """A point goes one way, a millimetre for each millimetre more of a choice."""

    label: str
    """Of the point."""
    keys: tuple[str, ...]
    """Of the choice, below `garment`."""
    way: str
    """`down`, `up`, `out`, `inward`, or the line of the same piece along which it goes."""


GOVERNED = (
    Governed("front.neckline_centre", ("neckline", "lower_front"), "down"),
    Governed("front.neckline_shoulder", ("neckline", "widen"), "shoulder_line"),
    Governed("front.front_shoulder_tip", ("looseness", "shoulder"), "shoulder_line"),
    Governed("front.underarm", ("looseness", "side"), "out"),
    Governed("front.underarm", ("looseness", "drop"), "down"),
    Governed("front.side_waist", ("waist",), "inward"),
    Governed("front.hem_centre", ("length",), "down"),
    Governed("back.neckline_centre", ("neckline", "lower_back"), "down"),
    Governed("back.neckline_shoulder", ("neckline", "widen"), "shoulder_line"),
    Governed("back.back_shoulder_tip", ("looseness", "shoulder"), "shoulder_line"),
    Governed("back.underarm", ("looseness", "side"), "out"),
    Governed("back.underarm", ("looseness", "drop"), "down"),
    Governed("back.side_waist", ("waist",), "inward"),
    Governed("back.hem_centre", ("length",), "down"),
    Governed("sleeve.hem_level", ("sleeve", "length"), "down"),
    Governed("neckband.band_fold", ("band", "width"), "up"),
)
"""For every style; a style without the choice or the point has no such handle."""


@dataclass(frozen=True, slots=True)
class Handle:
    """A governed point of one garment, with the choice as it stands."""

    label: str
    keys: tuple[str, ...]
    """As in the docket: `garment`, `neckline`, `widen`."""
    way: Vector
    """One millimetre long, in the axes of the piece."""
    now_mm: float
    limits: Choice
    """In cm."""


def handles(garment: Garment, choices: Any) -> list[Handle]:  # noqa: ANN401 - any style's own choices
    """The governed points that a garment has."""
    steps = {step.label: step for step in garment.steps}
    made = []
    for row in GOVERNED:
        found = _choice(choices, row.keys)
        if row.label not in steps or found is None:
            continue
        value, limits = found
        length = steps["sleeve_length"].lengths[0] if isinstance(value, SleeveLength) else value
        way = _WAYS.get(row.way)
        if way is None:
            path = steps[f"{steps[row.label].sheet}.{row.way}"].path
            assert path is not None
            way = path.leaves
        made.append(Handle(row.label, ("garment", *row.keys), way, length.mm, limits))
    return made


def _choice(choices: Any, keys: tuple[str, ...]) -> tuple[Any, Choice] | None:  # noqa: ANN401 - any style's own choices
    for key in keys[:-1]:
        choices = getattr(choices, key, None)
    value = getattr(choices, keys[-1], None)
    if not isinstance(value, Length | SleeveLength):
        return None
    return value, choices_of(type(choices))[keys[-1]]
