"""How wide a piece is at a level: what a girth is measured by."""

from __future__ import annotations

from tapeline.geometry import Line, Path, Point
from tapeline.pattern.piece import Piece

__all__ = ["width_along", "width_at"]

OF_THE_SLEEVE = ("overarm", "sleeve_hem", "underarm", "slit_sleeve")
"""Edges of a sleeve that is cut in one with a half: it reaches far out below the level of the chest."""

ON_THE_LEVEL_MM = 1e-6
RUN_UP_MM = 10.0
"""A side is run on up so far: where its seam was moved, one half's underarm lies a little below the level."""
RISES_MM = 50.0
"""A hem that lies less above a level has risen from it; one that lies more above it ends there."""


def width_along(piece: Piece, line: Path) -> float:
    """Millimetres across a piece along a straight line drawn on it, between the crossings nearest to its ends.

    >>> from tapeline.pattern import Cut, Edge
    >>> corners = [Point(0, 0), Point(0, 100), Point(60, 100), Point(60, 0), Point(0, 0)]
    >>> edges = tuple(Edge(f"edge_{i}", Path.through(a, b)) for i, (a, b) in enumerate(zip(corners, corners[1:])))
    >>> piece = Piece("panel", "Panel", edges, Line(Point(9, 9), Point(9, 90)), Cut(2))
    >>> width_along(piece, Path.through(Point(0, 20), Point(60, 100)))
    100.0
    """
    found = piece.seam_line.crossings(Line(line.start, line.end))
    one, other = (min(found, key=end.distance_to) for end in (line.start, line.end))
    return one.distance_to(other)


def width_at(piece: Piece, level: Point) -> float:
    """Millimetres across a piece at a level, from its outermost crossing to its innermost; 0 where it is not there.

    A piece with a line marked `centre` is measured from there: what laps over it lies double when worn, and what is cut
    out beside it is filled by another piece.

    >>> from tapeline.geometry import Path
    >>> from tapeline.pattern import Cut, Edge
    >>> corners = [Point(0, 0), Point(0, 100), Point(60, 100), Point(80, 0), Point(0, 0)]
    >>> edges = tuple(Edge(f"edge_{i}", Path.through(a, b)) for i, (a, b) in enumerate(zip(corners, corners[1:])))
    >>> width_at(Piece("panel", "Panel", edges, Line(Point(9, 9), Point(9, 90)), Cut(2)), Point(0, 50))
    70.0
    """
    edges = piece.edges
    if any(edge.name == "side" for edge in edges):
        edges = tuple(edge for edge in edges if edge.name not in OF_THE_SLEEVE)
    across = Line(level, Point(level.x + 1, level.y))
    xs = [p.x for edge in edges for p in edge.path.crossings(across)]
    xs += [p.x for edge in edges for p in edge.path.knots if abs(p.y - level.y) < ON_THE_LEVEL_MM]
    ends = [
        # The hem rises to the side so that it meets it square, and over a sway back to the fold, or at an
        # open front to its centre: all are run on down.
        (edge.path.end, edge.path.arrives) if edge.name == "side" else (edge.path.start, -edge.path.leaves)
        for before, edge in zip((piece.edges[-1], *piece.edges), piece.edges, strict=False)
        if edge.name in ("side", "side_mirrored") or ((edge.fold or edge.name == "centre") and before.name == "hem")
    ]
    if not xs and not (len(ends) > 1 and all(level.y < low.y < level.y + RISES_MM for low, _ in ends)):
        return 0.0
    xs += [low.x + way.x * (level.y - low.y) / way.y for low, way in ends if low.y > level.y]
    for edge in piece.edges:
        high = edge.path.start
        if edge.name == "side" and ON_THE_LEVEL_MM < level.y - high.y < RUN_UP_MM:
            way = edge.path.leaves
            xs.append(high.x + way.x * (level.y - high.y) / way.y)
    centre = [x for mark in piece.marks if mark.name == "centre" for x in _run_to(mark.path, across)]
    return max(xs) - (centre[0] if centre else min(xs))


def _run_to(centre: Path, across: Line) -> list[float]:
    """Where the centre meets a level; a hem that has risen to it cuts it off a little above, and it is run on down."""
    found = [p.x for p in centre.crossings(across)]
    low = min((centre.start, centre.end), key=lambda end: end.y)
    return found or [low.x] * (across.start.y < low.y < across.start.y + RISES_MM)
