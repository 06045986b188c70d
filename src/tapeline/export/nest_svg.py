"""The nested drawing: an SVG in mm with a group for each size, which drawing programs and style sheets can hide."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import quoteattr

from tapeline.export.drawing import Stroke
from tapeline.export.labels import Label
from tapeline.export.line_kind import LineKind
from tapeline.export.nest import Nest, NestedPiece
from tapeline.export.size_line import CUT_MM, SEW_MM, SizeLine
from tapeline.export.xml_text import digits, xml_text
from tapeline.geometry import Path, Point, Rigid

__all__ = ["nest_svg"]

GAP_MM = 30.0
LEGEND_MM = 70.0
"""Width of the column that says which line is which size."""
ROW_MM = 9.0

_STYLE = """
text { font-family: "DejaVu Sans", Verdana, Arial, sans-serif; fill: #1a1a1a }
.title, .tag { font-weight: bold }
path { fill: none; stroke: #1a1a1a; stroke-linejoin: round }
.ground { fill: #ffffff; stroke: none }
.head { fill: #1a1a1a; stroke: none }
.corner, .notch { stroke-width: 0.5 }
.fold-line { stroke-width: 0.25 }
.grain-line { stroke-width: 0.35 }
"""


@dataclass(frozen=True, slots=True)
class _Spread:
    """Where each piece lies on the page, and how large that is; y runs down there."""

    flips: tuple[Rigid, ...]
    width: float
    height: float


def nest_svg(nest: Nest) -> str:
    """Every piece with its sizes on each other, upright, and the legend of lines.

    One group for each size, `size-1` and so on in their order, with its name as `data-size`; what all sizes share is
    in the group `shared`. Each size has its seam lines in groups that are hidden at first, as in the print.
    """
    spread = _spread(nest)
    sizes = "\n".join(line for number in range(len(nest.names)) for line in _size(nest, number, spread))
    shared = "\n".join(
        line for piece, flip in zip(nest.pieces, spread.flips, strict=True) for line in _shared(piece, flip)
    )
    width, height = digits(spread.width), digits(spread.height)
    name = f"{nest.title.style.capitalize()} for {nest.title.wearer}"
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" role="img" aria-labelledby="nest-title nest-words" lang="en">'
    )
    return "\n".join(
        [
            '<?xml version="1.0" encoding="UTF-8"?>',
            head,
            f'<title id="nest-title">{xml_text(name)}</title>',
            f'<desc id="nest-words">{xml_text(_sentence(nest))}</desc>',
            f"<style>{_STYLE}{''.join(_looks(n, line) for n, line in enumerate(nest.lines, 1))}</style>",
            f'<rect class="ground" width="{width}" height="{height}"/>',
            *_legend(nest),
            sizes,
            '<g id="shared"><title>All sizes</title>',
            shared,
            "</g>",
            "</svg>",
            "",
        ]
    )


def _spread(nest: Nest) -> _Spread:
    x = 2 * GAP_MM + LEGEND_MM
    flips, tall = [], ROW_MM * (len(nest.names) + 2)
    for piece in nest.pieces:
        points = piece.whole.cut_line.flattened(0.1)
        left, right = min(p.x for p in points), max(p.x for p in points)
        low, high = min(p.y for p in points), max(p.y for p in points)
        flips.append(Rigid(1, 0, 0, -1, x - left, GAP_MM + high))
        x += right - left + GAP_MM
        tall = max(tall, high - low)
    return _Spread(tuple(flips), x, tall + 2 * GAP_MM)


def _size(nest: Nest, number: int, spread: _Spread) -> Iterator[str]:
    yield f'<g id="size-{number + 1}" data-size={quoteattr(nest.names[number])}>'
    yield f"<title>{xml_text(nest.called[number])}</title>"
    for piece, flip in zip(nest.pieces, spread.flips, strict=True):
        own = piece.sizes.get(number)
        if own is None:
            continue
        yield f"<g data-piece={quoteattr(piece.whole.piece.name)}>"
        seams = [stroke for stroke in own.strokes if stroke.kind is LineKind.SEAM]
        yield from (_stroke(stroke, flip) for stroke in own.strokes if stroke.kind is not LineKind.SEAM)
        yield '<g class="seam-lines" display="none"><title>Seam lines</title>'
        yield from (_stroke(stroke, flip) for stroke in seams)
        yield "</g>"
        yield from (f'<path class="corner" d="{corner.moved(flip).svg()}"/>' for corner in own.corners)
        yield from (_label(tag, flip, "tag") for tag in own.tags)
        yield "</g>"
    yield "</g>"


def _shared(piece: NestedPiece, flip: Rigid) -> Iterator[str]:
    yield f"<g data-piece={quoteattr(piece.whole.piece.name)}>"
    yield from (_stroke(stroke, flip) for stroke in piece.shared.strokes)
    for head in piece.shared.heads:
        corners = [flip.point(p) for p in head]
        yield f'<path class="head" d="{Path.through(*corners, corners[0]).svg()}"/>'
    yield from (_label(label, flip, "title" if label.bold else "") for label in piece.shared.labels)
    yield "</g>"


def _stroke(stroke: Stroke, flip: Rigid) -> str:
    title = f"<title>{xml_text(stroke.name.replace('_', ' '))}</title>"
    return f'<path class="{stroke.kind.label}" d="{stroke.path.moved(flip).svg()}">{title}</path>'


def _label(label: Label, flip: Rigid, kind: str) -> str:
    place = flip.point(label.at)
    turn = (
        f' transform="rotate({digits(-math.degrees(label.angle))} {digits(place.x)} {digits(place.y)})"'
        if label.angle
        else ""
    )
    looks = f' class="{kind}"' if kind else ""
    at = f'x="{digits(place.x)}" y="{digits(place.y)}"'
    return f'<text{looks} {at} font-size="{digits(label.size_mm)}"{turn}>{xml_text(label.text)}</text>'


def _looks(number: int, line: SizeLine) -> str:
    """Width and dashes of a size's lines."""
    kinds = ((LineKind.CUT, CUT_MM), (LineKind.SEAM, SEW_MM), (LineKind.MARK, SEW_MM))
    rows = []
    for kind, width in kinds:
        dashes = f"; stroke-dasharray: {' '.join(map(digits, line.dashes_mm(width)))}" if line.in_widths else ""
        rows.append(f"#size-{number} .{kind.label} {{ stroke-width: {digits(width)}{dashes} }}\n")
    return "".join(rows)


def _legend(nest: Nest) -> Iterator[str]:
    y = GAP_MM + ROW_MM
    yield f'<text class="title" x="{digits(GAP_MM)}" y="{digits(y)}" font-size="5">Sizes</text>'
    for number, called in enumerate(nest.called, 1):
        y += ROW_MM
        sample = Path.through(Point(GAP_MM, y - 1.5), Point(GAP_MM + 38.0, y - 1.5))
        line = nest.lines[number - 1]
        dashes = f' stroke-dasharray="{" ".join(map(digits, line.dashes_mm(CUT_MM)))}"' if line.in_widths else ""
        yield f'<path class="sample" stroke-width="{digits(CUT_MM)}"{dashes} d="{sample.svg()}"/>'
        yield f'<text x="{digits(GAP_MM + 42.0)}" y="{digits(y)}" font-size="4">{xml_text(called)}</text>'


def _sentence(nest: Nest) -> str:
    lines = ", ".join(f"{called} {line.name}" for called, line in zip(nest.called, nest.lines, strict=True))
    meets = _listed([f"{piece.whole.piece.title} at {piece.meets}" for piece in nest.pieces])
    return f"The sizes of each piece on each other. Lines: {lines}. They meet: {meets}."


def _listed(words: Sequence[str]) -> str:
    return "; ".join(words)
