"""The measurement chart, against truing and against outlines measured by other means."""

from __future__ import annotations

import csv
import io

import pytest

from tapeline.grade import measurement_chart
from tapeline.project import chart_csv
from tests.export.readback import length_of
from tests.grade.runs import run_of


def row(name: str, sizes: str = "84-92", docket: str = "tee") -> list[float]:
    """A measure in every size, mm."""
    (found,) = [one for one in run_of(sizes, docket).chart if one.name == name]
    return [mm for mm in found.mm if mm is not None]


def test_the_chest_is_the_tape_and_the_ease_of_the_docket() -> None:
    """EN 13402-3 bust sizes 84, 88, 92 (read in a secondary text), and the looseness of the style: 4 times 2 cm."""
    assert row("chest") == pytest.approx([840 + 80, 880 + 80, 920 + 80], abs=0.05)


@pytest.mark.parametrize(
    ("name", "edges"),
    [
        ("hem", {"front.hem": 2, "back.hem": 2}),
        ("armhole", {"front.armhole": 1, "back.armhole": 1}),
        ("neckline", {"front.neckline": 2, "back.neckline": 2}),
        ("sleeve_hem", {"sleeve.hem": 1}),
        ("shoulder", {"back.shoulder": 1}),
    ],
)
def test_lengths_are_those_of_the_edges(name: str, edges: dict[str, int]) -> None:
    """Along the edges, measured on their curves by points alone."""
    for size, mm in zip(run_of("84-92").sizes, row(name), strict=True):
        garment = size.drafted.garment
        measured = sum(
            times * length_of(garment.piece(piece).edge(edge).path.svg())
            for (piece, edge), times in ((label.split("."), times) for label, times in edges.items())
        )
        assert mm == pytest.approx(measured, abs=0.05)


def test_a_lap_is_not_counted() -> None:
    """A shirt's hem goes round as far as its halves do up to the centre front, though its fronts lap over."""
    for size, mm in zip(run_of("84-92", "simple-shirt").sizes, row("hem", docket="simple-shirt"), strict=True):
        garment = size.drafted.garment
        front, back = (garment.piece(name).edge("hem").path for name in ("front", "back"))
        assert front.end.x == pytest.approx(0, abs=1e-6)
        assert mm == pytest.approx(2 * (length_of(front.svg()) + length_of(back.svg())), abs=0.1)


def test_panels_are_counted() -> None:
    """A panelled top's hem is as long as what its band is sewn to, panels and all, both halves."""
    for size, mm in zip(run_of("84-92", "panelled-top").sizes, row("hem", docket="panelled-top"), strict=True):
        garment = size.drafted.garment
        (seam,) = [seam for seam in garment.seams if seam.name == "hem"]
        assert mm == pytest.approx(2 * garment.run_length(seam.b), abs=0.05)


def test_what_one_size_does_not_have_is_left_empty() -> None:
    """A chart of a hooded and a plain garment has rows for both, with None where there is nothing of the kind."""
    garments = [run_of("88", name).sizes[0].drafted.garment for name in ("tee", "hooded-sweatshirt")]
    cuff = next(one for one in measurement_chart(garments) if one.name == "cuff")
    assert cuff.mm[0] is None
    assert cuff.mm[1] is not None


def test_the_file_of_the_chart_says_the_same() -> None:
    """Read back as CSV: a column for each size, in the docket's unit."""
    run = run_of("84-92")
    rows = list(csv.reader(io.StringIO(chart_csv(run))))
    assert rows[0] == ["measure", "unit", "84", "88", "92"]
    for cells, one in zip(rows[1:], run.chart, strict=True):
        assert cells[:2] == [one.title, "cm"]
        assert [float(cell) * 10 for cell in cells[2:]] == pytest.approx(list(one.mm), abs=0.051)
