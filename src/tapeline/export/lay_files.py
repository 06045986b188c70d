"""A lay plan at true scale, to be drawn on paper or cut from: DXF, plotter file, PDF.

The cloth runs along x in DXF and on the plotter; in the PDF it runs up the page, as paper comes off a roll. On folded
cloth the lower edge of the strip, or the right one of the page, is the fold.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO

from tapeline.export.dxf import Dxf, Release
from tapeline.export.exchange import Layer
from tapeline.export.fonts import in_ascii, letters_problem
from tapeline.export.ink import UNIT, Ink
from tapeline.export.paper import LONGEST_PAGE_MM, page_too_long
from tapeline.export.plotter import hpgl
from tapeline.geometry import Path, Point, Rigid, bounds
from tapeline.geometry.region import inner_place
from tapeline.lay import LayPlan, Spread
from tapeline.problems import Problem
from tapeline.units import Unit

__all__ = ["LayFile", "lay_dxf", "lay_pdf", "lay_plot"]

LAYERS = {
    "notch": Layer.NOTCH,
    "grain": Layer.GRAIN,
    "fold": Layer.MIRROR,
    "seam": Layer.SEW,
    "mark": Layer.INSIDE,
}
EDGES = "CLOTH"
"""The layer of the cloth itself."""
CUTS, DRAWS = 1, 2
"""Pens."""
WORDS_MM = 8.0
SMALLEST_WORDS_MM = 2.5
MARGIN_MM = 10.0
SHARED_MM = 40.0
"""What two pages of a long lay both show."""
WIDTHS_MM = {"cut": 0.5, "notch": 0.5, "grain": 0.35, "fold": 0.35, "seam": 0.2, "mark": 0.2}
DASHES_MM: dict[str, tuple[float, ...]] = {"grain": (24, 3, 3, 3), "fold": (8.4, 1.05, 0.175, 1.05), "mark": (3, 0.75)}


@dataclass(frozen=True, slots=True)
class LayFile:
    """The file, and what is worth knowing about it."""

    data: bytes
    problems: tuple[Problem, ...]
    pages: int = 1


@dataclass(frozen=True, slots=True)
class _Word:
    """What a piece is called, where on the cloth, which way it reads, how high its letters are."""

    text: str
    at: Point
    angle: float
    size_mm: float


def lay_dxf(plan: LayPlan, unit: Unit = Unit.CM, release: Release = Release.R12) -> LayFile:
    """The plan as DXF by the layers of pieces: cut lines on 1, notches 4, grain 7, words 15; the cloth on `CLOTH`.

    Args:
        plan: Where everything lies.
        unit: Centimetre writes millimetres, inch writes inches.
        release: Of the format.
    """
    file = Dxf.new(release, unit)
    for layer in (*Layer, EDGES):
        file.layer(layer)
    file.chain(_corners(plan), EDGES, closed=True)
    for _, _, outline in plan.laid():
        file.chain(outline, Layer.BOUNDARY, closed=True)
    for kind, points in _lines(plan):
        file.chain(points, LAYERS.get(kind, Layer.INSIDE), closed=False)
    lost = ""
    for word in _words(plan):
        text, replaced = in_ascii(word.text)
        lost += replaced
        file.words(text, word.at, word.size_mm, Layer.WORDS, math.degrees(word.angle))
    units = f"Units: {'METRIC' if unit is Unit.CM else 'ENGLISH'}"
    for number, text in enumerate((in_ascii(_heading(plan))[0], units), 1):
        file.words(text, Point(0, -2 * number * WORDS_MM), WORDS_MM, EDGES)
    return LayFile(file.data(), _told(lost, "exchange file"))


def lay_plot(plan: LayPlan, *, second: bool = False) -> LayFile:
    """The plan for a plotter, in one piece, along the roll: pen 1 cut lines and notches, pen 2 all else.

    `second` writes HP-GL/2. Nothing is said of 16 bits: a lay is longer than a frame of theirs.
    """
    chains: list[tuple[int, Sequence[Point]]] = [(DRAWS, [*_corners(plan), Point(0, 0)])]
    chains += [(CUTS, [*outline, outline[0]]) for _, _, outline in plan.laid()]
    chains += [(CUTS if kind == "notch" else DRAWS, points) for kind, points in _lines(plan)]
    words = [(word.text, word.at, word.angle, word.size_mm) for word in _words(plan)]
    data, lost = hpgl(chains, words, (plan.length_mm, plan.cloth.strip_mm), second=second)
    return LayFile(data, _told(lost, "plotter file"))


def lay_pdf(plan: LayPlan) -> LayFile:
    """The plan on a page as wide as the strip; a lay longer than a page may be goes on over the next ones.

    A page is at most 5080 mm: readers show no longer one, and most do not know the unit that would allow it.

    Raises:
        InputError: `page-too-long` for cloth wider than a page.
    """
    from reportlab.pdfgen.canvas import Canvas

    wide = plan.cloth.strip_mm + 2 * MARGIN_MM
    if wide > LONGEST_PAGE_MM:
        raise page_too_long(wide, "the cloth's width")
    step = LONGEST_PAGE_MM - 2 * MARGIN_MM - SHARED_MM
    pages = max(1, math.ceil((plan.length_mm - SHARED_MM) / step))
    buffer = BytesIO()
    canvas = Canvas(buffer, pageCompression=1, invariant=1, initialFontName="Helvetica", lang="en")
    canvas.setTitle(_heading(plan))
    canvas.setCreator("Tapeline")
    canvas.setViewerPreference("PrintScaling", "None")
    ink = Ink(canvas)
    for page in range(pages):
        low = page * step
        high = min(plan.length_mm, low + step + SHARED_MM)
        canvas.setPageSize((wide * UNIT, (high - low + 2 * MARGIN_MM) * UNIT))
        with ink.at(MARGIN_MM, MARGIN_MM), ink.within(plan.cloth.strip_mm, high - low):
            _page(ink, plan, low)
            if page + 1 < pages:
                _joint(ink, plan, step, f"goes on: lay page {page + 2} from this line")
            if page > 0:
                _joint(ink, plan, SHARED_MM, f"page {page} ends here")
        canvas.showPage()
    canvas.save()
    return LayFile(buffer.getvalue(), _told("".join(ink.replaced), "print"), pages)


def _page(ink: Ink, plan: LayPlan, low: float) -> None:
    """The strip turned by a quarter, never mirrored, from a place along it."""
    turn = Rigid(0, 1, -1, 0, plan.cloth.strip_mm, -low)
    ink.pen(0.35, (), 0.4)
    ink.path(Path.through(*(turn.point(p) for p in (*_corners(plan), Point(0, 0)))))
    for kind, points in _lines(plan):
        ink.pen(WIDTHS_MM.get(kind, 0.2), DASHES_MM.get(kind, ()))
        ink.path(Path.through(*(turn.point(p) for p in points)))
    ink.pen(WIDTHS_MM["cut"])
    for _, _, outline in plan.laid():
        ink.path(Path.through(*(turn.point(p) for p in (*outline, outline[0]))))
    for word in _words(plan):
        at = turn.point(word.at)
        with ink.at(at.x, at.y, word.angle + math.pi / 2):
            ink.words(word.text, 0, 0, word.size_mm)


def _joint(ink: Ink, plan: LayPlan, at: float, says: str) -> None:
    ink.pen(0.35, (6, 3), 0.4)
    ink.lines((0, at, plan.cloth.strip_mm, at))
    ink.words(says, 20, at + 3, 5, grey=0.4)


def _corners(plan: LayPlan) -> list[Point]:
    length, strip = max(plan.length_mm, 1.0), plan.cloth.strip_mm
    return [Point(0, 0), Point(length, 0), Point(length, strip), Point(0, strip)]


def _lines(plan: LayPlan) -> Iterator[tuple[str, list[Point]]]:
    """Every line inside a piece, where it lies."""
    for placement, piece, _ in plan.laid():
        for line in piece.lines:
            points = [placement.move.point(p) for p in line.points]
            if len(points) > 1 and any(p != points[0] for p in points):
                yield line.kind, points


def _words(plan: LayPlan) -> Iterator[_Word]:
    """The name of each piece and whose it is, along the longer way of its room, from inside it."""
    for placement, piece, outline in plan.laid():
        left, low, right, high = bounds(outline)
        upright = high - low > 1.5 * (right - left)
        said = f"{piece.title or piece.name}, {piece.garment}" + (f" {placement.garment}" if piece.garments > 1 else "")
        room = (high - low if upright else right - left) * 0.6
        size = max(SMALLEST_WORDS_MM, min(WORDS_MM, room / (0.64 * len(said))))
        middle = inner_place(Path.through(*outline, outline[0]))
        angle = math.pi / 2 if upright else 0.0
        back = len(said) * size * 0.3
        yield _Word(said, Point(middle.x - back * math.cos(angle), middle.y - back * math.sin(angle)), angle, size)


def _heading(plan: LayPlan) -> str:
    cloth = plan.cloth
    spread = {Spread.OPEN: "open"}.get(cloth.spread, str(cloth.spread))
    return (
        f"{cloth.name}: {plan.length_mm / 10:.1f} cm of {cloth.width_mm / 10:.1f} cm, {spread}, "
        f"{len(plan.placements)} pieces"
    )


def _told(lost: str, what: str) -> tuple[Problem, ...]:
    letters = "".join(dict.fromkeys(lost))
    return (letters_problem(letters, what),) if letters else ()
