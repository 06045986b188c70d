"""A top without sleeves: what it takes from the block, and bands that lie flat."""

from __future__ import annotations

import pytest

from tapeline.blocks.armhole_band import ARMHOLE_BAND_SHARES
from tapeline.blocks.neckband import BandChoices
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles.top import NecklineChoices
from tests.properties.drafts import draw

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)


def size(garment: Garment, name: str) -> float:
    """A size, mm."""
    return next(s.length.mm for s in garment.sizes if s.name == name)


def test_the_underarm_is_raised_and_the_shoulder_narrowed() -> None:
    """Beside the tee of the same looseness; a centimetre or two without a sleeve is common practice, no source."""
    tee = draw(NOOR, "tee", "slight")
    vest = draw(NOOR, "vest", "slight", underarm_raised=cm(1.5), shoulder_narrower=cm(4))
    assert vest.points["front.underarm"].y - tee.points["front.underarm"].y == pytest.approx(15, abs=1e-6)
    tips = [g.points["back.back_shoulder_tip"].distance_to(g.points["back.back_neck_point"]) for g in (tee, vest)]
    assert tips[0] - tips[1] == pytest.approx(40, abs=1e-6)


@pytest.mark.parametrize(("stretch", "share"), ARMHOLE_BAND_SHARES)
def test_an_armhole_band_is_never_longer_than_it_may_be(stretch: float, share: float) -> None:
    """As its stretch needs, and no longer than the armhole a band's width further in."""
    garment = draw(NOOR, "vest", "slight", armhole_band=BandChoices(width=cm(1.5), stretch=stretch))
    armhole = sum(garment.piece(half).edge("armhole").length for half in ("back", "front"))
    inner = sum(garment.piece(half).edge("armhole").path.offset_left(15).length for half in ("back", "front"))
    assert size(garment, "armhole_band_length") == pytest.approx(min(share * armhole, inner), abs=0.01)


def test_a_strap_without_room_for_its_bands_is_refused() -> None:
    """Refused by name, with a way out."""
    with pytest.raises(InputError) as refused:
        draw(NOOR, "vest", "slight", shoulder_narrower=cm(8), neckline=NecklineChoices(widen=cm(5)))
    assert {problem.code for problem in refused.value.problems} == {"strap-too-narrow"}
