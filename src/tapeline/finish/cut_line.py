r"""The cut line: the seam line of a piece with its allowances outside it.

Each edge's cut line lies beside it by its allowance. At the corners (common practice in the trade, no source):

* on the fold, the cut line meets the fold, so that the unfolded piece has no step;
* at a hem, the neighbour's cut line is mirrored about the hem line, so that the hem, turned up, lies exactly on the
  piece;
* where a join says that a line (neckline, armhole) runs on across a seam, the line's cut line is mirrored about the
  seam line, so that the seam's allowance, pressed open, ends exactly on the line's cut line and the layers meet;
* where a hem meets the edge of a vent, the corner is cut off for a mitre, for both are turned back;
* elsewhere the cut lines run on until they meet; a slender point is cut off square.

::

      cut line of the neckline          The end of the shoulder's allowance, from q to r, is the mirror image about
       |        r----------------       the shoulder's seam line (s) of the neckline's cut line inside it, from q to p.
       |       /   allowance            Folded along s, r comes to lie on p. A sleeve that tapers to its hem gets the
       |      q-s-s-s-s-s-s-s-s-s       same: below the hem line it widens again, as much as it narrows above.
       |       \
        ------- p    the piece

Where the seam is not pressed open but to one side, the layers meet to the degree that the line crosses it squarely.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from tapeline.finish.corner import Arm, Corner, NoCornerError, at_fold, mirrored, mitred, run_on
from tapeline.finish.loops import without_loops
from tapeline.geometry import Line, Path, Segment, crosses_itself
from tapeline.pattern import Edge, EdgeKind, Join, Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["cut_line"]

KINK = 1e-3
"""Radians; where an edge turns more than this at one of its knots it has a corner there."""
STRAIGHT = 1e-9
"""Radians; lines that turn less than this are one line."""
LONGEST_LOOP = 1.5
"""Loops up to this times the widest allowance are cut off: an edge that turns a little too tightly, not a slot."""
NO_LENGTH_MM = 1e-6
"""Shorter than this is nothing."""


@dataclass(frozen=True, slots=True)
class _Side:
    """A stretch of one edge without a corner in it, and the line beside it."""

    edge: Edge
    path: Path
    allowance: float
    beside: Path

    @property
    def from_start(self) -> Arm:
        return Arm(self.path, self.beside, self.allowance)

    @property
    def from_end(self) -> Arm:
        return Arm(self.path.reversed(), self.beside.reversed(), self.allowance)


def cut_line(piece: Piece, allowances: Mapping[str, float], joins: Iterable[Join] = ()) -> Path:
    """The closed clockwise cut line of a piece, in mm, from the allowance in mm of each of its edges by name.

    Curves stay curves; where an edge turns a little tighter than its allowance the cut line has a small corner. The
    joins are those of the garment; only the corners on this piece count. Raises `InputError` (`allowance-too-wide`)
    when an edge turns so tightly, or is so short, that no allowance of that width fits.

    >>> from tapeline.geometry import Point
    >>> from tapeline.pattern import Cut
    >>> corners = [Point(0, 0), Point(0, 100), Point(60, 100), Point(60, 0), Point(0, 0)]
    >>> edges = [Edge(name, Path.through(a, b)) for name, a, b in zip("abcd", corners, corners[1:])]
    >>> square = Piece("square", "Square", tuple(edges), Line(corners[0], corners[1]), Cut(1))
    >>> cut_line(square, {"a": 10, "b": 10, "c": 10, "d": 20}).svg()
    'M-10,-20 L-10,110 L70,110 L70,-20 L-10,-20'
    """
    sides = [side for edge in piece.edges for side in _sides(edge, allowances[edge.name])]
    squared = {
        (line, seam) for join in joins for name, line, seam in join.corners if name == piece.name and line != seam
    }
    corners = [
        _corner(piece, before, after, squared) for before, after in zip(sides, sides[1:] + sides[:1], strict=True)
    ]
    segments: list[Segment] = []
    for side, arrive, depart in zip(sides, corners[-1:] + corners[:-1], corners, strict=True):
        segments += _trimmed(piece, side, arrive.after_mm, depart.before_mm)
        segments += depart.link
    outline = _tidied(segments)
    if crosses_itself(outline):
        outline = _tidied(without_loops(outline, LONGEST_LOOP * max(allowances.values())).segments)
        if crosses_itself(outline):
            raise _too_wide(piece, *_tightest(sides))
    return outline


def _sides(edge: Edge, allowance: float) -> list[_Side]:
    """The edge, cut at the knots where it has a corner."""
    runs: list[list[Segment]] = []
    for segment in edge.path.segments:
        if runs and abs(runs[-1][-1].direction(1).turn_to(segment.direction(0))) < KINK:
            runs[-1].append(segment)
        else:
            runs.append([segment])
    paths = [Path(tuple(run)) for run in runs]
    return [_Side(edge, path, allowance, path.offset_left(allowance) if allowance else path) for path in paths]


def _corner(piece: Piece, before: _Side, after: _Side, squared: set[tuple[str, str]]) -> Corner:
    """The rule that the two edges ask for."""
    one, other = before.from_end, after.from_start
    first, second = before.edge, after.edge
    hems = [edge.kind is EdgeKind.HEM for edge in (first, second)]
    try:
        if first.name == second.name:
            return run_on(one, other)
        if first.fold or second.fold:
            return at_fold(one, other)
        if {first.kind, second.kind} == {EdgeKind.HEM, EdgeKind.VENT}:
            return mitred(one, other)
        if hems == [False, True] or (not any(hems) and (first.name, second.name) in squared):
            return mirrored(one, other)
        if hems == [True, False] or (not any(hems) and (second.name, first.name) in squared):
            return mirrored(other, one).swapped
        return run_on(one, other)
    except NoCornerError:
        raise _too_wide(piece, before, after) from None


def _trimmed(piece: Piece, side: _Side, start_mm: float, end_mm: float) -> tuple[Segment, ...]:
    """The line beside an edge, shortened (below zero: run on) at both ends."""
    beside = side.beside
    length = beside.length
    if max(start_mm, 0.0) + max(end_mm, 0.0) >= length:
        raise _too_wide(piece, side)
    kept = beside
    if start_mm > 0 or end_mm > 0:
        kept = beside.part(max(start_mm, 0.0), length - max(end_mm, 0.0))
    # The way of the edge, not of the line beside it: that has turned back where the edge is too tight at its end.
    head = (Line(beside.start + side.path.leaves * start_mm, beside.start),) if start_mm < 0 else ()
    tail = (Line(beside.end, beside.end + side.path.arrives * -end_mm),) if end_mm < 0 else ()
    return *head, *kept.segments, *tail


def _tidied(segments: Iterable[Segment]) -> Path:
    """Closed without gaps from rounding, without stretches of no length, straight runs made one line."""
    kept: list[Segment] = []
    for segment in segments:
        if segment.start.distance_to(segment.end) < NO_LENGTH_MM and segment.length < NO_LENGTH_MM:
            continue
        here = segment
        if kept and segment.start != kept[-1].end:
            here = replace(segment, start=kept[-1].end)
        if kept and _one_line(kept[-1], here):
            kept[-1] = Line(kept[-1].start, here.end)
        else:
            kept.append(here)
    if len(kept) > 1 and _one_line(kept[-1], kept[0]):
        kept[0] = Line(kept[-1].start, kept[0].end)
        kept.pop()
    kept[-1] = replace(kept[-1], end=kept[0].start)
    return Path(tuple(kept))


def _one_line(before: Segment, after: Segment) -> bool:
    return (
        isinstance(before, Line)
        and isinstance(after, Line)
        and abs(before.direction(1).turn_to(after.direction(0))) < STRAIGHT
    )


def _tightest(sides: list[_Side]) -> list[_Side]:
    """The edge that turns inward most sharply for its allowance."""
    return [max(sides, key=lambda side: side.allowance * max(side.path.curvatures()))]


def _too_wide(piece: Piece, *sides: _Side) -> InputError:
    names = " and ".join(dict.fromkeys(f"{piece.name}.{side.edge.name}" for side in sides))
    widths = " and ".join(dict.fromkeys(f"{side.allowance:g} mm" for side in sides))
    return InputError(
        Problem(
            "allowance-too-wide",
            Severity.ERROR,
            f"an allowance of {widths} does not fit along {names}: its cut line would cross itself",
            where=names,
            hint="give it a narrower allowance",
        )
    )
