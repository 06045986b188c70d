"""Cap ease: by the sort of the cloth, or as the maker says."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.sleeve_choices import CAPS
from tapeline.docket import docket_from_text
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.measures import size_wearer
from tapeline.pattern import Cloth, ClothSort, Garment
from tapeline.project import draft
from tapeline.styles import STYLES
from tests.properties.drafts import style_choices

WEARER = size_wearer("92")


def made(style: str, sort: ClothSort, **sleeve: Any) -> Garment:
    """A garment of a sort of cloth, with a sleeve of its own."""
    own = style_choices(style, "easy").sleeve
    choices = style_choices(style, "easy", sleeve=replace(own, **sleeve))
    return STYLES[style].drawn(Draft(WEARER, {}, cloth=Cloth(sort=sort)), choices, surveyed=True)


def eased(garment: Garment) -> float:
    """How much longer the cap line is than both armholes, mm, measured on the pieces."""
    cap = sum(garment.piece("sleeve").edge(f"cap_{half}").length for half in ("front", "back"))
    return cap - sum(garment.piece(half).edge("armhole").length for half in ("front", "back"))


@pytest.mark.parametrize("style", ["tee", "shirt", "sweatshirt", "polo"])
@pytest.mark.parametrize(
    ("sort", "cap", "least", "most"),
    [
        # Knit 0 to 0.5, shirt 0 to 1.5, blouse 2 to 3.5: from memory of trade handbooks.
        (ClothSort.LIGHT_KNIT, "easy", 0, 5),
        (ClothSort.HEAVY_KNIT, "formal", 0, 5),
        (ClothSort.LIGHT_WOVEN, "easy", 0, 15),
        (ClothSort.HEAVY_WOVEN, "easy", 0, 15),
        (ClothSort.LIGHT_WOVEN, "formal", 20, 35),
        (ClothSort.HEAVY_WOVEN, "formal", 20, 35),
    ],
)
def test_the_cloth_says_how_much_is_eased_in(style: str, sort: ClothSort, cap: str, least: float, most: float) -> None:
    """On the pieces, the cap is longer than the armhole by what handbooks give for such a cloth and cap."""
    assert least - 0.1 <= eased(made(style, sort, cap=CAPS[cap])) <= most + 0.1


def test_a_heavier_cloth_takes_more_and_a_knit_least() -> None:
    """From jersey to wool the ease grows, and so does the sleeve that it makes wider."""
    garments = [made("shirt", sort) for sort in list(ClothSort)[1:]]
    found = [eased(garment) for garment in garments]
    assert found[0] == pytest.approx(0, abs=0.01)
    assert found == sorted(found)
    assert len({round(one) for one in found[1:]}) > 1


def test_a_dropped_shoulder_has_none() -> None:
    """Its flat cap is as long as the armhole of whatever cloth (from memory of trade handbooks)."""
    assert eased(made("dropped", ClothSort.HEAVY_WOVEN)) == pytest.approx(0, abs=0.01)


def test_a_number_by_hand_wins() -> None:
    """What the maker says is eased in, of whatever cloth."""
    garment = made("shirt", ClothSort.HEAVY_WOVEN, ease=CapEase(cm(2.2)))
    assert eased(garment) == pytest.approx(22, abs=0.01)
    assert "chosen" in garment.step("cap_ease").says


def test_a_docket_names_the_sort_and_the_step_says_why() -> None:
    """Of a docket the ease has a step, with its reason and where it is from; without a sort it is the style's own."""
    text = "[wearer]\nfigure = 'woman'\nsize = '92'\n[garment]\nstyle = 'shirt'\n[cloth]\n{}"
    said, unsaid = (draft(docket_from_text(text.format(line))) for line in ("sort = 'heavy-woven'", ""))
    step = said.garment.step("cap_ease")
    assert step.lengths[0].mm == 15
    assert "steam" in step.says
    assert "handbooks" in step.source
    assert unsaid.garment.step("cap_ease").lengths[0].mm == 10


def test_what_a_sort_does_not_say_is_usual_for_it() -> None:
    """A woven cloth whose stretch nobody measured stretches 1 to 5 per cent on the grain (from memory)."""
    text = "[wearer]\nfigure = 'woman'\nsize = '92'\n[cloth]\nsort = '{}'\n"
    for sort in ClothSort:
        cloth = docket_from_text(text.format(sort)).cloth
        assert cloth.sort is sort
        assert (cloth.stretch_across <= 5) == sort.woven
    assert docket_from_text(text.format("light-woven") + "stretch_across = 20").cloth.stretch_across == 20
