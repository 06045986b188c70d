"""What lies at the centre of a half: the fold of the cloth, or an edge that opens."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tapeline.blocks.dartless import Half
from tapeline.draft import Draft, Drawn, Place, Reading, Sheet, folded
from tapeline.pattern import Cut, Edge, Mark

__all__ = ["ON_THE_FOLD", "Centre", "CentreRule", "HalfLines"]


@dataclass(frozen=True, slots=True)
class HalfLines:
    """What a half is made of, for its centre to be drawn: the centre goes up, the neckline out, the hem in."""

    half: Half
    neck_point: Place
    """Where the shoulder meets the neck, on the body."""
    round_the_neck: Reading
    """Half the neckline, front and back."""
    neckline_centre: Place
    hem_centre: Place
    centre: Drawn
    neckline: Drawn
    shoulder: Drawn
    hem: Drawn
    side: Drawn
    pit: Place
    """The pit of the neck, or the nape: where the body's own neckline meets the centre."""


@dataclass(frozen=True, slots=True)
class Centre:
    """The edges from the hem's end to the neckline's beginning, clockwise, and what is left of the neckline."""

    edges: tuple[Edge, ...]
    neckline: Drawn
    cut: Cut
    marks: tuple[Mark, ...] = ()
    hem: Drawn | None = None
    """What is left of the hem, where the front is cut back."""


@dataclass(frozen=True, slots=True)
class CentreRule:
    """Draws the centre of a half."""

    says: str
    """Of the centre line: `{}` stands for back or front."""
    draw: Callable[[Draft, Sheet, HalfLines], Centre]


def _on_the_fold(_d: Draft, _sheet: Sheet, lines: HalfLines) -> Centre:
    return Centre((folded("centre", lines.centre),), lines.neckline, Cut(1))


ON_THE_FOLD = CentreRule("The centre {} lies on the fold of the cloth", _on_the_fold)
