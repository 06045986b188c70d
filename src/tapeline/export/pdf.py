"""The print: a PDF at true scale, on sheets or a roll, with layers."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO

import numpy as np

from tapeline.export.arrange import PANEL_MM, Layout, arrange
from tapeline.export.drawing import Drawing, draw
from tapeline.export.fonts import letters_problem
from tapeline.export.ink import UNIT, Ink
from tapeline.export.layers import KINDS, PrintLayer, with_layers
from tapeline.export.line_kind import Layer
from tapeline.export.page_map import draw_panel
from tapeline.export.paper import Paper
from tapeline.export.tile import FORM, draw_tile
from tapeline.finish import Finished, Title
from tapeline.geometry.silhouette import even_points
from tapeline.problems import Problem
from tapeline.units import Unit

__all__ = ["Inked", "Print", "on_sheets", "pdf", "printed"]


@dataclass(frozen=True, slots=True)
class Print:
    """A file to print, how it is laid out, and what is worth knowing about it."""

    data: bytes
    layout: Layout
    problems: tuple[Problem, ...]


def pdf(finished: Finished, paper: Paper, unit: Unit = Unit.CM) -> bytes:
    """The print of a garment as a file; `printed` says how it is laid out as well."""
    return printed(finished, paper, unit).data


def printed(finished: Finished, paper: Paper, unit: Unit = Unit.CM) -> Print:
    """The print of a garment, the same bytes whenever the same is asked for.

    Raises `InputError` when the pieces do not fit a roll (see `arrange`).
    """
    layout = arrange(finished.pieces, paper)
    joints = layout.joints()
    drawings = [draw(p.piece, [joint.moved(p.move.back) for joint in joints]) for p in layout.placements]

    def pattern(ink: Ink) -> None:
        for layer in Layer:
            with ink.layer(layer):
                for drawing, place in zip(drawings, layout.placements, strict=True):
                    ink.drawing(drawing, place.move, layer)

    def panel(ink: Ink) -> None:
        draw_panel(ink, layout, drawings, finished.title, unit)

    return on_sheets(Inked(layout, finished.title, drawings, pattern, panel))


@dataclass(frozen=True, slots=True)
class Inked:
    """What goes on the sheets of a print."""

    layout: Layout
    title: Title
    drawings: Sequence[Drawing]
    """Of the pieces as they lie, for whoever looks for an empty place."""
    pattern: Callable[[Ink], None]
    """Draws all pieces on the glued whole."""
    panel: Callable[[Ink], None]
    """Draws the panel from its lower left."""
    layers: Sequence[PrintLayer] = KINDS
    after: Callable[[Ink], None] | None = None
    """Draws pages behind the sheets."""


def on_sheets(inked: Inked) -> Print:
    """The whole on the sheets of its paper, with its panel, layers and bookmarks."""
    from reportlab.pdfgen.canvas import Canvas

    layout = inked.layout
    buffer = BytesIO()
    canvas = Canvas(buffer, pageCompression=1, invariant=1, pdfVersion=(1, 6), initialFontName="Helvetica")
    ink = Ink(canvas)
    width, height = layout.size_mm
    canvas.beginForm(FORM, 0, 0, width * UNIT, height * UNIT)
    inked.pattern(ink)
    canvas.endForm()
    if layout.panel is None:
        _cover(ink, inked)
    _sheets(ink, inked)
    if inked.after is not None:
        inked.after(ink)
    canvas.save()
    problems = (letters_problem("".join(ink.replaced)),) if ink.replaced else ()
    return Print(with_layers(buffer.getvalue(), inked.title, inked.layers), layout, problems)


def _cover(ink: Ink, inked: Inked) -> None:
    """A page for the panel alone, upright."""
    paper = inked.layout.paper
    width, height = paper.field_mm
    ink.canvas.setPageSize((paper.width_mm * UNIT, (height + 2 * paper.margin_mm) * UNIT))
    with ink.at(paper.margin_mm + (width - PANEL_MM[0]) / 2, paper.margin_mm + height - PANEL_MM[1]):
        inked.panel(ink)
    ink.canvas.bookmarkPage("panel")
    ink.canvas.addOutlineEntry("Test squares and page map", "panel")
    ink.canvas.showPage()


def _sheets(ink: Ink, inked: Inked) -> None:
    layout, title = inked.layout, inked.title
    margin = layout.paper.margin_mm
    width, height = layout.field_mm
    note = ", ".join(part for part in (title.docket, title.wearer) if part)
    taken = _taken(layout, inked.drawings)
    for tile in layout.tiles:
        ink.canvas.setPageSize(((width + 2 * margin) * UNIT, (height + 2 * margin) * UNIT))
        with ink.at(margin, margin):
            if layout.panel is not None and tile == layout.tiles[0]:
                corner = layout.corner(tile)
                with ink.at(layout.panel.x - corner.x, layout.panel.y - corner.y):
                    inked.panel(ink)
            draw_tile(ink, layout, tile, note, taken)
        ink.canvas.bookmarkPage(str(tile))
        ink.canvas.addOutlineEntry(str(tile).capitalize() if len(layout.tiles) > 1 else "Pieces", str(tile))
        ink.canvas.showPage()


def _taken(layout: Layout, drawings: Sequence[Drawing]) -> np.ndarray:
    """Samples of every line and word, for whoever looks for an empty place."""
    found = []
    for drawing, place in zip(drawings, layout.placements, strict=True):
        found += [even_points(stroke.path.moved(place.move).flattened(0.5), 2.0) for stroke in drawing.strokes]
        found += [even_points([place.move.point(p) for p in label.outline()], 2.0) for label in drawing.labels]
    if layout.panel is not None:
        x, y = layout.panel.x, layout.panel.y
        across, up = np.arange(0, PANEL_MM[0], 2.0), np.arange(0, PANEL_MM[1], 2.0)
        found.append(np.stack(np.meshgrid(x + across, y + up), axis=-1).reshape(-1, 2))
    return np.vstack(found)
