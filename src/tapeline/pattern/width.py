"""How wide a piece is at a level: what a girth is measured by."""

from __future__ import annotations

from tapeline.geometry import Line, Point
from tapeline.pattern.piece import Piece

__all__ = ["width_at"]

ON_THE_LEVEL_MM = 1e-6
RUN_UP_MM = 10.0
"""A side is run on up so far: where its seam was moved, one half's underarm lies a little below the level."""
RISES_MM = 50.0
"""A hem that lies less above a level has risen from it; one that lies more above it ends there."""


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
    outline = piece.seam_line
    across = Line(level, Point(level.x + 1, level.y))
    xs = [p.x for p in outline.crossings(across)]
    xs += [p.x for p in outline.knots if abs(p.y - level.y) < ON_THE_LEVEL_MM]
    ends = [
        # The hem rises to the side so that it meets it square, and over a sway back to the fold: both are run on down.
        (edge.path.end, edge.path.arrives) if edge.name == "side" else (edge.path.start, -edge.path.leaves)
        for before, edge in zip((piece.edges[-1], *piece.edges), piece.edges, strict=False)
        if edge.name in ("side", "side_mirrored") or (edge.fold and before.name == "hem")
    ]
    if not xs and not (len(ends) > 1 and all(level.y < low.y < level.y + RISES_MM for low, _ in ends)):
        return 0.0
    xs += [low.x + way.x * (level.y - low.y) / way.y for low, way in ends if low.y > level.y]
    for edge in piece.edges:
        high = edge.path.start
        if edge.name == "side" and ON_THE_LEVEL_MM < level.y - high.y < RUN_UP_MM:
            way = edge.path.leaves
            xs.append(high.x + way.x * (level.y - high.y) / way.y)
    centre = [p.x for mark in piece.marks if mark.name == "centre" for p in mark.path.crossings(across)]
    return max(xs) - (centre[0] if centre else min(xs))
