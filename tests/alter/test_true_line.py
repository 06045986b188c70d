"""Truing a line again after an alteration has turned it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.alter import lengthen, level, true_line
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))


@examples(40)
@given(wearers(), st.floats(20, 100))
def test_a_sleeve_hem_is_square_again_after_lengthening(wearer: Wearer, by: float) -> None:
    """Drawn anew, the slanting underarm turns against the hem; trued, the hem is square and the garment holds."""
    before = drawn(wearer, "block")
    longer = lengthen(before, "sleeve", level(before, "sleeve.cap_foot", down=cm(15)), Length(by))
    trued = true_line(longer, "sleeve", "hem")
    in_order(longer, trued)
    sleeve = trued.piece("sleeve")
    for side in ("underarm_front", "underarm_back"):
        assert sleeve.corner("hem", side)[1] == pytest.approx(math.pi / 2, abs=1e-6)
    assert [found for found in errors(trued, wearer) if "hem" in found] == []
    for edge in sleeve.edges:
        assert edge.name == "hem" or edge == longer.piece("sleeve").edge(edge.name)
    assert sleeve.edge("hem").path.knots == longer.piece("sleeve").edge("hem").path.knots


@pytest.mark.parametrize(
    ("piece", "edge"), [("back", "hem"), ("front", "hem"), ("back", "armhole"), ("front", "armhole")]
)
def test_a_line_that_is_true_stays_as_it_is(piece: str, edge: str) -> None:
    """Hems and armholes are drafted square at both ends: truing draws them where they are."""
    old, new = TEE.piece(piece).edge(edge).path, true_line(TEE, piece, edge).piece(piece).edge(edge).path
    for one, two in zip(old.control_points(), new.control_points(), strict=True):
        assert one.distance_to(two) < 1e-6


def test_what_is_not_there_cannot_be_trued() -> None:
    """An edge or a piece that does not exist is refused with the nearest name."""
    for piece, edge, code in (("back", "hemm", "edge-unknown"), ("bak", "hem", "piece-unknown")):
        with pytest.raises(InputError) as raised:
            true_line(TEE, piece, edge)
        assert "did you mean" in refused(raised.value)[code]
