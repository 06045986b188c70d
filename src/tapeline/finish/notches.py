"""Notches as they are cut: ticks from the cut line inward, square to the seam line.

One tick for the front, two for the back, one at the crown; 3 to 6 mm deep and at most half the allowance, so that
no tick comes near the stitches (common practice in the trade, no source).
"""

from __future__ import annotations

from tapeline.finish.finished_piece import Tick
from tapeline.geometry import Line, Path
from tapeline.geometry.crossing import nearest_crossing
from tapeline.pattern import Notch, NotchKind, Piece

__all__ = ["BARE_DEPTH_MM", "DOUBLE_APART_MM", "ticks"]

DOUBLE_APART_MM = 6.0
"""Between the two ticks of a double notch: seen as two, and still one mark to match (common practice, no source)."""
BARE_DEPTH_MM = 2.0
"""Where an edge has no allowance its tick is cut into the piece itself: no deeper than a stitch covers."""
LOOK_AROUND = 3.0
"""A tick starts within this many allowances of the seam line, however the corner beside it is shaped."""
OFF_THE_EDGE_MM = 0.01
"""A notch may lie beyond the end of its edge by rounding, not by more."""


def ticks(piece: Piece, cut_line: Path, allowances: dict[str, float], depth_mm: float) -> tuple[Tick, ...]:
    """Every notch of a piece as ticks on its cut line, in the order of the edges; depth in mm.

    The two ticks of a double notch lie half of `DOUBLE_APART_MM` to either side of it along the seam line; near the end
    of an edge both slide inward together until they are on it. Raises `ValueError` for a notch off its edge.
    """
    return tuple(
        _tick(piece, notch, cut_line, allowances[edge.name], depth_mm)
        for edge in piece.edges
        for notch in piece.notches_on(edge.name)
    )


def _tick(piece: Piece, notch: Notch, cut_line: Path, allowance: float, depth_mm: float) -> Tick:
    path = piece.edge(notch.edge).path
    length = path.length
    if not -OFF_THE_EDGE_MM <= notch.at_mm <= length + OFF_THE_EDGE_MM:
        raise ValueError(
            f"a notch lies {notch.at_mm:.2f} mm along {piece.name}.{notch.edge}, which is {length:.2f} mm long"
        )
    places = [notch.at_mm]
    if notch.kind is NotchKind.DOUBLE:
        half = min(DOUBLE_APART_MM, length) / 2
        middle = min(max(notch.at_mm, half), length - half)
        places = [middle - half, middle + half]
    lines = tuple(_line(path, place, cut_line, allowance, depth_mm) for place in places)
    return Tick(notch.edge, notch.at_mm, notch.kind, lines)


def _line(path: Path, at_mm: float, cut_line: Path, allowance: float, depth_mm: float) -> Line:
    on_seam, outward = path.at(at_mm), path.direction_at(at_mm).left
    if allowance == 0:
        return Line(on_seam, on_seam + outward * -BARE_DEPTH_MM)
    outside = nearest_crossing(Line(on_seam, on_seam + outward * (LOOK_AROUND * allowance)), cut_line)
    deep = min(depth_mm, min(outside, allowance) / 2)
    return Line(on_seam + outward * outside, on_seam + outward * (outside - deep))
