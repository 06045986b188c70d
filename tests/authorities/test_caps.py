"""The cap of the sleeve against the triangle that every handbook draws it from: exact, by Pythagoras."""

from __future__ import annotations

import csv
import math
from dataclasses import replace
from pathlib import Path

import pytest

from tapeline.blocks.sleeve_choices import CAPS
from tapeline.lengths import cm
from tapeline.measures import size_wearer
from tapeline.pattern import Garment
from tests.properties.drafts import draw, style_choices

TABLE = Path(__file__).with_name("cap_triangle.csv")


def rows() -> list[dict[str, str]]:
    """The table's rows."""
    return list(csv.DictReader(line for line in TABLE.read_text(encoding="utf-8").splitlines() if line[0] != "#"))


@pytest.mark.parametrize("row", rows(), ids=lambda r: f"{r['AH']}, {r['rule']}")
def test_the_leg_of_the_cap_triangle_is_half_the_sleeve(row: dict[str, str]) -> None:
    """From a straight line and a cap height comes the half width of the table, to its last place."""
    half = cm(float(row["straight"])).leg(cm(float(row["cap_height"])), cm(4))
    assert 2 * half.mm / 10 == pytest.approx(float(row["width"]), abs=2e-3)


@pytest.mark.parametrize("cap", CAPS)
@pytest.mark.parametrize("size", ["76", "88", "104", "122"])
def test_the_sleeve_is_drawn_in_its_triangle(size: str, cap: str) -> None:
    """Crown and underarm of the drawn sleeve are the corners of that triangle, and its cap is as high as was chosen.

    Because the cap line is curved, the sleeve is narrower than the straight triangle of the same armhole: by 5 to 6 of
    100 for an easy cap and 9 to 10 for a formal one (measured on our own sleeves).
    """
    choices = style_choices("block", "close")
    garment: Garment = draw(size_wearer(size), "block", "close", sleeve=replace(choices.sleeve, cap=CAPS[cap]))
    sizes = {s.name: s.length.mm for s in garment.sizes}
    points = garment.points
    armhole, height = sizes["armhole"], sizes["cap_height"]
    assert height == pytest.approx(armhole * float(CAPS[cap].share), abs=1e-9)
    for half in ("front", "back"):
        underarm, crown = points[f"sleeve.{half}_underarm"], points["sleeve.crown"]
        straight = math.hypot(sizes[f"{half}_sleeve_width"], height)
        assert underarm.distance_to(crown) == pytest.approx(straight, abs=1e-9)
        assert straight < sizes[f"{half}_armhole"], "a straight line is shorter than the curve over it"
    triangle = 2 * math.sqrt((armhole / 2) ** 2 - height**2)
    low, high = {"easy": (0.94, 0.95), "formal": (0.90, 0.91)}[cap]
    assert low < sizes["sleeve_width"] / triangle < high
