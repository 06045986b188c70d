"""The looseness of a block in its two ways: extended by the rule, and cut and spread as in the classroom."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.alter import loosened, two_ways
from tapeline.alter.story import latest
from tapeline.blocks.looseness import Looseness
from tapeline.draft import Draft
from tapeline.geometry import Point
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tapeline.styles.block import BlockChoices
from tests.alter.altered import in_order
from tests.alter.whole import whole
from tests.properties.drafts import examples
from tests.wearers import wearers

FIXED_MM = 1.0
"""Both ways agree within this at the places that the rule fixes."""


def block(wearer: Wearer, looseness: Looseness) -> Garment:
    """The wearer's block, for whom there is one."""
    try:
        return STYLES["block"].page(Draft(wearer, {}), BlockChoices(looseness=looseness), surveyed=True)
    except InputError:
        assume(False)
        raise


def cut_and_spread(garment: Garment, half: str, side: float, drop: float, shoulder: float) -> Garment:
    """The classroom's way, lengths in cm."""
    return loosened(garment, half, side=cm(side), drop=cm(drop), shoulder=cm(shoulder))


def place(garment: Garment, label: str) -> Point:
    """Where a point is after all alterations."""
    point = latest(garment, label).point
    assert point is not None
    return point


@pytest.mark.parametrize("half", ["back", "front"])
@examples(40)
@given(wearers(), st.floats(0, 6), st.floats(0, 5), st.floats(0, 2))
def test_extended_and_spread_are_the_same_at_the_places_that_the_rule_fixes(
    half: str, wearer: Wearer, side: float, drop: float, shoulder: float
) -> None:
    """Underarm, shoulder tip and side at the hip of the loosened block are those of the close one, cut and spread."""
    assume(side >= shoulder)
    assume(drop == 0 or drop > 0.01)
    close, loose = (
        block(wearer, Looseness(cm(e), cm(d), cm(s), cm(0), cm(0))) for e, d, s in ((0, 0, 0), (side, drop, shoulder))
    )
    opened = cut_and_spread(close, half, side, drop, shoulder)
    for name in ("underarm", f"{half}_shoulder_tip", "side_hip"):
        assert place(opened, f"{half}.{name}").distance_to(place(loose, f"{half}.{name}")) < FIXED_MM, name
    corners = [("shoulder", "armhole"), ("armhole", "side")]
    for one, two in corners:
        drawn, ruled = opened.piece(half).corner(one, two)[0], loose.piece(half).corner(one, two)[0]
        assert drawn.distance_to(ruled) < FIXED_MM, (one, two)
    assert opened.piece(half).edge("neckline") == loose.piece(half).edge("neckline")
    assert whole(opened) == whole(close), "only that a block's neckline is sewn to nothing"
    if side or drop:
        in_order(close, opened)
    shoulders = [g.piece(half).edge("shoulder").length for g in (opened, loose)]
    assert shoulders[0] == pytest.approx(shoulders[1], abs=FIXED_MM)


def test_a_wrong_spread_is_seen() -> None:
    """Spread by half a centimetre less, the underarm is as much off: the proof can fail."""
    wearer = size_wearer("92")
    close = block(wearer, Looseness(cm(0), cm(0), cm(0), cm(0), cm(0)))
    loose = block(wearer, Looseness(cm(3), cm(2), cm(1), cm(0), cm(0)))
    opened = cut_and_spread(close, "back", 2.5, 2, 1)
    assert place(opened, "back.underarm").distance_to(place(loose, "back.underarm")) == pytest.approx(5, abs=1e-6)


def test_where_the_two_ways_differ_is_the_armhole_between() -> None:
    """Between the fixed places the armhole is a matter of drawing: both lines lie within 1.5 mm of each other.

    Measured, not ruled: the rule draws its guide points anew, the paper keeps the close block's.
    """
    wearer = size_wearer("92")
    close = block(wearer, Looseness(Length(0), Length(0), Length(0), Length(0), Length(0)))
    loose = block(wearer, Looseness(cm(2), cm(2), cm(1), cm(0), cm(0)))
    for half in ("back", "front"):
        paper = cut_and_spread(close, half, 2, 2, 1).piece(half).edge("armhole").path
        rule = loose.piece(half).edge("armhole").path
        apart = max(rule.distance_to(paper.at(paper.length * k / 50)) for k in range(51))
        assert apart < 1.5, half


def test_both_ways_are_told_with_what_was_cut() -> None:
    """Places and distances are those of the two drafts, and a looseness of nothing at the shoulder cuts none there."""
    wearer = size_wearer("92")
    close = block(wearer, Looseness(cm(0), cm(0), cm(0), cm(0), cm(0)))
    loose = block(wearer, Looseness(cm(3), cm(2), cm(1), cm(0), cm(0)))
    both = two_ways(close, loose, "front", side=cm(3), drop=cm(2), shoulder=cm(1))
    assert both.same
    assert [name for name, _ in both.lines] == ["strip", "fold", "shoulder", "armhole"]
    tip = loose.points["front.front_shoulder_tip"]
    assert both.places[0].ruled == tip
    # The front's shoulder falls 5 in 14: common practice, no source.
    assert both.out.mm == pytest.approx(10 * 14 / (14**2 + 5**2) ** 0.5, abs=1e-9)
    assert both.fall.mm == pytest.approx(10 * 5 / (14**2 + 5**2) ** 0.5, abs=1e-9)
    wrong = two_ways(close, loose, "front", side=cm(2), drop=cm(2), shoulder=cm(1))
    assert not wrong.same
    assert [round(one.apart_mm, 6) for one in wrong.places] == [0, 10, 10]
    level = block(wearer, Looseness(cm(3), cm(0), cm(0), cm(0), cm(0)))
    assert [n for n, _ in two_ways(close, level, "back", side=cm(3), drop=cm(0), shoulder=cm(0)).lines] == ["armhole"]
