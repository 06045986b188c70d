"""The hand sheet's drawings are true to their scale, whoever reads the file."""

from __future__ import annotations

import pytest

from tapeline.geometry import Point
from tapeline.sheets import HandSheet
from tapeline.sheets.hand_sheet_marks import Picture
from tapeline.units import Unit
from tests.print.render import READERS, lines_across, picture
from tests.sheets.hand_sheets import garment_of, pdf_of, sheet_of

pytestmark = pytest.mark.slow  # pages are rendered and measured

SCALES = pytest.mark.parametrize("scale", [4.0, 5.0])
BY_READER = pytest.mark.parametrize("reader", READERS)


def found(sheet: HandSheet, label: str) -> tuple[int, Point, Picture]:
    """The page (from 1) with the picture in which something is new, and the picture's place on it."""
    for number, page in enumerate(sheet.pages, start=1):
        for corner, made in page.pictures:
            if any(word.words.text.endswith(f" {label}") and word.words.bold for word in made.labels):
                return number, corner, made
    raise AssertionError(label)


@BY_READER
@SCALES
@pytest.mark.parametrize("unit", list(Unit))
def test_the_bar_is_as_long_as_it_says(unit: Unit, scale: float, reader: str) -> None:
    """20 cm at 1:4 measure 50 mm on the paper, 8 in 50.8 mm, within 0.1 mm; the ticks are a quarter apart."""
    sheet = sheet_of(unit=unit, scale=scale)
    page, corner, made = found(sheet, "chest level")
    # The inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    says = 200.0 if unit is Unit.CM else 8 * 25.4
    assert f"{says / unit.mm:g} {unit.sign}" in [w.text for w in made.words]
    assert f"1:{scale:g}" in [w.text for w in made.words]
    line = made.bar[0].path
    top = sheet.paper_mm[1] - corner.y - line.start.y  # of the bar, from the page's upper edge
    box = (corner.x + line.start.x - 2, top - 1.3, line.length + 4, 0.9)
    ticks = lines_across(picture(reader, pdf_of(sheet), page, box), 0)
    assert len(ticks) == 5
    assert ticks[-1] - ticks[0] == pytest.approx(says / scale, abs=0.1)
    assert ticks[1] - ticks[0] == pytest.approx(says / scale / 4, abs=0.1)


@BY_READER
@SCALES
def test_points_lie_as_far_apart_as_on_the_pattern(scale: float, reader: str) -> None:
    """Chest, waist and hip level of the back: their dots measure the pattern's lengths over the scale within 0.1 mm."""
    sheet, points = sheet_of(scale=scale), garment_of().points
    page, corner, made = found(sheet, "hip level")
    new = [dot for dot in made.dots if dot.radius_mm > 0.7]
    assert len(new) == 3
    x = corner.x + new[0].at.x
    high, low = max(d.at.y for d in new), min(d.at.y for d in new)
    top = sheet.paper_mm[1] - corner.y - high
    # Left of the centre line is nothing but the left halves of the dots.
    column = picture(reader, pdf_of(sheet), page, (x - 0.75, top - 2, 0.5, high - low + 4))
    chest, waist, hip = lines_across(column, 1)
    levels = [points[f"back.{name}_level"].y for name in ("chest", "waist", "hip")]
    assert waist - chest == pytest.approx((levels[0] - levels[1]) / scale, abs=0.1)
    assert hip - waist == pytest.approx((levels[1] - levels[2]) / scale, abs=0.1)
    # Waist to hip is Marit's own tape, 20.5 cm.
    assert (hip - waist) * scale == pytest.approx(205, abs=0.1 * scale)
