"""The projection, read back by two renderers: pdfium for its marks, pikepdf for its layers."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import numpy as np
import pikepdf
import pypdfium2
import pytest

from tapeline.docket import read_docket
from tapeline.export import Projection, projected
from tapeline.finish import Finished
from tapeline.problems import InputError
from tapeline.project import draft, finished
from tapeline.units import Unit

POINTS_IN_MM = 72 / 25.4
"""ISO 32000-1, 8.3.2.3."""
EDGE_MM = 10.0
"""Round the pieces, as on paper."""


@pytest.fixture(scope="module")
def tee() -> Finished:
    """The tee."""
    return finished(draft(read_docket(Path(__file__).resolve().parents[2] / "examples" / "tee.toml")))


def picture(data: bytes, per_mm: float = 1.0) -> np.ndarray:
    """Grey values of the page, top row first; so many pixels in a millimetre."""
    page = pypdfium2.PdfDocument(data)[0]
    return np.asarray(page.render(scale=per_mm / POINTS_IN_MM, grayscale=True).to_numpy()).squeeze()


def test_it_is_one_page_as_wide_as_the_cloth(tee: Finished) -> None:
    """The page is as wide as asked, and as long as the pieces need."""
    made = projected(tee, Projection(width_mm=1200))
    file = pypdfium2.PdfDocument(made.data)
    assert len(file) == 1
    width, height = (side / POINTS_IN_MM for side in file[0].get_size())
    assert (width, height) == pytest.approx([side + 2 * EDGE_MM for side in made.layout.size_mm], abs=0.05)
    assert width == pytest.approx(1200, abs=0.05)


@pytest.mark.parametrize(("unit", "side"), [(Unit.CM, 100.0), (Unit.INCH, 101.6)])
def test_the_square_measures_what_it_says(tee: Finished, unit: Unit, side: float) -> None:
    """From middle of line to middle of line, both ways, within 0.1 mm."""
    look = Projection(grid=False, line_mm=1.0)
    made = projected(tee, look, unit)
    per_mm = 10.0
    shown = picture(made.data, per_mm) < 128
    panel = made.layout.panel
    assert panel is not None
    x, y = (int((at + EDGE_MM + look.line_mm) * per_mm) for at in (panel.x, panel.y))
    middle = int(side / 2 * per_mm)
    level = shown[shown.shape[0] - y - middle // 2, x - 20 : x + int((side + 3) * per_mm)]
    upright = shown[shown.shape[0] - y - int((side + 3) * per_mm) : shown.shape[0] - y + 20, x + middle]
    for line in (level, upright):
        inked = np.flatnonzero(line)
        groups = np.split(inked, np.flatnonzero(np.diff(inked) > 1) + 1)
        places = [group.mean() / per_mm for group in (groups[0], groups[-1])]
        assert places[1] - places[0] == pytest.approx(side, abs=0.1)


def test_inverted_is_white_on_black(tee: Finished) -> None:
    """Most of the page is black, and every line that was black is white."""
    plain, inverted = (picture(projected(tee, Projection(grid=False, inverted=one)).data) for one in (False, True))
    assert np.median(plain) == 255
    assert np.median(inverted) == 0
    assert np.abs(plain.astype(int) + inverted.astype(int) - 255).mean() < 1.0


def test_its_layers_can_be_hidden(tee: Finished) -> None:
    """The same layers as in the print."""
    with pikepdf.open(BytesIO(projected(tee).data)) as file:
        names = {str(group.Name) for group in file.Root.OCProperties.OCGs}
    assert names == {"Cut line", "Seam line", "Marks", "Words"}


def test_lines_are_as_wide_as_asked(tee: Finished) -> None:
    """Twice the line is about twice the ink."""
    thin, wide = (
        (picture(projected(tee, Projection(grid=False, line_mm=line)).data, 2.0) < 128).sum() for line in (1.5, 3.0)
    )
    assert 1.5 < wide / thin < 2.5


@pytest.mark.parametrize("line", [0.0, 0.2, 9.0, float("nan")])
def test_a_line_that_is_none_is_refused(tee: Finished, line: float) -> None:
    """Too thin to be seen, too wide to cut along, or no number."""
    with pytest.raises(InputError, match="no line to cut along"):
        projected(tee, Projection(line_mm=line))


@pytest.mark.parametrize("width", [100.0, -5.0, float("nan"), 1e9])
def test_a_width_that_is_none_is_refused(tee: Finished, width: float) -> None:
    """Too narrow for a piece, or no width at all."""
    with pytest.raises(InputError):
        projected(tee, Projection(width_mm=width))


def test_the_same_is_written_twice(tee: Finished) -> None:
    """No hour, no random mark."""
    assert projected(tee).data == projected(tee).data
