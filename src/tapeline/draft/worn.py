"""Lines that are worn as one line are drawn as one line, over the sewn seam, and then cut apart at the seam.

Drawn apart and made square to the seam, each half gets a wave that nobody asked for.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from tapeline.draft.drawn import Drawn, Ray
from tapeline.draft.heading import Heading
from tapeline.draft.place import Place, needs_of
from tapeline.draft.sheet import Sheet, how_curve
from tapeline.geometry import Line, Path, Point, Rigid, fair_line, solve_one
from tapeline.geometry.beside import beside
from tapeline.lengths import Length

__all__ = [
    "WornEdge",
    "WornHalf",
    "arc_centre",
    "laid_on",
    "over_seam",
    "worn_beside",
    "worn_line",
    "worn_line_from_point",
]

MOST_TURN = 0.5
"""A line leaves its point within so many radians of the way it is meant to go."""


@dataclass(frozen=True, slots=True)
class WornHalf:
    """One side of a line over a seam: places from the free end to the seam, the seam's line, how the free end goes."""

    sheet: Sheet
    through: tuple[Place, ...]
    seam: Ray
    end: Heading


def worn_line(name: str, says: str, one: WornHalf, other: WornHalf) -> tuple[Drawn, Drawn]:
    """Draw one line over a seam; returns both halves, each from its free end to the seam.

    The other sheet is turned over and laid against the first with the seam lines matched.
    """
    joint = one.through[-1]
    lay = Rigid.laying(other.through[-1].point, other.seam.direction, joint.point, one.seam.direction, turned_over=True)
    knots = [p.point for p in one.through] + [lay.point(p.point) for p in reversed(other.through[:-1])]
    free_end = other.through[0].point - other.through[1].point
    line = fair_line(
        knots,
        one.end.going(knots[1] - knots[0]),
        lay.vector(other.end.going(free_end)),
    )
    near, far = line.split_at_knot(len(one.through) - 1)
    far = far.moved(lay.back).reversed()
    together = f"one line with the {other.sheet.name} laid on, shoulder on shoulder: "
    halves = []
    for half, path, partner in ((one, near, other), (other, far, one)):
        how = together.replace(other.sheet.name, partner.sheet.name) + how_curve(half.through, half.end, None)
        needs = tuple(place.label for place in (*half.through, *partner.through))
        halves.append(half.sheet.drawn(name, says, path, (how,), needs))
    return halves[0], halves[1]


def worn_line_from_point(name: str, says: str, one: WornHalf, other: WornHalf) -> tuple[Drawn, Drawn]:
    """The same for a line that begins in a point: it leaves about as `one` says, and does not bend there.

    Raises `InputError` (`cannot-be-met`) where it would have to leave quite another way.
    """

    def leaving(turn: float, first: Sheet, second: Sheet) -> tuple[Drawn, Drawn]:
        end = replace(one.end, direction=one.end.direction.turned(turn))
        return worn_line(name, says, replace(one, sheet=first, end=end), replace(other, sheet=second))

    def bend(turn: float) -> float:
        return leaving(turn, scratch(one.sheet), scratch(other.sheet))[0].path.curvatures()[0]

    turn = solve_one(bend, -MOST_TURN, MOST_TURN, "the way the line leaves its point")
    return leaving(turn, one.sheet, other.sheet)


def over_seam(line: Drawn, seam: Ray, other: Ray) -> Heading:
    """How a line on the other sheet must arrive at the seam to go on there as this line, arriving, leaves off."""
    lay = Rigid.laying(seam.start.point, seam.direction, other.start.point, other.direction, turned_over=True)
    return Heading(-lay.vector(line.path.arrives), f"as the {line.full_name} goes on, seam on seam")


def laid_on(place: Place, seam: Ray, other: Ray) -> Place:
    """Where a place of one sheet lies on the other, when they are laid face to face with the seams matched.

    Both halves are drawn with their centre on the same side, so that nothing is turned over.
    """
    lay = Rigid.laying(seam.start.point, seam.direction, other.start.point, other.direction)
    return Place(
        lay.point(place.point),
        how=(f"where {place.name} of the other lies, seam on seam, {seam.start.name} on {other.start.name}",),
        needs=(place.label, seam.label, other.label, other.start.label),
    )


def arc_centre(end: Place, arrive: Heading) -> Place:
    """Where, on the centre line, a single arc begins level that arrives at a place by a heading."""
    slope = arrive.direction.y / arrive.direction.x
    # A chord turns half as much as its arc.
    half = slope / (1 + math.hypot(1, slope))
    return Place(
        Point(0, end.point.y - end.point.x * half),
        how=(f"on the centre line, from where one arc comes level and meets {end.name} {arrive.says}",),
        needs=(end.label,),
    )


@dataclass(frozen=True, slots=True)
class WornEdge:
    """One side of an edge over a seam that something is cut beside: new paper, the edge up to the seam, the seam."""

    sheet: Sheet
    edge: Drawn
    seam: Ray


def worn_beside(name: str, says: str, one: WornEdge, other: WornEdge, by: Length) -> tuple[Drawn, Drawn]:
    """The line beside an edge that runs over a seam, to its right, cut apart at the seam and ended at both centres.

    Each begins on the centre of its own sheet: where the edge meets the centre in a point, the line beside it runs on
    straight until it meets it too.
    """
    joint = one.edge.path.end
    lay = Rigid.laying(other.edge.path.end, other.seam.direction, joint, one.seam.direction, turned_over=True)
    whole = one.edge.path.joined(other.edge.path.moved(lay).reversed())
    whole = beside(whole, -by.mm)
    meant = joint + one.seam.direction * by.mm
    cut = min(whole.crossings(Line(joint, meant)), key=meant.distance_to)
    along = whole.length_to(cut)
    near, far = whole.part(0, along), whole.part(along, whole.length).moved(lay.back).reversed()
    halves = []
    for half, path, partner in ((one, near, other), (other, far, one)):
        how = (
            f"beside the {half.edge.full_name} by ",
            by,
            f", the {partner.edge.full_name} laid on, seam on seam",
        )
        needs = (half.edge.label, partner.edge.label, *needs_of(by))
        halves.append(half.sheet.drawn(name, says, from_centre(path), how, needs))
    return halves[0], halves[1]


def from_centre(path: Path) -> Path:
    """The path begun on the centre line: run on straight backward where it does not reach it."""
    start, way = path.start, path.leaves
    if start.x <= 0:
        return path
    return Path((Line(start + way * (-start.x / way.x), start), *path.segments))


def scratch(sheet: Sheet) -> Sheet:
    """The same paper, of which nothing is kept."""
    return Sheet(lambda _step: None, sheet.name)
