"""Cloth that does not stretch: what is drafted for it is loose enough, and truing says where it is not."""

from __future__ import annotations

import pytest

from tapeline.docket import docket_from_text
from tapeline.project import draft

DOCKET = """
[wearer]
figure = "woman"
size = "88"
[garment]
style = "{style}"
looseness = "{loose}"
[cloth]
stretch_across = {stretch}
"""


def codes(style: str, loose: str, stretch: float) -> set[str]:
    """Codes of everything found."""
    text = DOCKET.format(style=style, loose=loose, stretch=stretch)
    return {problem.code for problem in draft(docket_from_text(text)).problems}


@pytest.mark.parametrize("style", ["shirt", "pyjama", "tee"])
def test_a_woven_top_that_is_slightly_loose_is_doubted(style: str) -> None:
    """8 cm of chest ease is fitted on a trade chart (from memory), too close for a dartless top that does not give."""
    assert "close-for-woven" in codes(style, "slight", 3)
    assert "close-for-woven" not in codes(style, "easy", 3)


def test_knitted_cloth_gives() -> None:
    """The same tee in jersey is what it is meant to be."""
    assert "close-for-woven" not in codes("tee", "slight", 35)


@pytest.mark.parametrize("style", ["shirt", "pyjama"])
def test_a_shirt_that_is_close_is_doubted_whatever_its_cloth(style: str) -> None:
    """A shirt means 10 cm of chest ease and more."""
    assert "looseness-outside" in codes(style, "slight", 35)
    assert not codes(style, "easy" if style == "shirt" else "loose", 3) - {"sleeve-hang", "size-standard"}
