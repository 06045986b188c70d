"""Hems that are faced or bound, in every style that has them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.front_edge import FRONT_EDGES
from tapeline.blocks.hems import HEM_SHAPES, HemChoices, HemFinish
from tapeline.blocks.neckband import BindingChoices
from tapeline.blocks.parts import ColourBlockChoices
from tapeline.lengths import cm
from tapeline.measures import size_wearer
from tapeline.pattern import EdgeKind, Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tests.alter.altered import errors
from tests.alter.whole import whole
from tests.properties.drafts import draw, style_choices

WEARER = size_wearer("92")
HEMMED = [name for name, style in STYLES.items() if hasattr(style.choices(), "hem")]
CLOSED = {"shirt": {"front": FRONT_EDGES["zip"]}, "pyjama": {"front": FRONT_EDGES["zip"]}}
"""A front with a facing cut on has no other finish."""


def hemmed(style: str, hem: HemChoices, **changes: Any) -> Garment:
    """A garment with such a hem."""
    changes = {**CLOSED.get(style, {}), **changes}
    return draw(WEARER, style, "easy", hem=hem, length=cm(10), **changes)


@pytest.mark.parametrize("style", HEMMED)
@pytest.mark.parametrize("shape", ["straight", "curved", "high-low"])
@pytest.mark.parametrize("finish", [HemFinish.FACING, HemFinish.BINDING])
def test_every_hem_can_be_faced_or_bound(style: str, shape: str, finish: HemFinish) -> None:
    """Whole and true: every edge that is sewn has its partner, and no outline crosses."""
    made = hemmed(style, HemChoices(HEM_SHAPES[shape], finish=finish))
    # A girth across an arm that is cut in one is measured along a line, which is no point and no edge.
    assert [found for found in whole(made) if "arm_across" not in found] == []
    assert errors(made, WEARER) == []


@pytest.mark.parametrize("width", [3, 5])
def test_a_facing_is_the_body_s_own_edge(width: float) -> None:
    """Its hem is the body's, its inner edge lies its width inside, and it lies on the fold where the body does."""
    made = hemmed("vest", HemChoices(HEM_SHAPES["curved"], finish=HemFinish.FACING, facing=cm(width)))
    for half in ("front", "back"):
        facing, body = made.piece(f"{half}_hem_facing"), made.piece(half)
        assert facing.edge("hem").path == body.edge("hem").path
        assert facing.edge("inner").kind is EdgeKind.NEATENED
        inner = facing.edge("inner").path
        for share in (0.2, 0.5, 0.8):
            place = inner.at(inner.length * share)
            assert body.edge("hem").path.distance_to(place) == pytest.approx(10 * width, abs=0.1)
        assert facing.on_fold


def test_a_binding_is_as_wide_as_its_allowances_and_a_little_shorter() -> None:
    """0.90 to 0.95 of the edge by its stretch, from memory of trade handbooks; folded over as wide an allowance."""
    binding = BindingChoices(cm(1), 35.0)
    made = hemmed("tee", HemChoices(finish=HemFinish.BINDING, binding=binding))
    strip = made.piece("hem_binding")
    edges = [made.piece(half).edge("hem") for half in ("front", "back")]
    share = strip.edge("hem").length / sum(edge.length for edge in edges)
    assert 0.90 <= share <= 0.95
    assert {edge.allowance_mm for edge in (*edges, strip.edge("hem"), strip.edge("hem_turned"))} == {10}


def test_below_a_colour_block_the_lower_pieces_are_faced() -> None:
    """The hem is where the block is: the facing is traced from there."""
    block = ColourBlockChoices(cm(12))
    made = hemmed("tee", HemChoices(finish=HemFinish.FACING), colour_block=block)
    assert {"front_lower_hem_facing", "back_lower_hem_facing"} <= {piece.name for piece in made.pieces}
    assert whole(made) == []


@pytest.mark.parametrize(
    ("style", "hem", "changes"),
    [
        ("tee", HemChoices(vent=cm(8), finish=HemFinish.FACING), {}),
        ("tee", HemChoices(vent=cm(8), finish=HemFinish.BINDING), {}),
        ("shirt", HemChoices(finish=HemFinish.FACING), {"front": FRONT_EDGES["buttons"]}),
    ],
)
def test_where_a_hem_cannot_be_faced_it_is_refused(style: str, hem: HemChoices, changes: dict[str, Any]) -> None:
    """At a vent, or beside a facing that is cut on: by name, with what to choose."""
    with pytest.raises(InputError) as refused:
        hemmed(style, hem, **changes)
    assert [problem.code for problem in refused.value.problems] == ["hem-finish-not-here"]


def test_a_hem_that_is_turned_up_has_no_other_piece() -> None:
    """Unless something else is chosen nothing is added, and the numbers of the others say nothing."""
    made = hemmed("tee", HemChoices())
    assert {piece.name for piece in made.pieces} == {"back", "front", "sleeve", "neckband"}
    assert style_choices("tee", "easy").hem.idle == {"facing", "binding"}
    assert replace(HemChoices(), finish=HemFinish.FACING).idle == {"binding"}
