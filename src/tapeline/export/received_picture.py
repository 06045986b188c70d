"""The picture of received pieces: an SVG in mm, to see whether a file was understood as its sender meant it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapeline.export.xml_text import xml_text
from tapeline.geometry import Line, Path, Point, Rigid
from tapeline.received import Received, ReceivedPiece

__all__ = ["received_picture"]

GAP_MM = 40.0
"""Between pieces, and round them."""
ROW_MM = 2000.0
"""Pieces stand in rows no longer than this, unless one is."""
WORDS_MM = 14.0
TICK_MM = 8.0
"""A notch is drawn this long: larger than it is cut, to be seen."""
HEAD_MM = 12.0

_STYLE = """
text { font-family: "DejaVu Sans", Verdana, Arial, sans-serif; fill: #1a1a1a }
.ground { fill: #ffffff }
path { fill: none; stroke: #1a1a1a; stroke-linejoin: round; stroke-width: 0.8 }
.cut-line { fill: #f6f4ef; stroke-width: 1.6 }
.sew-line { stroke-dasharray: 6 3 }
.fold-ground { stroke: #f6f4ef; stroke-width: 3 }
.fold-line { stroke-width: 1.6; stroke-dasharray: 16 3 2 3 }
.notch { stroke-width: 1.6 }
.cutout { fill: #ffffff; stroke-width: 1.6 }
.inside { stroke-dasharray: 3 2 }
.stripe { stroke: #5b6b7a; stroke-dasharray: 1 2 }
.drill { fill: #1a1a1a; stroke: none }
"""


@dataclass(frozen=True, slots=True)
class _Place:
    piece: ReceivedPiece
    flip: Rigid
    """From the piece to the page, whose y runs down."""
    left: float
    below: float


def received_picture(file: Received) -> str:
    """All pieces of a file at one scale, each with its name, size and quantity; true to size in mm.

    Notches are ticks across the cut line, the fold is dashed and dotted, sew lines are dashed, the grain has arrows.
    """
    places: list[_Place] = []
    across = wide = GAP_MM
    row_top, row_high = GAP_MM, 0.0
    for piece in file.pieces:
        xs, ys = zip(*((p.x, p.y) for p in piece.outline.knots), strict=True)
        width, height = max(xs) - min(xs), max(ys) - min(ys)
        room = max(width, WORDS_MM * 0.62 * max(map(len, _words(piece))))
        if across > GAP_MM and across + room + GAP_MM > ROW_MM:
            across, row_top, row_high = GAP_MM, row_top + row_high + GAP_MM, 0.0
        flip = Rigid(1, 0, 0, -1, across - min(xs), row_top + max(ys))
        places.append(_Place(piece, flip, across, row_top + height))
        across += room + GAP_MM
        wide, row_high = max(wide, across), max(row_high, height + 4.5 * WORDS_MM)
    high = row_top + row_high + GAP_MM
    said = f"{len(file.pieces)} pieces received in {file.name}: " + "; ".join(p.label for p in file.pieces[:60])
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:.1f}mm" height="{high:.1f}mm" '
        f'viewBox="0 0 {wide:.1f} {high:.1f}" role="img" aria-labelledby="pieces-title" lang="en">'
    )
    return "\n".join(
        [
            '<?xml version="1.0" encoding="UTF-8"?>',
            head,
            f'<title id="pieces-title">{xml_text(said)}</title>',
            f"<style>{_STYLE}</style>",
            f'<rect class="ground" width="{wide:.1f}" height="{high:.1f}"/>',
            *(line for place in places for line in _piece(place)),
            "</svg>",
            "",
        ]
    )


def _words(piece: ReceivedPiece) -> list[str]:
    cloth = f" in {piece.material}" if piece.material else ""
    turned = ", half of them turned over" if piece.mirrored else ""
    return [piece.label, f"cut {piece.quantity}{cloth}{turned}{', on the fold' if piece.fold else ''}"]


def _piece(place: _Place) -> Iterator[str]:
    piece = place.piece
    yield f"<g><title>{xml_text(', '.join(_words(piece)))}</title>"
    yield _path(piece.outline, "cut-line", place)
    groups = (
        ("cutout", piece.cutouts),
        ("sew-line", piece.sew_lines),
        ("inside", piece.inside),
        ("stripe", (*piece.stripes, *piece.checks)),
    )
    for kind, paths in groups:
        for path in paths:
            yield _path(path, kind, place)
    if piece.fold:
        # Over the cut line, which is not cut here.
        for kind in ("fold-ground", "fold-line"):
            yield _path(Path((piece.fold,)), kind, place)
    if piece.grain:
        for path in _arrow(piece.grain):
            yield _path(path, "grain-line", place)
    for path in _ticks(piece):
        yield _path(path, "notch", place)
    for drill in piece.drills:
        at = place.flip.point(drill)
        yield f'<circle class="drill" cx="{at.x:.2f}" cy="{at.y:.2f}" r="2.5"/>'
    for number, words in enumerate(_words(piece), 1):
        bold = ' font-weight="bold"' if number == 1 else ""
        y = place.below + WORDS_MM * 1.5 * number
        yield f'<text x="{place.left:.1f}" y="{y:.1f}" font-size="{WORDS_MM:g}"{bold}>{xml_text(words)}</text>'
    yield "</g>"


def _path(path: Path, kind: str, place: _Place) -> str:
    return f'<path class="{kind}" d="{path.moved(place.flip).svg(3)}"/>'


def _arrow(grain: Line) -> Iterator[Path]:
    yield Path((grain,))
    size = min(HEAD_MM, grain.length / 4)
    for tip, way in ((grain.end, grain.direction(0)), (grain.start, -grain.direction(0))):
        foot = tip + way * -size
        yield Path.through(foot + way.left * (size / 3), tip, foot + way.right * (size / 3))


def _ticks(piece: ReceivedPiece) -> Iterator[Path]:
    """Across the side of the outline that a notch is nearest to."""
    corners = np.array([(p.x, p.y) for p in piece.outline.knots])
    starts, ways = corners[:-1], np.diff(corners, axis=0)
    for notch in piece.notches:
        at = np.array((notch.at.x, notch.at.y))
        number = _nearest(at, starts, ways)
        along = ways[number] / np.hypot(*ways[number])
        aside = np.array((-along[1], along[0])) * TICK_MM / 2
        yield Path.through(Point(*(at + aside).tolist()), Point(*(at - aside).tolist()))


def _nearest(at: NDArray[np.float64], starts: NDArray[np.float64], ways: NDArray[np.float64]) -> int:
    square = np.maximum((ways**2).sum(axis=1), 1e-12)
    t = np.clip(((at - starts) * ways).sum(axis=1) / square, 0, 1)
    return int(np.hypot(*(starts + ways * t[:, None] - at).T).argmin())
