"""Tracing off: what is drawn on one sheet goes through onto another, which is turned under it."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.draft.drawn import Drawn
from tapeline.draft.place import Place
from tapeline.draft.sheet import Sheet
from tapeline.geometry import Point, Rigid, Vector

__all__ = ["Tracing", "upright"]


@dataclass(frozen=True, slots=True)
class Tracing:
    """A sheet that lies under another: where things come to lie on it."""

    sheet: Sheet
    move: Rigid
    how: str

    def point(self, name: str, says: str, place: Place) -> Place:
        """A point, pricked through."""
        at = Place(self.move.point(place.point), how=(f"{place.name}, {self.how}",), needs=(place.label,))
        return self.sheet.point(name, says, at)

    def line(self, name: str, says: str, line: Drawn) -> Drawn:
        """A line, traced off."""
        return self.sheet.drawn(name, says, line.path.moved(self.move), (f"{line.name}, {self.how}",), (line.label,))


def upright(sheet: Sheet, top: Place, below: Place) -> Tracing:
    """The sheet so turned that a line of the other one runs straight down on it, from where drawing begins.

    >>> paper = Sheet(lambda step: None, "sleeve")
    >>> under = upright(paper, Place(Point(5, 5), "front.tip"), Place(Point(9, 5), "front.foot"))
    >>> foot = under.point("foot", "The foot", Place(Point(9, 5), "front.foot")).point
    >>> round(foot.x, 9), round(foot.y, 9)
    (0.0, -4.0)
    """
    move = Rigid.laying(top.point, below.point - top.point, Point(0, 0), Vector(0, -1))
    return Tracing(sheet, move, f"traced off, the paper turned so that the line {top.name} - {below.name} is upright")
