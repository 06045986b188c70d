"""Puts a nest on a page: each size on a layer and with a line of its own, what they share on layers that stay."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.export.arrange import Placement
from tapeline.export.drawing import Stroke
from tapeline.export.ink import Ink
from tapeline.export.layers import PrintLayer
from tapeline.export.line_kind import Layer, LineKind
from tapeline.export.nest import Nest
from tapeline.export.page_map import square_corners
from tapeline.export.size_line import CUT_MM, SEW_MM, SizeLine
from tapeline.geometry import Rigid

__all__ = ["draw_legend", "draw_nest", "draw_samples", "nest_layers"]

SEAMS = PrintLayer("SEAMS", "Seam lines", shown=False)
"""With all sizes on the table seam lines would hide the cut lines; one size's may be wanted."""
WORDS_MM = 2.9
LINE_MM = 5.9
SAMPLE_MM = 38.0


def nest_layers(nest: Nest, *, seams: bool = False) -> tuple[PrintLayer, ...]:
    """One layer for each size, then what all share; seam lines are hidden unless asked for."""
    sizes = tuple(PrintLayer(_key(number), called) for number, called in enumerate(nest.called))
    shared = tuple(PrintLayer(layer.name, layer.value) for layer in (Layer.MARKS, Layer.WORDS))
    return (*sizes, PrintLayer(SEAMS.key, SEAMS.title, seams), *shared)


def draw_nest(ink: Ink, nest: Nest, placements: Sequence[Placement], *, widths: float = 1.0, grey: float = 0.0) -> None:
    """All pieces in their places, lines so many times their width, in black or grey."""
    for number, called in enumerate(nest.called):
        with ink.layer(PrintLayer(_key(number), called)):
            for piece, placed in zip(nest.pieces, placements, strict=True):
                own = piece.sizes.get(number)
                if own is None:
                    continue
                _strokes(ink, own.strokes, nest.lines[number], placed.move, widths=widths, grey=grey)
                ink.pen(CUT_MM * widths, (), grey)
                for corner in own.corners:
                    ink.path(corner.moved(placed.move))
                for tag in own.tags:
                    ink.label(tag, placed.move, grey)
    for layer in (Layer.MARKS, Layer.WORDS):
        with ink.layer(layer):
            for piece, placed in zip(nest.pieces, placements, strict=True):
                ink.drawing(piece.shared, placed.move, layer, widths=widths, grey=grey)


def _strokes(ink: Ink, strokes: Sequence[Stroke], line: SizeLine, move: Rigid, *, widths: float, grey: float) -> None:
    for stroke in strokes:
        if stroke.kind is LineKind.SEAM:
            continue
        width = _width(stroke.kind) * widths
        # A fold is one for all sizes, and a notch too short for a pattern: both are unbroken.
        plain = stroke.kind in (LineKind.FOLD, LineKind.NOTCH)
        ink.pen(width, () if plain else line.dashes_mm(width), grey)
        ink.path(stroke.path.moved(move))
    with ink.layer(SEAMS):
        ink.pen(SEW_MM * widths, line.dashes_mm(SEW_MM * widths), grey)
        for stroke in strokes:
            if stroke.kind is LineKind.SEAM:
                ink.path(stroke.path.moved(move))


def _width(kind: LineKind) -> float:
    return CUT_MM if kind in (LineKind.CUT, LineKind.NOTCH) else SEW_MM


def draw_samples(
    ink: Ink, nest: Nest, x: float, top: float, *, widths: float = 1.0, grey: float = 0.0, apart: float = LINE_MM
) -> None:
    """Each size's line beside its name, downward from the left end of the base line of the word above them."""
    y, scale = top, apart / LINE_MM
    ink.words("Sizes", x, y, 3.4 * scale, bold=True, grey=grey)
    room = (100.0 - 14.0) * scale - SAMPLE_MM * scale
    for called, line in zip(nest.called, nest.lines, strict=True):
        y -= apart
        ink.pen(CUT_MM * widths, line.dashes_mm(CUT_MM * widths), grey)
        ink.lines((x, y + 0.9 * scale, x + SAMPLE_MM * scale, y + 0.9 * scale))
        size = WORDS_MM * scale
        size = min(size, size * room / ink.width(called, size, bold=True))
        ink.words(called, x + (SAMPLE_MM + 4) * scale, y, size, bold=True, grey=grey)


def draw_legend(ink: Ink, nest: Nest) -> None:
    """Which line is which size, and where the sizes meet, inside the panel's test squares; from its lower left."""
    upper, lower = square_corners()
    draw_samples(ink, nest, upper.x + 4, upper.y + 100.0 - 6.0)
    y = lower.y + 101.6 - 6.0
    ink.words("Where the sizes meet", lower.x + 4, y, 3.4, bold=True)
    for piece in nest.pieces:
        y -= 4.6
        text = f"{piece.whole.piece.title}: {piece.meets}"
        ink.words(text, lower.x + 4, y, min(2.7, 2.7 * 92.0 / ink.width(text, 2.7)))
    y -= 7.0
    for said in (
        "A small cross marks the point. Each size is drafted from its own tapes, not scaled.",
        "Choose one size, mark its line with a pen where lines run close, and cut along that one.",
        "In a viewer each size is a layer: hide the others and print one alone. Seam lines are a layer too.",
    ):
        y = ink.paragraph(said, lower.x + 4, y, 92.0, 2.7) - 1.0


def _key(number: int) -> str:
    return f"SIZE{number + 1}"
