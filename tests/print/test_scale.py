"""The print is true to scale, whoever reads it."""

from __future__ import annotations

import numpy as np
import pytest

from tapeline.export import paper, printed
from tapeline.export.arrange import PANEL_MM, Layout
from tapeline.export.page_map import SQUARES_MM, square_corners
from tests.export.garments import tee
from tests.print.render import PX, READERS, lines_across, picture

pytestmark = pytest.mark.slow  # pages are rendered and measured

PAPERS = ("A4", "A3", "A2", "A1", "A0", "Letter", "roll 914 mm", "roll 36 in")


def panel_corner(layout: Layout) -> tuple[float, float]:
    """Upper left corner of the panel on the first page, from that page's upper left, mm."""
    sheet, margin = layout.paper, layout.paper.margin_mm
    return margin + ((sheet.field_mm[0] - PANEL_MM[0]) / 2 if layout.panel is None else 0.0), margin


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("name", PAPERS)
def test_the_test_squares_are_100_mm_and_4_inches(name: str, reader: str) -> None:
    """On every paper both squares measure true within 0.1 mm up and across, and nothing else is near them."""
    made = printed(tee(), paper(name))
    left, top = panel_corner(made.layout)
    # An inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    for true_mm, side, corner in zip((100.0, 4 * 25.4), SQUARES_MM, square_corners(), strict=True):
        clear = 4.0
        box = (left + corner.x - clear, top + PANEL_MM[1] - corner.y - side - clear, side + 2 * clear, side + 2 * clear)
        whole = picture(reader, made.data, 1, box)
        middle = slice(round(side / 2 * PX), round(side / 2 * PX) + 100)
        across, down = lines_across(whole[middle], 0), lines_across(whole[:, middle], 1)
        assert len(across) == len(down) == 2, "the two sides and nothing between them"
        assert across[1] - across[0] == pytest.approx(true_mm, abs=0.1)
        assert down[1] - down[0] == pytest.approx(true_mm, abs=0.1)
        # Clear of all else: beyond the lines themselves the picture is white, outside (up to 4 mm) and inside.
        edge = round(0.4 * PX)
        left_px, right_px, top_px, low_px = (round(v * PX) for v in (*across, *down))
        outside = np.ones(whole.shape, dtype=bool)
        outside[top_px - edge : low_px + edge, left_px - edge : right_px + edge] = False
        assert whole[outside].min() > 250
        assert whole[top_px + edge : low_px - edge, left_px + edge : right_px - edge].min() > 250


@pytest.mark.parametrize("reader", READERS)
def test_a_wrong_scale_would_be_seen(reader: str) -> None:
    """The measuring itself tells 100.0 from 100.5 and 99.0: a print that a viewer has scaled is caught."""
    made = printed(tee(), paper("A4"))
    left, top = panel_corner(made.layout)
    corner = square_corners()[0]
    row = picture(reader, made.data, 1, (left, top + PANEL_MM[1] - corner.y - 50, 110, 5))
    for fault in (1.005, 0.99):
        places = np.arange(round(row.shape[1] * fault)) / fault
        scaled = np.stack([np.interp(places, np.arange(row.shape[1]), line) for line in row.astype(float)])
        found = lines_across(scaled, 0)
        assert abs(found[1] - found[0] - 100) > 0.3


@pytest.mark.parametrize("name", ["A4", "Letter", "A3"])
def test_two_readers_see_the_same(name: str) -> None:
    """Every dark place that one reader shows, the other shows within 0.2 mm: nothing depends on a reader's whim."""
    made = printed(tee(), paper(name))
    for page in (1, 2):
        one, other = (picture(reader, made.data, page) for reader in READERS)
        assert abs(one.shape[0] - other.shape[0]) <= 1
        assert abs(one.shape[1] - other.shape[1]) <= 1
        rows, columns = min(one.shape[0], other.shape[0]), min(one.shape[1], other.shape[1])
        pair = one[:rows, :columns], other[:rows, :columns]
        for a, b in (pair, pair[::-1]):
            assert not (grown(b < 235, 2) < (a < 60)).any()


def grown(dark: np.ndarray, by: int) -> np.ndarray:
    """Dark places with a border of some pixels."""
    found = dark.copy()
    for axis in (0, 1):
        now = found.copy()
        for shift in range(1, by + 1):
            for way in (shift, -shift):
                found |= np.roll(now, way, axis)
    return found
