"""Cutting an outline in two along a line: which part of which edge lies on which side."""

from __future__ import annotations

from collections import Counter
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import accumulate

from tapeline.alter.cut_line import CutLine
from tapeline.alter.story import spoken
from tapeline.geometry import Cubic, Line, Path, Point, Segment
from tapeline.geometry.crossing import crossings
from tapeline.geometry.region import holds_all
from tapeline.lengths import phrase_text
from tapeline.pattern import Edge, Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["EdgePart", "OutlineCut", "closed_up", "cut_outline", "pinned"]

ON_CORNER_MM = 0.01
"""A line that comes so near a corner goes through it: a tenth of the thinnest pencil line."""
NO_LENGTH_MM = 1e-6
INSIDE = 4
"""The places between so many parts of a cut must lie inside the piece."""
MOST_KEPT = 16
"""Cuts that are remembered: a cut is looked at before it is made, and again while it is."""
LEAST_EDGE_MM = 1.0
"""A shorter edge cannot be sewn, nor seen."""


@dataclass(frozen=True, slots=True)
class EdgePart:
    """A stretch of an edge of the piece that was cut."""

    edge: Edge
    was: str
    """Name of the edge that it is a part of; its own where it is the first part on its side."""
    start_mm: float
    end_mm: float
    """Where along the old edge it lies."""
    whole: bool


@dataclass(frozen=True, slots=True)
class OutlineCut:
    """Both sides of an outline, each clockwise from one end of the cut to the other."""

    beyond: tuple[EdgePart, ...]
    kept: tuple[EdgePart, ...]
    path: Path
    """The cut inside the piece; what is beyond lies to its left, and begins at its start."""
    start_mm: float
    end_mm: float
    """Where the cut starts and ends, along the outline."""


@lru_cache(maxsize=MOST_KEPT)
def cut_outline(piece: Piece, cut: CutLine) -> OutlineCut:
    """Where a line cuts a piece.

    Raises `InputError`: `line-misses-piece`, `line-along-edge`, `line-crosses-again` (in and out more than once, and
    the line's own place is in none of it), `line-near-corner` (it would leave an edge too short to sew).
    """
    start, end = _stretch(piece, cut, _crossings(piece, cut))
    _leaves_edges(piece, cut, (start[0], end[0]))
    outline = piece.seam_line
    first, last = outline.at(start[0]), outline.at(end[0])
    path = pinned(cut.path.part(start[1], end[1]), first, last)
    places = [path.at(path.length * k / INSIDE) for k in range(1, INSIDE)]
    beside = [outline.distance_to(place) for place in places]
    if min(beside) < ON_CORNER_MM or max(beside) < LEAST_EDGE_MM or not holds_all(outline, places):
        raise _problem(
            "line-along-edge",
            piece,
            cut,
            "runs along its outline or beside it",
            "draw it through the inside of the piece",
        )
    beyond, kept = _parts(piece, start[0], end[0]), _parts(piece, end[0], start[0])
    return OutlineCut(_between(beyond, first, last), _between(kept, last, first), path, start[0], end[0])


def _crossings(piece: Piece, cut: CutLine) -> list[tuple[float, float]]:
    """Places in mm along the outline and along the line, in order along the line."""
    corners = [0.0, *accumulate(edge.length for edge in piece.edges)]
    total = corners[-1]
    found: list[tuple[float, float]] = []
    for place, along in sorted(crossings(piece.seam_line, cut.path), key=lambda pair: pair[1]):
        near = min(corners, key=lambda corner: abs(corner - place))
        if abs(near - place) < ON_CORNER_MM:
            place = near % total if total - near > ON_CORNER_MM else 0.0  # noqa: PLW2901 - the same place
        if all(abs(place - there) > ON_CORNER_MM for there, _ in found):
            found.append((place, along))
    return found


def _leaves_edges(piece: Piece, cut: CutLine, places: tuple[float, float]) -> None:
    for place in places:
        apart = min(abs(corner - place) for corner in (0.0, *accumulate(edge.length for edge in piece.edges)))
        if ON_CORNER_MM < apart < LEAST_EDGE_MM:
            raise _problem(
                "line-near-corner",
                piece,
                cut,
                f"comes within {apart:.1f} mm of a corner and would leave an edge too short to sew",
                "draw it through the corner, or a centimetre beside it",
            )


def _stretch(
    piece: Piece, cut: CutLine, found: list[tuple[float, float]]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The one stretch of the line inside the piece that is meant."""
    if len(found) < 2:
        raise _problem(
            "line-misses-piece",
            piece,
            cut,
            "does not cross it",
            "choose a line that goes in at one edge and out at another",
        )
    if len(found) == 2:
        return found[0], found[1]
    here = cut.path.length_to(cut.at)
    pairs = list(zip(found[::2], found[1::2], strict=False))
    for one, two in pairs:
        if one[1] - ON_CORNER_MM <= here <= two[1] + ON_CORNER_MM and len(found) % 2 == 0:
            return one, two
    raise _problem(
        "line-crosses-again",
        piece,
        cut,
        f"meets its outline {len(found)} times, and nothing says which crossing is meant",
        "draw it through a point inside the stretch that is meant",
    )


def _parts(piece: Piece, start: float, end: float) -> tuple[EdgePart, ...]:
    """Edges and parts of edges, clockwise from one place on the outline to another."""
    lengths = [edge.length for edge in piece.edges]
    total = sum(lengths)
    end = end if end > start else end + total
    found: list[EdgePart] = []
    before = 0.0
    for edge, length in zip((*piece.edges, *piece.edges), (*lengths, *lengths), strict=True):
        low, high = max(start - before, 0.0), min(end - before, length)
        if high - low > ON_CORNER_MM / 2:
            whole = high - low > length - ON_CORNER_MM / 2
            part = edge if whole else replace(edge, path=edge.path.part(low, high))
            found.append(EdgePart(part, edge.name, 0.0 if whole else low, length if whole else high, whole))
        before += length
    return _named_apart(found)


def _between(parts: tuple[EdgePart, ...], start: Point, end: Point) -> tuple[EdgePart, ...]:
    """The parts with their outer ends exactly on the ends of the cut, so that the outlines close."""
    found = list(parts)
    for at, place in ((0, start), (-1, end)):
        edge = found[at].edge
        ends = (place, edge.path.end) if at == 0 else (edge.path.start, place)
        if not found[at].whole or (edge.path.start, edge.path.end) != ends:
            found[at] = replace(found[at], edge=replace(edge, path=pinned(edge.path, *ends)))
    return tuple(found)


def _named_apart(parts: list[EdgePart]) -> tuple[EdgePart, ...]:
    """An edge that comes twice on one side gets a number the second time."""
    seen: Counter[str] = Counter()
    named = []
    for part in parts:
        seen[part.was] += 1
        name = part.was if seen[part.was] == 1 else f"{part.was}_{seen[part.was]}"
        named.append(replace(part, edge=replace(part.edge, name=name)))
    return tuple(named)


def pinned(path: Path, start: Point, end: Point) -> Path:
    """The path with its ends exactly where they are to be; they are there but for rounding.

    A stretch at a knot may begin or end with a segment of no length, which has no direction: it is left out.
    """
    path = Path(tuple(s for s in path.segments if s.length > NO_LENGTH_MM) or path.segments)
    first, last = path.segments[0], path.segments[-1]
    if len(path.segments) == 1:
        return Path((_with_ends(first, start, end),))
    return Path((_with_ends(first, start, first.end), *path.segments[1:-1], _with_ends(last, last.start, end)))


def closed_up(piece: Piece, drawn: AbstractSet[str]) -> Piece:
    """The piece with its drawn edges ending exactly where their neighbours begin, which rounding may have moved apart.

    The other edges stay as they are.
    """
    edges = list(piece.edges)
    for at, edge in enumerate(edges):
        if edge.name in drawn:
            start, end = edges[at - 1].path.end, edges[(at + 1) % len(edges)].path.start
            apart = max(start.distance_to(edge.path.start), end.distance_to(edge.path.end))
            if 0 < apart < NO_LENGTH_MM:
                edges[at] = replace(edge, path=pinned(edge.path, start, end))
    return replace(piece, edges=tuple(edges))


def _with_ends(segment: Segment, start: Point, end: Point) -> Segment:
    if isinstance(segment, Line):
        return Line(start, end)
    return Cubic(start, segment.out, segment.into, end)


def _problem(code: str, piece: Piece, cut: CutLine, what: str, hint: str) -> InputError:
    line = phrase_text(cut.says)
    return InputError(
        Problem(
            code,
            Severity.ERROR,
            f"the line {line} is to cut the {spoken(piece.name)}, but {what}; a cut goes in at one place of the "
            "outline and out at another",
            piece.name,
            hint,
        )
    )
