"""The panel that a print begins with: test squares, how to put the sheets together, and a small picture of it all."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.export.arrange import PANEL_MM, Layout
from tapeline.export.drawing import Drawing
from tapeline.export.ink import GREY, UNIT, Ink
from tapeline.export.line_kind import LineKind
from tapeline.finish import Title
from tapeline.geometry import Path, Point
from tapeline.units import Unit

__all__ = ["SQUARES_MM", "draw_panel", "square_corners"]

SQUARES_MM = (100.0, 101.6)
"""Test squares: 100 mm, and 4 in for a ruler in inches."""
SQUARE_TOPS_MM = (232.5, 119.4)
"""Height of their upper sides in the panel."""
KINDS = ((LineKind.CUT, "cut"), (LineKind.SEAM, "sew"), (LineKind.FOLD, "fold"), (LineKind.MARK, "mark"))
"""Lines of the print of one garment, and what they are for."""
COLUMN_MM = 110.0
"""Left of the words beside the squares."""
TEXT_MM = 2.9
HEADING_MM = 4.2

MEASURE = "Measure both squares, up and across. If one is off by over {little}, mend the printer's scale, print again."
TRIM = (
    "Start with row 1, column 1. Where a sheet says so, cut off its left or its top margin along the thin line. "
    "Right and bottom margins stay on."
)
GLUE = (
    "Glue row by row: lay the cut edge on the dashed line of the sheet before, over its grey strip, until the "
    "diamonds are whole. Sheets with nothing on them are left out."
)
CARE = (
    "Blades, needles and pins are sharp: keep fingers out of the blade's way, count the pins back into their box, "
    "keep both from children. Irons and steam burn: never leave a hot iron alone."
)


def square_corners() -> tuple[Point, Point]:
    """Lower left corners of the two test squares in the panel."""
    metric, inches = (Point(0.5, top - side) for side, top in zip(SQUARES_MM, SQUARE_TOPS_MM, strict=True))
    return metric, inches


def draw_panel(
    ink: Ink,
    layout: Layout,
    drawings: Sequence[Drawing],
    title: Title,
    unit: Unit,
    *,
    kinds: Sequence[tuple[LineKind, str]] = KINDS,
) -> None:
    """The panel, from its lower left; `kinds` are the lines that its foot explains."""
    width, height = PANEL_MM
    name = f"{title.style.capitalize()} for {title.wearer}" if title.wearer else title.style.capitalize()
    size = min(8.0, 8.0 * width / ink.width(name, 8.0, bold=True))
    ink.words(name, 0, height - 8, size, bold=True)
    facts = (title.docket, title.date, _sheets(layout, unit), f"Tapeline {title.version}" if title.version else "")
    line = "  ·  ".join(fact for fact in facts if fact)
    ink.words(line, 0, height - 14.5, min(3.4, 3.4 * width / ink.width(line, 3.4)), grey=GREY)
    _squares(ink)
    _legend(ink, kinds)
    y = height - 22
    y = _overview(ink, drawings, y)
    if len(layout.tiles) > 1:
        y = _map(ink, layout, y)
    _words(ink, layout, y, unit)


def _sheets(layout: Layout, unit: Unit) -> str:
    count, name = len(layout.tiles), layout.paper.name
    if layout.paper.is_roll:
        length = (layout.size_mm[1] + 2 * layout.paper.margin_mm) / unit.mm
        return f"{length:.1f} {unit.sign} of {name}"
    if count == 1:
        return f"1 sheet of {name}" + ("" if layout.panel else " and this page")
    return f"{count} sheets of {name}" + (" to glue" if layout.panel else " to glue, and this page")


def _squares(ink: Ink) -> None:
    corners = square_corners()
    ink.pen(0.25, round_ends=False)
    for side, corner, text in zip(
        SQUARES_MM, corners, ("100 mm: measure both ways", "4 in (101.6 mm): measure both ways"), strict=True
    ):
        ink.box(corner.x, corner.y, side, side)
        ink.words(text, corner.x, corner.y - 7, TEXT_MM + 0.3)


def _legend(ink: Ink, kinds: Sequence[tuple[LineKind, str]]) -> None:
    x, y = 0.5, 1.0
    for kind, text in kinds:
        ink.sample(kind, x, y + 0.9, 12)
        ink.words(text, x + 13.2, y, TEXT_MM)
        x += 13.2 + ink.width(text, TEXT_MM) + 5


def _heading(ink: Ink, text: str, y: float) -> float:
    ink.words(text, COLUMN_MM, y - HEADING_MM, HEADING_MM, bold=True)
    return y - HEADING_MM - 3.5


def _overview(ink: Ink, drawings: Sequence[Drawing], top: float) -> float:
    """All pieces, small and upright, with their names."""
    top = _heading(ink, "The pieces", top)
    boxes = [_bounds(drawing.piece.cut_line) for drawing in drawings]
    room, gap, tall = PANEL_MM[0] - COLUMN_MM, 5.0, 34.0
    wide = sum(box[2] - box[0] for box in boxes)
    scale = min((room - gap * (len(boxes) - 1)) / wide, tall / max(box[3] - box[1] for box in boxes))
    spare = (room - scale * wide) / max(1, len(boxes) - 1) if len(boxes) > 1 else 0.0
    x, floor = COLUMN_MM, top - scale * max(box[3] - box[1] for box in boxes)
    ink.pen(0.25)
    for drawing, (left, _, right, high) in zip(drawings, boxes, strict=True):
        # Scaling is no move of paper, so it is done on the page.
        ink.canvas.saveState()
        ink.canvas.translate((x - left * scale) * UNIT, (top - high * scale) * UNIT)
        ink.canvas.scale(scale, scale)
        ink.canvas.setLineWidth(0.25 * UNIT / scale)
        ink.area(drawing.piece.cut_line, 0.95)
        ink.canvas.restoreState()
        text = drawing.piece.piece.title
        size = min(2.6, 2.6 * 18 / ink.width(text, 2.6))
        middle = min(x + scale * (right - left) / 2, PANEL_MM[0] - ink.width(text, size) / 2)
        ink.words(text, middle, floor - 4.5, size, middle=True)
        x += scale * (right - left) + min(spare, 12.0)
    return floor - 10


def _map(ink: Ink, layout: Layout, top: float) -> float:
    """The glued whole: sheets with their rows and columns, pieces where they lie; sheets left out are blank."""
    top = _heading(ink, "How the sheets lie", top)
    width, height = layout.size_mm
    room, tall, beside = PANEL_MM[0] - COLUMN_MM, 62.0, 8.0
    scale = min((room - beside) / width, (tall - 5) / height)
    left, low = COLUMN_MM + beside, top - 5 - scale * height
    dx, dy = layout.step_mm
    ink.canvas.saveState()
    ink.canvas.translate(left * UNIT, low * UNIT)
    ink.canvas.scale(scale, scale)
    for tile in layout.tiles:
        corner = layout.corner(tile)
        ink.tint(corner.x, corner.y, *layout.field_mm, 0.95)
    ink.canvas.setDash([])
    ink.canvas.setLineWidth(0.25 * UNIT / scale)
    ink.canvas.setStrokeGray(0)
    for place in layout.placements:
        ink.area(place.piece.cut_line.moved(place.move), 1.0)
    ink.canvas.setLineWidth(0.12 * UNIT / scale)
    ink.canvas.setStrokeGray(GREY)
    for tile in layout.tiles:
        corner = layout.corner(tile)
        ink.box(corner.x, corner.y, *layout.field_mm)
    ink.canvas.restoreState()
    for column in range(layout.columns):
        ink.words(str(column + 1), left + scale * (column * dx + layout.field_mm[0] / 2), top - 3.5, 2.6, middle=True)
    for row in range(layout.rows):
        level = low + scale * (height - row * dy - layout.field_mm[1] / 2)
        ink.words(str(row + 1), left - 3, level - 0.9, 2.6, middle=True)
    ink.words("column", left, top - 0.6, 2.2, grey=GREY)
    with ink.at(COLUMN_MM + 1.6, top - 5, 0):
        ink.words("row", 0, 0, 2.2, grey=GREY)
    return low - 6


def _words(ink: Ink, layout: Layout, top: float, unit: Unit) -> None:
    little = "half a millimetre" if unit is Unit.CM else "1/64 in"
    width = PANEL_MM[0] - COLUMN_MM
    y = _heading(ink, "Before you cut", top) - 1.6
    todo = ["Print at 100 %, not fitted to the page.", MEASURE.format(little=little)]
    if len(layout.tiles) > 1:
        todo += [TRIM, GLUE]
    for number, text in enumerate(todo, 1):
        ink.words(f"{number}.", COLUMN_MM, y, TEXT_MM)
        y = ink.paragraph(text, COLUMN_MM, y, width, TEXT_MM, indent=5) - 0.8
    y = _heading(ink, "Take care", y - 0.5) - 1.6
    ink.paragraph(CARE, COLUMN_MM, y, width, TEXT_MM)


def _bounds(path: Path) -> tuple[float, float, float, float]:
    points = path.flattened(0.5)
    xs, ys = [p.x for p in points], [p.y for p in points]
    return min(xs), min(ys), max(xs), max(ys)
