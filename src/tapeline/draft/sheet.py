"""A `Sheet` is the paper on which one piece is drawn; every mark on it is recorded as a step."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import reduce
from typing import TypeVar

from tapeline.draft.drawn import Drawn, Ray
from tapeline.draft.heading import Heading
from tapeline.draft.place import Place, needs_of
from tapeline.geometry import Line, Path, Point, Vector, fair_line
from tapeline.lengths import Length
from tapeline.pattern import Cut, Edge, EdgeKind, EdgeRef, Mark, Notch, NotchKind, Piece, Seam, Step, StepKind

__all__ = ["Sheet"]

Thing = TypeVar("Thing")

NO_EASE = Length(0.0)
COMMON_PRACTICE = "common practice, no published source"
ROUNDING_MM = 1e-9
"""Less is no length."""
CLOSED_MM = 1e-6
"""Edges of a piece meet within this; more is a fault of ours, not of the maker's."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Paper for one piece: the centre line is vertical, up is up, out is to the side."""

    record: Callable[[Step], None]
    name: str
    source: str = COMMON_PRACTICE
    """Where the rules of its page come from."""

    @property
    def origin(self) -> Place:
        """Where drawing begins."""
        return Place(Point(0, 0), how=("anywhere near the top of the centre line",))

    @property
    def centre(self) -> Ray:
        """The centre line."""
        return Ray(Place(Point(0, 0), f"{self.name}.centre"), Vector(0, -1), f"{self.name}.centre")

    def section(self, title: str) -> None:
        """Begin a group of steps."""
        self.record(Step(StepKind.SECTION, f"{self.name}.{title}", title))

    def point(self, name: str, says: str, at: Place) -> Place:
        """Mark a point."""
        label = f"{self.name}.{name}"
        self.record(Step(StepKind.POINT, label, says, at.how, at.lengths, at.needs, self.source, point=at.point))
        return Place(at.point, label)

    def ray(self, name: str, says: str, start: Place, fall: Length, run: Length) -> Ray:
        """A line from a place outward, falling by one length over another."""
        ray = Ray(start, Vector(run.mm, -fall.mm).unit, f"{self.name}.{name}")
        self.record(
            Step(
                StepKind.LINE,
                ray.label,
                says,
                (f"from {start.name}, falling ", fall, " over ", run),
                (fall,) if fall.operator or fall.name else (),
                (start.label, *needs_of(fall)),
                self.source,
                path=Path.through(start.point, start.point + ray.direction * (run.mm * 1.5)),
            )
        )
        return ray

    def ray_through(self, name: str, says: str, start: Place, through: Place) -> Ray:
        """A line from a place outward, through another."""
        way = through.point - start.point
        ray = Ray(start, way.unit, f"{self.name}.{name}")
        path = Path.through(start.point, start.point + way * 1.5)
        how, needs = (f"from {start.name} through {through.name}",), (start.label, through.label)
        self.record(Step(StepKind.LINE, ray.label, says, how, (), needs, self.source, path=path))
        return ray

    def straight(self, name: str, says: str, *through: Place) -> Drawn:
        """A straight line (or several, corner to corner)."""
        path = Path.through(*(place.point for place in through))
        how = f"straight from {' to '.join(place.name for place in through)}"
        return self.drawn(name, says, path, (how,), tuple(place.label for place in through))

    def curve(
        self, name: str, says: str, *through: Place, leave: Heading | None = None, arrive: Heading | None = None
    ) -> Drawn:
        """A fair line through places, leaving and arriving by a heading or freely."""
        points = [place.point for place in through]
        path = fair_line(
            points,
            leave.going(points[1] - points[0]) if leave else None,
            arrive.going(points[-1] - points[-2]) if arrive else None,
        )
        return self.drawn(name, says, path, (how_curve(through, leave, arrive),), tuple(p.label for p in through))

    def curve_in_two(
        self,
        names: tuple[str, str],
        says: str,
        first: tuple[Place, ...],
        then: tuple[Place, ...],
        *,
        leave: Heading | None = None,
        arrive: Heading | None = None,
    ) -> tuple[Drawn, Drawn]:
        """One fair line that is named in two parts; the second begins where the first ends."""
        through = (*first, *then[1:])
        points = [place.point for place in through]
        path = fair_line(
            points,
            leave.going(points[1] - points[0]) if leave else None,
            arrive.going(points[-1] - points[-2]) if arrive else None,
        )
        how, needs = (how_curve(through, leave, arrive),), tuple(p.label for p in through)
        one, two = path.split_at_knot(len(first) - 1)
        return self.drawn(names[0], says, one, how, needs), self.drawn(names[1], says, two, how, needs)

    def cross(self, name: str, says: str, at: Place, arm: Length) -> Drawn:
        """Mark a place with a small cross, for an eyelet, a button or the corner of a pocket."""
        level = at.inward(arm), at.out(arm)
        path = Path.through(*(p.point for p in (*level, at, at.up(arm), at.down(arm))))
        return self.drawn(name, says, path, (f"a cross on {at.name}",), (at.label,))

    def cut(self, names: tuple[str, str], says: tuple[str, str], line: Drawn, at: Place) -> tuple[Drawn, Drawn]:
        """A line cut in two at a place on it."""
        along = line.path.length_to(at.point)
        ends = ((0.0, along), (along, line.path.length))
        one, two = (
            self.drawn(
                name, why, line.path.part(*part), (f"the {line.name}, cut at {at.name}",), (line.label, at.label)
            )
            for name, why, part in zip(names, says, ends, strict=True)
        )
        return one, two

    def upright(self, name: str, says: str, through: Place, above: Length, length: Length) -> Drawn:
        """A short line straight down through a place, beginning a little above it, as a buttonhole does."""
        top = through.up(above)
        path = Path.through(top.point, top.down(length).point)
        how = (f"straight down through {through.name}, from ", above, " above it, ", length, " long")
        return self.drawn(name, says, path, how, (through.label, *needs_of(above), *needs_of(length)))

    def joined(self, name: str, says: str, *lines: Drawn) -> Drawn:
        """Lines end to end as one; a line without length adds none, so that the one before still says where to."""
        path = reduce(Path.joined, [line.path for line in lines if line.path.length] or [lines[0].path])
        how = f"{' and '.join(line.name for line in lines)} as one line"
        return self.drawn(name, says, path, (how,), tuple(line.label for line in lines))

    def part(self, name: str, says: str, line: Drawn, of: float | tuple[float, float], *ends: Place) -> Drawn:
        """A line as far as a length in mm, or between two, where its named ends lie."""
        start, end = of if isinstance(of, tuple) else (0.0, of)
        how = f"the {line.name}, to {ends[0].name}" if len(ends) == 1 else f"the {line.name}, from "
        how += " to ".join(place.name for place in ends) if len(ends) > 1 else ""
        needs = (line.label, *(place.label for place in ends))
        return self.drawn(name, says, line.path.part(start, end), (how,), needs)

    def as_long(self, name: str, says: str, line: Drawn, length: Length) -> Drawn:
        """A line cut off at a length, or run on straight to it."""
        path, more = line.path, length.mm - line.path.length
        if more > ROUNDING_MM:
            path = path.joined(Path.through(path.end, path.end + path.arrives * more))
        elif more < -ROUNDING_MM:
            path = path.part(0, length.mm)
        how = (f"the {line.name}, cut off or run on straight so that it measures ", length)
        return self.drawn(name, says, path, how, (line.label, *needs_of(length)))

    def drawn(
        self, name: str, says: str, path: Path, how: tuple[str | Length, ...] = (), needs: tuple[str, ...] = ()
    ) -> Drawn:
        """Record a line that has been found another way."""
        label = f"{self.name}.{name}"
        self.record(Step(StepKind.LINE, label, says, how, (), needs, self.source, path=path))
        return Drawn(label, path)

    def piece(
        self,
        title: str,
        *edges: Edge,
        grain: tuple[Place, Place],
        cut: Cut,
        notches: tuple[Notch, ...] = (),
        marks: tuple[Mark, ...] = (),
        pointed: tuple[str, ...] = (),
    ) -> Piece:
        """Close the outline: edges clockwise, each beginning where the one before ends."""
        for before, after in zip(edges, (*edges[1:], edges[0]), strict=True):
            gap = before.path.end.distance_to(after.path.start)
            if gap > CLOSED_MM:
                raise AssertionError(f"{self.name}: {before.name} ends {gap:.3f} mm from where {after.name} begins")
        return Piece(self.name, title, edges, Line(grain[0].point, grain[1].point), cut, notches, marks, pointed)


def sewn(name: str, line: Drawn, allowance: Length | None = None) -> Edge:
    """An edge that is sewn; its allowance, where it is part of how it is sewn."""
    return Edge(name, line.path, allowance_mm=allowance.mm if allowance else None)


def folded(name: str, line: Drawn) -> Edge:
    """An edge on the fold of the cloth."""
    return Edge(name, line.path, EdgeKind.FOLD)


def hemmed(name: str, line: Drawn, depth: Length | None = None) -> Edge:
    """An edge that is turned up; how deep, where it is not as deep as the other hems."""
    return Edge(name, line.path, EdgeKind.HEM, depth.mm if depth else None)


def neatened(name: str, line: Drawn) -> Edge:
    """An edge that is sewn to nothing."""
    return Edge(name, line.path, EdgeKind.NEATENED)


def laid(name: str, line: Drawn) -> Edge:
    """An edge that is turned under and stitched flat on another piece."""
    return Edge(name, line.path, EdgeKind.LAID)


def opened(name: str, line: Drawn) -> Edge:
    """An edge of a slit, turned back."""
    return Edge(name, line.path, EdgeKind.VENT)


def notch(edge: str, line: Drawn, at: Place, kind: NotchKind = NotchKind.SINGLE) -> Notch:
    """A notch on an edge, where a place lies on its line."""
    return Notch(edge, line.path.length_to(at.point), kind)


def notch_along(edge: str, along: Length, kind: NotchKind = NotchKind.SINGLE) -> Notch:
    """A notch a length along an edge from its start."""
    return Notch(edge, along.mm, kind)


def edge(piece: str, name: str) -> EdgeRef:
    """An edge of a piece, to be sewn; `.backward` walks it from its other end."""
    return EdgeRef(piece, name)


def seam(
    name: str, a: EdgeRef, *b: EdgeRef, ease: Length = NO_EASE, reason: str = "", stretch: float | None = None
) -> Seam:
    """Sew one edge to a run of others; the first is longer by the ease, and its cloth stretches by so many per cent."""
    return Seam(name, (a,), b, ease, reason, stretch)


def only_if(there: bool, thing: Thing) -> tuple[Thing, ...]:  # noqa: FBT001 - reads as a sentence
    """The thing, where there is one."""
    return (thing,) if there else ()


def how_curve(through: tuple[Place, ...], leave: Heading | None, arrive: Heading | None) -> str:
    """The curve in words."""
    first, *middle, last = (place.name for place in through)
    words = f"a fair line from {first}" + (f", leaving {leave.says}," if leave else "")
    words += f" through {', '.join(middle)}" if middle else ""
    return f"{words} to {last}" + (f", arriving {arrive.says}" if arrive else "")
