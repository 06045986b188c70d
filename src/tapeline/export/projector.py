"""The projection: all pieces on one page, to be thrown onto the cloth and cut there.

A projector is set until the calibration square measures what it says; a grid shows where its picture is bent. White on
black is seen better in a light room than black on white (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO

from tapeline.export.arrange import Layout, arrange
from tapeline.export.drawing import draw
from tapeline.export.fonts import letters_problem
from tapeline.export.ink import UNIT, Ink
from tapeline.export.layers import KINDS, PrintLayer, with_layers
from tapeline.export.line_kind import Layer, LineKind
from tapeline.export.page_map import SQUARES_MM
from tapeline.export.paper import MARGIN_MM, paper
from tapeline.export.pdf import Print
from tapeline.export.tile import FORM
from tapeline.finish import Finished, FinishedPiece, Title
from tapeline.problems import InputError, Problem, Severity
from tapeline.units import Unit

__all__ = ["LINES_MM", "Projection", "laid_for", "on_one_page", "projected"]

LINES_MM = (0.3, 8.0)
"""Cut lines thinner than this are not seen, wider ones hide where to cut (our own choice)."""
GRID_MM = {Unit.CM: 50.0, Unit.INCH: 50.8}
"""Every 5 cm, or every 2 in."""
WORDS_MM = 6.0
GRID_GREYS = (0.75, 0.35)
"""On white and on black."""


@dataclass(frozen=True, slots=True)
class Projection:
    """How the picture looks."""

    width_mm: float = 1400.0
    """Of the cloth it is thrown on."""
    line_mm: float = 1.5
    """Width of the cut line; the others keep their proportion to it."""
    inverted: bool = False
    """White on black."""
    grid: bool = True

    @property
    def widths(self) -> float:
        """How many times wider than on paper the lines are."""
        return self.line_mm / LineKind.CUT.width_mm


def projected(finished: Finished, look: Projection | None = None, unit: Unit = Unit.CM) -> Print:
    """One page, at true size, the same bytes whenever the same is asked for.

    Raises:
        InputError: `line-width` for a line that nobody sees or that hides the place; what `arrange` says of a width.
    """
    look = look or Projection()
    layout = laid_for(finished.pieces, look)
    drawings = [draw(placed.piece) for placed in layout.placements]

    def pattern(ink: Ink) -> None:
        for layer in Layer:
            with ink.layer(layer):
                for drawing, placed in zip(drawings, layout.placements, strict=True):
                    ink.drawing(drawing, placed.move, layer, widths=look.widths, grey=float(look.inverted))

    return on_one_page(layout, finished.title, pattern, look, unit)


def laid_for(pieces: Sequence[FinishedPiece], look: Projection) -> Layout:
    """How pieces lie on the cloth; refuses a line that is no line to cut along (`line-width`)."""
    if not LINES_MM[0] <= look.line_mm <= LINES_MM[1]:
        raise InputError(
            Problem(
                "line-width",
                Severity.ERROR,
                f"a line {look.line_mm:g} mm wide is no line to cut along: {LINES_MM[0]:g} to {LINES_MM[1]:g} mm are",
                hint="1.5 mm is seen on most cloths. Nothing was written.",
            )
        )
    return arrange(pieces, paper(f"roll {look.width_mm:.1f} mm"))


def on_one_page(
    layout: Layout,
    title: Title,
    pattern: Callable[[Ink], None],
    look: Projection,
    unit: Unit,
    *,
    layers: Sequence[PrintLayer] = KINDS,
) -> Print:
    """The page with its grid, its calibration square and what `pattern` draws on it."""
    from reportlab.pdfgen.canvas import Canvas

    width, height = (side + 2 * MARGIN_MM for side in layout.size_mm)
    buffer = BytesIO()
    canvas = Canvas(
        buffer,
        pagesize=(width * UNIT, height * UNIT),
        pageCompression=1,
        invariant=1,
        pdfVersion=(1, 6),
        initialFontName="Helvetica",
    )
    ink = Ink(canvas)
    canvas.beginForm(FORM, 0, 0, width * UNIT, height * UNIT)
    with ink.at(MARGIN_MM, MARGIN_MM):
        pattern(ink)
    canvas.endForm()
    if look.inverted:
        ink.tint(0, 0, width, height, 0.0)
    if look.grid:
        _grid(ink, width, height, look, unit)
    with ink.at(MARGIN_MM, MARGIN_MM):
        _square(ink, layout, look, unit)
    canvas.doForm(FORM)
    canvas.showPage()
    canvas.save()
    problems = (letters_problem("".join(ink.replaced)),) if ink.replaced else ()
    return Print(with_layers(buffer.getvalue(), title, layers), layout, problems)


def _grid(ink: Ink, width: float, height: float, look: Projection, unit: Unit) -> None:
    apart = GRID_MM[unit]
    ink.pen(0.5, grey=GRID_GREYS[look.inverted])
    ink.lines(
        *((x * apart, 0.0, x * apart, height) for x in range(1, int(width / apart) + 1)),
        *((0.0, y * apart, width, y * apart) for y in range(1, int(height / apart) + 1)),
    )


def _square(ink: Ink, layout: Layout, look: Projection, unit: Unit) -> None:
    """The calibration square, where a print has its test squares: nothing else lies there."""
    if layout.panel is None:
        raise ValueError("a roll has room for the panel beside the pieces")
    side = SQUARES_MM[0 if unit is Unit.CM else 1]
    grey = float(look.inverted)
    ink.pen(look.line_mm, grey=grey, round_ends=False)
    ink.box(layout.panel.x + look.line_mm, layout.panel.y + look.line_mm, side, side)
    says = "100 mm" if unit is Unit.CM else "4 in"
    ink.words(f"{says} each way,", layout.panel.x + 8, layout.panel.y + side - 14, WORDS_MM, grey=grey)
    ink.words("middle of line to middle", layout.panel.x + 8, layout.panel.y + side - 24, WORDS_MM, grey=grey)
