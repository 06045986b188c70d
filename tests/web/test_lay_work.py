"""What the page says of a plan."""

from __future__ import annotations

from dataclasses import replace

from tapeline.geometry import Point
from tapeline.lay import LayCloth, LayPiece, LayPlan, Placement
from tapeline.units import Unit
from tapeline.web.lay_work import _words

SQUARE = (Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100))


def test_a_lay_that_is_larger_by_shrinkage_says_to_cut_it_unwashed() -> None:
    """Where the docket says that the cloth shrinks; nothing is said of a cloth that does not."""
    piece = LayPiece("back", "marit", SQUARE)
    plan = LayPlan(LayCloth(), (piece,), (Placement(piece.key, 0, 0, 0),))
    assert "Laid larger" not in dict(_words(plan, Unit.CM)["rows"])
    shrinking = replace(plan, cloth=LayCloth(shrink_length=5))
    said = dict(_words(shrinking, Unit.CM)["rows"])["Laid larger"]
    assert "5 % in length" in said
    assert "unwashed" in said
