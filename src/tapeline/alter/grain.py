"""Where the grain line is drawn on a piece that is a part of another."""

from __future__ import annotations

from tapeline.geometry import Line
from tapeline.geometry.region import holds_all, inner_place
from tapeline.pattern import Piece

__all__ = ["grain_inside"]

SHARE = 0.6
"""How much of the room inside the piece a grain line takes at most."""


def grain_inside(piece: Piece, grain: Line) -> Line:
    """The grain line itself where it lies inside the piece, otherwise one that does and runs the same way."""
    outline = piece.seam_line
    if holds_all(outline, [grain.at(t) for t in (0.0, 0.25, 0.5, 0.75, 1.0)]):
        return grain
    middle = inner_place(outline)
    way = grain.direction(0)
    runs = [way.dot(p - middle) for p in outline.crossings(Line(middle, middle + way))]
    before, after = max(r for r in runs if r <= 0), min(r for r in runs if r >= 0)
    half = min(grain.length, (after - before) * SHARE) / 2
    centre = middle + way * ((before + after) / 2)
    return Line(centre + way * -half, centre + way * half)
