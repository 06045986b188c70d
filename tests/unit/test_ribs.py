"""Ribs make up what the cloth ends short of, and are as much shorter than it as they stretch."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES
from tapeline.blocks.strip import RibChoices
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.styles import STYLES
from tests.properties.drafts import draw, style_choices
from tests.unit.sizes import size

TAPES = {
    "chest": 1010, "upper_chest": 1020, "waist": 890, "hip": 1000, "shoulder_width": 450, "back_length": 460,
    "hip_depth": 200, "arm_length": 640,
}  # fmt: skip
TOMASZ = Wearer("Tomasz", Figure.MAN, TAPES)


@pytest.mark.parametrize("wide", [3, 6, 8])
def test_a_finished_length_does_not_depend_on_its_rib(wide: float) -> None:
    """Sleeve and cuff together are the arm, hem and band together the length chosen: a fact of the trade, no source."""
    ribs = RibChoices(width=cm(wide))
    garment = draw(TOMASZ, "sweatshirt", "easy", cuff=ribs, hem_band=ribs, length=cm(9))
    crown, hem = garment.points["sleeve.crown"], garment.points["sleeve.hem_level"]
    assert crown.y - hem.y + 10 * wide == pytest.approx(TOMASZ["arm_length"], abs=1e-6)
    hip, low = garment.points["back.hip_level"], garment.points["back.hem_centre"]
    assert hip.y - low.y + 10 * wide == pytest.approx(90, abs=1e-6)


@pytest.mark.parametrize(("stretch", "cuff", "band"), [(20, 0.9, 0.95), (50, 0.8, 0.9), (80, 0.75, 0.85)])
def test_ribs_are_as_short_as_they_stretch(stretch: float, cuff: float, band: float) -> None:
    """Shares of hem and sleeve hem by stretch: common practice in the trade, no source."""
    ribs = RibChoices(stretch=stretch)
    garment = draw(TOMASZ, "sweatshirt", "easy", cuff=ribs, hem_band=ribs)
    assert size(garment, "cuff_length") == pytest.approx(cuff * size(garment, "sleeve_hem_width"), abs=0.01)
    assert size(garment, "hem_band_half_length") == pytest.approx(band * size(garment, "half_hem"), abs=0.01)
    for piece, edge in (("cuff", "hem"), ("hem_band", "hem")):
        assert garment.piece(piece).cut.cloth == "rib"
        assert len(garment.piece(piece).notches_on(edge)) == 1


def test_a_cuff_that_does_not_go_over_the_hand_is_remarked_on() -> None:
    """A rib that does not stretch is as long as the sleeve's hem; tight round a narrow sleeve, that is said."""
    stiff = RibChoices(stretch=0)
    narrow = replace(style_choices("sweatshirt", "easy").sleeve, wrist_ease=cm(2))

    def said(**changes: Any) -> set[str]:
        d = Draft(TOMASZ, {})
        STYLES["sweatshirt"].page(d, style_choices("sweatshirt", "easy", **changes), surveyed=True)
        return {note.code for note in d.notes}

    assert "cuff-tight" in said(cuff=stiff, sleeve=narrow)
    assert "cuff-tight" not in said(sleeve=narrow)
    assert "cuff-tight" not in said()


def test_a_cuff_that_does_not_hold_at_the_wrist_is_remarked_on() -> None:
    """On a straight sleeve three quarters of the hem go over the hand; on a short one that is no matter."""
    sleeve = style_choices("sweatshirt", "easy").sleeve

    def loose(**changes: Any) -> bool:
        d = Draft(TOMASZ, {})
        choices = style_choices("sweatshirt", "easy", sleeve=replace(sleeve, **changes))
        STYLES["sweatshirt"].page(d, choices, surveyed=True)
        return "cuff-loose" in {note.code for note in d.notes}

    assert loose(shape=SLEEVE_SHAPES["straight"])
    assert not loose()
    assert not loose(length=SLEEVE_LENGTHS["elbow"])


def test_a_wide_cuff_leaves_the_wrist_measured() -> None:
    """A sleeve with its cuff reaches the wrist, however wide the cuff is."""
    for wide in (4, 12):
        garment = draw(TOMASZ, "sweatshirt", "easy", cuff=RibChoices(width=cm(wide)))
        assert "wrist" in {girth.name for girth in garment.girths}
