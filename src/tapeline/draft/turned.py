"""The cloth folded along a line: where places and lines come to lie on the other side of it."""

from __future__ import annotations

from tapeline.draft.drawn import Drawn
from tapeline.draft.place import Place
from tapeline.draft.sheet import Sheet
from tapeline.geometry import Rigid

__all__ = ["opposite", "part_from", "part_to", "traced", "turned"]


def opposite(place: Place, fold: Drawn) -> Place:
    """Where a place comes to lie when the paper is folded along a straight line.

    >>> from tapeline.geometry import Path, Point
    >>> edge = Drawn("front.edge", Path.through(Point(-10, 0), Point(-10, 90)))
    >>> opposite(Place(Point(30, 20), "front.neck"), edge).point
    Point(x=-50.0, y=20.0)
    """
    return Place(
        _over(fold).point(place.point),
        how=(f"{place.name}, with the paper folded along the {fold.name}",),
        needs=(place.label, fold.label),
    )


def turned(sheet: Sheet, name: str, says: str, line: Drawn, fold: Drawn) -> Drawn:
    """A line as it comes to lie when the paper is folded along another, straight one."""
    how = f"the {line.name} traced through, with the paper folded along the {fold.name}"
    return sheet.drawn(name, says, line.path.moved(_over(fold)), (how,), (line.label, fold.label))


def part_to(sheet: Sheet, name: str, says: str, line: Drawn, end: Place) -> Drawn:
    """What there is of a line from its start to a place on it."""
    path = line.path.part(0, line.path.length_to(end.point))
    return sheet.drawn(name, says, path, (f"the {line.name} as far as {end.name}",), (line.label, end.label))


def part_from(sheet: Sheet, name: str, says: str, line: Drawn, start: Place) -> Drawn:
    """What there is of a line from a place on it to its end."""
    path = line.path.part(line.path.length_to(start.point), line.path.length)
    return sheet.drawn(name, says, path, (f"the {line.name} from {start.name} on",), (line.label, start.label))


def traced(sheet: Sheet, name: str, says: str, line: Drawn) -> Drawn:
    """A line of another sheet, traced onto this one, which lies under it with the centre lines on each other."""
    return sheet.drawn(name, says, line.path, (f"the {line.full_name}, traced through",), (line.label,))


def _over(fold: Drawn) -> Rigid:
    return Rigid.over(fold.path.start, fold.path.end - fold.path.start)
