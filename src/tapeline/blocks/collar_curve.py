"""The seam of a collar or stand, from the centre back to the front: bent, and as long as what it is sewn to."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.draft import LEVEL, Draft, Drawn, Place
from tapeline.lengths import Length, cm

__all__ = ["EVENLY", "FLAT_BEHIND", "CollarSeam", "collar_seam"]

BENDS_FROM = Fraction(2, 3)
"""About the shoulder: where the guide lies."""
EVENLY = Fraction(4, 9)
"""Of the whole bend, at the guide: the square of how far along it is, so that the line turns alike all the way."""
FLAT_BEHIND = Fraction(1, 3)
"""Flatter behind and rounder in front, as the neck is; how much so is our own choice of what a French curve gives."""
AHEAD = cm(3)


@dataclass(frozen=True, slots=True)
class CollarSeam:
    """The line, its ends, and a place straight on from its front end."""

    line: Drawn
    back: Place
    guide: Place
    front: Place
    ahead: Place


def collar_seam(
    d: Draft, sheet: str, length: Length, *, bend: Length, upward: bool, share: Fraction = EVENLY
) -> CollarSeam:
    """Level where it leaves the centre back, its front end bent up or down by a length; solved to be so long."""

    def draw(paper: Draft, across: Length) -> CollarSeam:
        s = paper.sheet(sheet)
        back = s.point("centre_back", "The centre back, on the fold of the cloth", s.origin)
        level_guide, level_front = back.out(across * BENDS_FROM), back.out(across)
        by = bend * share
        guide = s.point(
            "seam_guide",
            "About at the shoulder: how the seam bends",
            level_guide.up(by) if upward else level_guide.down(by),
        )
        front = s.point("centre_front", "The centre front", level_front.up(bend) if upward else level_front.down(bend))
        line = s.curve("seam_line", "Level behind, bent toward the front", back, guide, front, leave=LEVEL)
        ahead = s.point("straight_on", "Straight on from it, for the set square", line.along(length + AHEAD))
        return CollarSeam(line, back, guide, front, ahead)

    across = d.measured(
        f"{sheet}_across",
        "From the centre back to the front, level",
        d.found(
            f"{sheet}_across",
            "so far that the seam is as long as",
            lambda paper, far: draw(paper, far).line.reading().length,
            length,
            (length * 0.5, length * 1.01),
        ),
    )
    d.sheet(sheet).section("The seam")
    return draw(d, across)
