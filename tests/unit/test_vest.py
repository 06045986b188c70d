"""A top without sleeves: what it takes from the block, and bands that lie flat."""

from __future__ import annotations

import pytest

from tapeline.blocks.armhole_band import ARMHOLE_BAND_SHARES
from tapeline.blocks.neckband import BandChoices
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tapeline.styles.top import NecklineChoices
from tapeline.truing import true
from tests.properties.drafts import draw, style_choices
from tests.unit.sizes import size

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)


@pytest.mark.parametrize(("width", "raised"), [(1, 0), (1.5, 1.5), (2.5, 2)])
def test_the_finished_underarm_is_raised(width: float, raised: float) -> None:
    """Band and all, beside the tee of the same looseness.

    A centimetre or two without a sleeve is common practice, no source.
    """
    tee = draw(NOOR, "tee", "slight")
    vest = draw(NOOR, "vest", "slight", underarm_raised=cm(raised), armhole_band=BandChoices(width=cm(width)))
    for half in ("back", "front"):
        finished = vest.points[f"{half}.underarm"].y + 10 * width
        assert finished - tee.points[f"{half}.underarm"].y == pytest.approx(10 * raised, abs=1e-6)


@pytest.mark.parametrize(("width", "narrower"), [(1, 0), (1.5, 3), (2, 4)])
def test_the_finished_shoulder_is_narrowed(width: float, narrower: float) -> None:
    """Shoulder seam and band together end that much nearer to the neck than the shoulder point, front and back."""
    vest = draw(NOOR, "vest", "slight", shoulder_narrower=cm(narrower), armhole_band=BandChoices(width=cm(width)))
    for half in ("back", "front"):
        whole = vest.points[f"{half}.neckline_shoulder"].distance_to(vest.points[f"{half}.{half}_shoulder_tip"])
        assert vest.piece(half).edge("shoulder").length + 10 * width == pytest.approx(whole - 10 * narrower, abs=1e-6)


@pytest.mark.parametrize(("raised", "said"), [(2, False), (2.5, True)])
def test_an_underarm_that_cuts_in_is_said(raised: float, said: bool) -> None:
    """More than 2 cm above the block is a doubt, not a refusal."""
    d = Draft(NOOR, {})
    STYLES["vest"].page(d, style_choices("vest", "close", underarm_raised=cm(raised)), surveyed=True)
    assert ("underarm-high" in {note.code for note in d.notes}) == said


def test_truing_says_nothing_of_a_sleeve() -> None:
    """Without a sleeve there is neither hang nor upper arm; everything else is looked at and holds."""
    truing = true(draw(NOOR, "vest", "close"), NOOR, Cloth(), meaning={}, pull_on=True)
    assert truing.holds
    assert truing.hang is None
    assert {g.girth.name for g in truing.girths} == {"chest", "waist", "hip"}
    assert not any("sleeve" in finding.says for finding in truing.findings)


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
