"""Pieces on paper: apart, upright or turned by quarters, and on few sheets."""

from __future__ import annotations

import itertools
import math

import pytest
from shapely import Polygon, box

from tapeline.export import paper
from tapeline.export.arrange import GAP_MM, PANEL_MM, Layout, arrange
from tapeline.problems import InputError
from tests.export.garments import tee

PAPERS = ("A4", "Letter", "A3", "A2", "A1", "A0", "roll 914 mm", "roll 24 in")
CASES = list(itertools.product(PAPERS, ("short", "long")))


def outlines(layout: Layout) -> list[Polygon]:
    """The cut lines where they lie, by another library."""
    return [Polygon([(p.x, p.y) for p in a.piece.cut_line.moved(a.move).flattened(0.05)]) for a in layout.placements]


@pytest.mark.parametrize(("name", "sleeve"), CASES)
def test_pieces_keep_apart_and_on_the_paper(name: str, sleeve: str) -> None:
    """No two come nearer than 8 mm, none nears the panel, and every bit of each lies on a sheet that is printed."""
    layout = arrange(tee(sleeve).pieces, paper(name))
    shapes = outlines(layout)
    assert len(shapes) == len(tee(sleeve).pieces)
    for one, other in itertools.combinations(shapes, 2):
        assert one.distance(other) >= GAP_MM - 0.01
    sheets = Polygon()
    for tile in layout.tiles:
        corner = layout.corner(tile)
        sheets = sheets.union(box(corner.x, corner.y, corner.x + layout.field_mm[0], corner.y + layout.field_mm[1]))
    for shape in shapes:
        assert shape.difference(sheets.buffer(0.01)).area < 1e-6
    if layout.panel is not None:
        panel = box(layout.panel.x, layout.panel.y, layout.panel.x + PANEL_MM[0], layout.panel.y + PANEL_MM[1])
        assert all(shape.distance(panel) >= GAP_MM - 0.01 for shape in shapes)
        assert sheets.buffer(0.01).contains(panel)


@pytest.mark.parametrize(("name", "sleeve"), CASES)
def test_every_sheet_that_is_printed_is_needed(name: str, sleeve: str) -> None:
    """Leave any one out and something is lost."""
    layout = arrange(tee(sleeve).pieces, paper(name))
    shapes = outlines(layout)
    if layout.panel is not None:
        shapes.append(box(layout.panel.x, layout.panel.y, layout.panel.x + PANEL_MM[0], layout.panel.y + PANEL_MM[1]))
    whole = [
        box(c.x, c.y, c.x + layout.field_mm[0], c.y + layout.field_mm[1]) for c in map(layout.corner, layout.tiles)
    ]
    for left_out in range(len(whole)):
        rest = Polygon()
        for index, sheet in enumerate(whole):
            rest = rest if index == left_out else rest.union(sheet)
        assert any(shape.difference(rest).area > 0 for shape in shapes)


@pytest.mark.parametrize(("name", "sleeve"), CASES)
def test_grain_runs_along_the_paper(name: str, sleeve: str) -> None:
    """Pieces are turned by quarters and never turned over, so the right side of the cloth stays up."""
    for place in arrange(tee(sleeve).pieces, paper(name)).placements:
        move = place.move
        assert sorted(map(abs, (move.a, move.b))) == [0, 1]
        assert not move.turns_over


@pytest.mark.parametrize(
    ("name", "sleeve", "most"),
    [
        ("A4", "short", 12),
        ("A4", "long", 15),
        ("Letter", "short", 13),
        ("A3", "short", 6),
        ("A2", "short", 4),
        ("A0", "long", 1),
    ],
)
def test_few_sheets(name: str, sleeve: str, most: int) -> None:
    """No more sheets than were found when this was written: at least that good, always."""
    layout = arrange(tee(sleeve).pieces, paper(name))
    assert len(layout.tiles) <= most
    cloth = sum(shape.area for shape in outlines(layout))
    assert len(layout.tiles) >= math.ceil(cloth / (layout.field_mm[0] * layout.field_mm[1])), (
        "as many as the area needs"
    )


def test_a_roll_is_no_longer_than_needed() -> None:
    """On 914 mm the tee takes less than 1 m, and both its ends are used."""
    layout = arrange(tee().pieces, paper("roll 914 mm"))
    assert layout.size_mm[1] < 1000
    shapes = outlines(layout)
    assert min(s.bounds[1] for s in shapes) == pytest.approx(0, abs=5)


def test_the_same_pieces_lie_the_same_way() -> None:
    """Nothing is left to chance."""
    assert arrange(tee().pieces, paper("A4")) == arrange(tee().pieces, paper("A4"))


def test_a_roll_narrower_than_a_piece_is_refused_with_the_width_it_takes() -> None:
    """The problem names a width, and a roll of that width does."""
    with pytest.raises(InputError) as caught:
        arrange(tee().pieces, paper("roll 210 mm"))
    (problem,) = caught.value.problems
    assert problem.code == "roll-too-narrow"
    enough = next(word for word in problem.says.split() if word.isdigit())
    assert arrange(tee().pieces, paper(f"roll {enough} mm")).sheets == 1


def test_more_than_a_page_can_hold_is_refused() -> None:
    """Pieces that would need a page over 5,080 mm, which readers of the file cut off, are said to be too many."""
    with pytest.raises(InputError) as caught:
        arrange(tee("long").pieces * 4, paper("roll 480 mm"))
    (problem,) = caught.value.problems
    assert problem.code == "page-too-long"
    assert "5080" in problem.says
