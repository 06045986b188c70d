"""A garment as a small picture: outlines to a tenth of a millimetre, notches, grain; without dates or words."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.geometry import Path
from tapeline.pattern import Garment, Piece

__all__ = ["picture"]

MARGIN_MM = 15.0
NOTCH_MM = 6.0


def picture(garment: Garment) -> str:
    """An SVG of the pieces side by side, each as it is drawn: half of what lies on the fold, which is broken."""
    x, height, parts = MARGIN_MM, 0.0, []
    for piece in garment.pieces:
        places = piece.seam_line.sampled(0.5)
        (left, low), (right, top) = places.min(axis=0).tolist(), places.max(axis=0).tolist()
        move = f"matrix(1 0 0 -1 {x - left:.1f} {MARGIN_MM + top:.1f})"
        parts += [f'<g id="{piece.name}" transform="{move}">', *_lines(piece), "</g>"]
        x += right - left + MARGIN_MM
        height = max(height, top - low)
    box = f"0 0 {x:.0f} {height + 2 * MARGIN_MM:.0f}"
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}" fill="none" stroke="black" stroke-width="1.2">'
    return "\n".join([head, *parts, "</svg>"]) + "\n"


def _lines(piece: Piece) -> Iterator[str]:
    for edge in piece.edges:
        broken = ' stroke-dasharray="12 5"' if edge.fold else ""
        yield f'<path id="{piece.name}.{edge.name}" d="{edge.path.svg(1)}"{broken}/>'
    for notch in piece.notches:
        path = piece.edge(notch.edge).path
        at, inward = path.at(notch.at_mm), -path.direction_at(notch.at_mm).left
        yield f'<path d="{Path.through(at, at + inward * NOTCH_MM).svg(1)}"/>'
    yield f'<path d="{Path((piece.grain,)).svg(1)}" stroke="gray"/>'
