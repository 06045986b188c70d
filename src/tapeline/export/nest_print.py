"""The nested print and projection: all sizes on each other, true to scale, a layer for each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tapeline.export.arrange import PANEL_MM, Layout, arrange
from tapeline.export.drawing import Drawing
from tapeline.export.ink import Ink
from tapeline.export.line_kind import LineKind
from tapeline.export.nest import Nest
from tapeline.export.nest_ink import draw_legend, draw_nest, draw_samples, nest_layers
from tapeline.export.page_map import draw_panel
from tapeline.export.paper import Paper
from tapeline.export.pdf import Inked, Print, on_sheets
from tapeline.export.projector import Projection, laid_for, on_one_page
from tapeline.export.run_pages import RunTable, draw_tables
from tapeline.units import Unit

__all__ = ["nest_printed", "nest_projected"]

SAMPLES_MM = 9.0
"""From line to line of a projection's legend: 15 sizes and their heading stand above the calibration square."""
KINDS = ((LineKind.CUT, "cut: see sizes"), (LineKind.GRAIN, "grain"), (LineKind.NOTCH, "notch"))


def nest_printed(
    nest: Nest, paper: Paper, unit: Unit = Unit.CM, tables: Sequence[RunTable] = (), *, seams: bool = False
) -> Print:
    """The nest on sheets or a roll, and behind them pages of tables; the same bytes for the same sizes.

    Args:
        nest: All sizes.
        paper: Sheets that are glued, or a roll.
        unit: In which the panel speaks of lengths.
        tables: What is to be read about the sizes.
        seams: Show the seam lines too when the file is opened.

    Raises:
        InputError: The pieces do not fit a roll (see `arrange`).
    """
    layout = arrange([piece.whole for piece in nest.pieces], paper)
    drawings = [_all(nest, number) for number in range(len(nest.pieces))]
    return on_sheets(
        Inked(
            layout,
            nest.title,
            drawings,
            lambda ink: draw_nest(ink, nest, layout.placements),
            lambda ink: _panel(ink, nest, layout, drawings, unit),
            nest_layers(nest, seams=seams),
            lambda ink: draw_tables(ink, tables, nest.title),
        )
    )


def nest_projected(nest: Nest, look: Projection | None = None, unit: Unit = Unit.CM) -> Print:
    """The nest on one page for a projector: the layers of sizes that are not cut are hidden in the viewer."""
    look = look or Projection()
    layout = laid_for([piece.whole for piece in nest.pieces], look)

    def pattern(ink: Ink) -> None:
        grey = float(look.inverted)
        draw_nest(ink, nest, layout.placements, widths=look.widths, grey=grey)
        if layout.panel is not None:
            # Above the calibration square, where a print has its words.
            x, top = layout.panel.x + 4.0, layout.panel.y + PANEL_MM[1] - 8.0
            draw_samples(ink, nest, x, top, widths=look.widths, grey=grey, apart=SAMPLES_MM)

    return on_one_page(layout, nest.title, pattern, look, unit, layers=nest_layers(nest))


def _panel(ink: Ink, nest: Nest, layout: Layout, drawings: Sequence[Drawing], unit: Unit) -> None:
    draw_panel(ink, layout, drawings, nest.title, unit, kinds=KINDS)
    draw_legend(ink, nest)


def _all(nest: Nest, number: int) -> Drawing:
    """A piece with every size's lines: what is in the way of words."""
    piece = nest.pieces[number]
    strokes = [stroke for own in piece.sizes.values() for stroke in own.strokes]
    return replace(piece.shared, strokes=(*piece.shared.strokes, *strokes))
