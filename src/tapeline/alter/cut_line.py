"""A `CutLine` is a line across a piece, along which it is cut; whatever lies to its left is beyond it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.alter.story import edge_named, latest, piece_named, spoken
from tapeline.geometry import Line, Path, Point, Vector
from tapeline.lengths import Length, Phrase
from tapeline.pattern import Garment, Step, StepKind
from tapeline.problems import InputError, Problem, Severity

__all__ = ["CutLine", "across", "along", "level", "through", "upright"]

REACH_MM = 5000.0
"""Farther than any piece; a cut line runs on past the paper at both ends."""
NOTHING = Length(0.0)


@dataclass(frozen=True, slots=True)
class CutLine:
    """A line that runs across a piece and past it; made by `level`, `upright`, `through` and `along`."""

    path: Path
    at: Point
    """A place on it, inside the piece: where a piece is crossed more than once, this crossing is meant."""
    says: Phrase
    """`level with front waist level`."""
    needs: tuple[str, ...]

    @property
    def straight(self) -> bool:
        """Whether it is one straight line; only along such a line can paper be spread."""
        return len(self.path.segments) == 1

    @property
    def beyond(self) -> Vector:
        """Square to it, to the side that is beyond (of a curved line: where it begins)."""
        return self.path.leaves.left

    @property
    def turned(self) -> CutLine:
        """The same line, with the other side beyond it."""
        return replace(self, path=self.path.reversed())

    def beside(self, by: Length) -> CutLine:
        """A straight line beside this one, on the side that is not beyond, so that beyond it lies as much more.

        Of a line that is bent, beside the straight line between the ends that were drawn.
        """
        knots = self.path.knots if self.straight else self.path.knots[1:-1]
        way = knots[-1] - knots[0]
        move = way.unit.left * -by.mm
        at = (self.at if self.straight else knots[0].toward(knots[-1], 0.5)) + move
        return _straight(at, way, (by, " beside the line ", *self.says), *self.needs)

    def is_beyond(self, point: Point) -> bool:
        """Whether a place lies beyond a straight line."""
        return self.beyond.dot(point - self.at) > 0


def level(garment: Garment, label: str, *, down: Length = NOTHING) -> CutLine:
    """A level line at a point, or below it; what is lower lies beyond. `down` less than nothing is above.

    Raises `InputError` (`label-unknown`, `not-a-point`).
    """
    step, point = _point(garment, label)
    return _straight(point + Vector(0, -down.mm), Vector(-1, 0), _words("level with ", step, down, "below"), step.label)


def upright(garment: Garment, label: str, *, out: Length = NOTHING) -> CutLine:
    """A line straight up and down at a point, or out from it; what is farther out lies beyond."""
    step, point = _point(garment, label)
    return _straight(
        point + Vector(out.mm, 0), Vector(0, -1), _words("up and down through ", step, out, "out from"), step.label
    )


def through(garment: Garment, first: str, second: str) -> CutLine:
    """Straight through two points and on; what lies to the left, going from the first to the second, is beyond.

    Raises `InputError` (`label-unknown`, `not-a-point`; `points-together` when both are one place).
    """
    (one, start), (two, end) = _point(garment, first), _point(garment, second)
    if start.distance_to(end) < 1.0:
        raise InputError(
            Problem(
                "points-together",
                Severity.ERROR,
                f"no line can be drawn through {spoken(first)} and {spoken(second)}: they are in one place",
                first,
                "choose two points that lie apart",
            )
        )
    says = (f"straight through {spoken(one.label)} and {spoken(two.label)}",)
    return _straight(start.toward(end, 0.5), end - start, says, one.label, two.label)


def across(garment: Garment, piece: str, one: tuple[str, float], other: tuple[str, float]) -> CutLine:
    """Straight from a share of the length of one edge to a share of another's; what lies to its left is beyond.

    Raises `InputError` (`piece-unknown`, `edge-unknown`).
    """
    whole = piece_named(garment, piece)
    start, end = (edge_named(whole, name).path.at(whole.edge(name).length * share) for name, share in (one, other))
    says = (" to ".join(f"{share:.0%} of the {spoken(name)}" for name, share in (one, other)),)
    return _straight(start.toward(end, 0.5), end - start, says)


def along(garment: Garment, label: str) -> CutLine:
    """Along a line that was drawn, straight on at both ends; what lies to its left is beyond."""
    step = latest(garment, label, StepKind.LINE)
    if step.path is None:
        raise _not_a(step, "line")
    line = step.path
    head = Line(line.start + line.leaves * -REACH_MM, line.start)
    tail = Line(line.end, line.end + line.arrives * REACH_MM)
    says = (f"along {spoken(step.label)}",)
    if len(line.segments) == 1 and isinstance(line.segments[0], Line):
        return _straight(line.at(line.length / 2), line.leaves, says, step.label)
    return CutLine(Path((head, *line.segments, tail)), line.at(line.length / 2), says, (step.label,))


def _straight(at: Point, way: Vector, says: Phrase, *needs: str) -> CutLine:
    far = way.unit * REACH_MM
    return CutLine(Path.through(at + -far, at + far), at, says, needs)


def _words(start: str, step: Step, by: Length, side: str) -> Phrase:
    name = spoken(step.label)
    return (by, f" {side} {name}") if by.mm else (f"{start}{name}",)


def _point(garment: Garment, label: str) -> tuple[Step, Point]:
    step = latest(garment, label, StepKind.POINT)
    if step.point is None:
        raise _not_a(step, "point")
    return step, step.point


def _not_a(step: Step, kind: str) -> InputError:
    return InputError(
        Problem(
            "not-a-point",
            Severity.ERROR,
            f"{spoken(step.label)} is a {step.kind}, and a {kind} is wanted here",
            step.label,
            f"name a {kind}; `tapeline draft DOCKET --steps` lists them",
        )
    )
