"""Lines that are worn as one line are drawn as one line, over the sewn seam, and then cut apart at the seam.

Drawn apart and made square to the seam, each half gets a wave that nobody asked for.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.draft.drawn import Drawn, Ray
from tapeline.draft.heading import Heading
from tapeline.draft.place import Place
from tapeline.draft.sheet import Sheet, how_curve
from tapeline.geometry import Rigid, fair_line, solve_one

__all__ = ["WornHalf", "worn_line", "worn_line_from_point"]

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


def scratch(sheet: Sheet) -> Sheet:
    """The same paper, of which nothing is kept."""
    return Sheet(lambda _step: None, sheet.name)
