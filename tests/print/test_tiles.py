"""Sheets glued as the first page says give the pieces back."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from tapeline.export import Print, paper, printed
from tapeline.geometry import Line, Point
from tapeline.geometry.silhouette import even_points
from tests.export.garments import tee
from tests.print.render import PX, picture

pytestmark = pytest.mark.slow  # pages are rendered and measured

DARK = 140
WITHIN_MM = 0.2


def glued(made: Print, reader: str, overlap_mm: float) -> Any:
    """The sheets laid over each other, row by row from the upper left, each cut at its left and upper line."""
    layout = made.layout
    width, height = layout.size_mm
    whole = np.full((round(height * PX), round(width * PX)), 255, dtype=np.uint8)
    first = 2 if layout.panel is None else 1
    margin = round(layout.paper.margin_mm * PX)
    wide, high = (round(v * PX) for v in layout.field_mm)
    for number, tile in enumerate(layout.tiles):
        sheet = picture(reader, made.data, first + number)[margin : margin + high, margin : margin + wide]
        x = round((tile.column - 1) * (layout.field_mm[0] - overlap_mm) * PX)
        y = round((tile.row - 1) * (layout.field_mm[1] - overlap_mm) * PX)
        part = whole[y : y + high, x : x + wide]
        part[:] = sheet[: part.shape[0], : part.shape[1]]
    return whole


def missed(made: Print, whole: Any) -> float:
    """The share of all cut and seam lines with nothing dark within 0.2 mm."""
    height = made.layout.size_mm[1]
    reach = round(WITHIN_MM * PX)
    total = lost = 0
    for place in made.layout.placements:
        piece = place.piece
        folds = [Line(edge.path.start, edge.path.end).moved(place.move) for edge in piece.piece.edges if edge.fold]
        for line in (piece.cut_line, *(edge.path for edge in piece.piece.edges if not edge.fold)):
            for x, y in even_points(line.moved(place.move).flattened(0.01), 1.0):
                if any(abs(f.direction(0).cross(Point(x, y) - f.start)) < 0.01 for f in folds):
                    continue  # a fold is drawn broken
                row, column = round((height - y) * PX - 0.5), round(x * PX - 0.5)
                near = whole[max(row - reach, 0) : row + reach + 1, max(column - reach, 0) : column + reach + 1]
                total += 1
                lost += bool(near.min(initial=255) > DARK)
    assert total > 3000
    return lost / total


@pytest.mark.slow
@pytest.mark.parametrize(
    ("name", "reader"), [("A4", "pdfium"), ("A4", "poppler"), ("Letter", "pdfium"), ("A3", "pdfium")]
)
def test_glued_sheets_give_every_outline_back(name: str, reader: str) -> None:
    """With the overlap that is documented, 10 mm, every line lies within 0.2 mm of the model's; with another, not."""
    made = printed(tee(), paper(name))
    assert missed(made, glued(made, reader, 10.0)) == 0
    if reader == "pdfium":
        assert missed(made, glued(made, reader, 10.5)) > 0.2


@pytest.mark.slow
def test_a_single_sheet_and_a_roll_hold_every_outline() -> None:
    """On A0 and on a roll the same lines are found, with nothing glued."""
    for name in ("A0", "roll 914 mm"):
        made = printed(tee(), paper(name))
        assert len(made.layout.tiles) == 1
        assert missed(made, glued(made, "pdfium", 0.0)) == 0


def test_neighbours_show_the_same_strip() -> None:
    """What lies under a joint is printed on both sheets, so that a sheet a little off still loses nothing."""
    made = printed(tee(), paper("A4"))
    layout = made.layout
    margin, wide = round(layout.paper.margin_mm * PX), round(layout.field_mm[0] * PX)
    high = round(layout.field_mm[1] * PX)
    seen = 0
    for number, tile in enumerate(layout.tiles):
        right = next((i for i, t in enumerate(layout.tiles) if (t.row, t.column) == (tile.row, tile.column + 1)), None)
        if right is None:
            continue
        one, other = (
            picture("pdfium", made.data, 2 + i)[margin : margin + high, margin : margin + wide] for i in (number, right)
        )
        # Away from the words, the marks and the lines that help with gluing: black is the pattern.
        a, b = one[:, wide - 60 : wide - 40] < 60, other[:, 40:60] < 60
        assert (a ^ b).mean() < 0.01
        seen += int(a.sum())
    assert seen > 100
