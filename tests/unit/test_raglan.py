"""A raglan moves the shoulder to the sleeve, and changes neither the neckline nor how the sleeve hangs."""

from __future__ import annotations

import pytest

from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.raglan_choices import RaglanChoices, RaglanSleeveChoices
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES, CapShape, SleeveChoices
from tapeline.lengths import cm
from tapeline.measures import Figure
from tapeline.problems import InputError
from tapeline.styles.top import FinishedNeckline
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw
from tests.properties.measuring import turnings
from tests.unit.sizes import size
from tests.unit.test_truing import trued
from tests.wearers import random_wearers


@pytest.mark.parametrize("looseness", ["close", "slight", "easy", "loose"])
def test_the_neckline_is_the_set_in_one_cut_in_four(looseness: str) -> None:
    """All four parts together are as long as the neckline of a set-in top, and so is the band made for them."""
    raglan, tee = draw(MARIT, "raglan", looseness), draw(MARIT, "tee", looseness)
    parts = [raglan.piece(name).edge("neckline").length for name in ("back", "back_sleeve", "front_sleeve", "front")]
    whole = [tee.piece(name).edge("neckline").length for name in ("back", "front")]
    assert sum(parts) == pytest.approx(sum(whole), abs=1e-6)
    assert size(raglan, "band_half_length") == pytest.approx(size(tee, "band_half_length"), abs=1e-6)


@pytest.mark.parametrize(("front", "back"), [(0.2, 0.5), (0.3, 0.4), (0.6, 0.2)])
def test_the_seams_leave_the_neckline_at_the_stated_shares(front: float, back: float) -> None:
    """So much of each neckline as was chosen lies on the sleeve."""
    garment = draw(MARIT, "raglan", raglan=RaglanChoices(front, back))
    for half, share in (("front", front), ("back", back)):
        body, sleeve = (garment.piece(name).edge("neckline").length for name in (half, f"{half}_sleeve"))
        assert sleeve / (body + sleeve) == pytest.approx(share, abs=1e-6)


@pytest.mark.parametrize("share", [0.22, 0.25, 0.3, 1 / 3])
@pytest.mark.parametrize("looseness", ["slight", "loose"])
def test_it_is_a_little_wider_than_a_set_in_sleeve(share: float, looseness: str) -> None:
    """A set-in sleeve with the same cap is as wide, or narrower by up to an eighth.

    Cap height, half width and the line between them make the same triangle (exact identity), and both lines go from
    shoulder point to underarm over armholes of the same depth; the rest is the room over the shoulder.
    """
    raglan = draw(MARIT, "raglan", looseness, sleeve=RaglanSleeveChoices(cap=CapShape(share)))
    tee = draw(MARIT, "tee", looseness, sleeve=SleeveChoices(cap=CapShape(share)))
    assert size(raglan, "cap_height") == pytest.approx(size(tee, "cap_height"), abs=0.5)
    assert 1 < size(raglan, "sleeve_width") / size(tee, "sleeve_width") < 9 / 8


def test_a_higher_cap_hangs_steeper_and_bends_more_at_the_shoulder() -> None:
    """Hang, and the turn of the overarm seam, grow with the cap; the width shrinks."""
    found = []
    for share in (0.2, 0.25, 0.3, 0.35):
        garment = draw(ARNE, "raglan", "easy", sleeve=RaglanSleeveChoices(cap=CapShape(share)))
        hang = trued(garment, ARNE).hang
        assert hang is not None
        bend = max(turnings(garment.piece("front_sleeve").edge("overarm").path))
        found.append((hang.angle, bend, -hang.width_mm))
    for column in zip(*found, strict=True):
        assert list(column) == sorted(column)


def test_the_sleeve_is_as_long_as_a_set_in_one() -> None:
    """Long sleeves end at the same place of the arm: the arm's length from the shoulder point."""
    garment = draw(ARNE, "raglan", sleeve=RaglanSleeveChoices(length=SLEEVE_LENGTHS["long"]))
    for half in ("front_sleeve", "back_sleeve"):
        piece = garment.piece(half)
        (tip,) = piece.notches_on("overarm")
        assert piece.edge("overarm").length - tip.at_mm == pytest.approx(ARNE["arm_length"], abs=1e-6)
    assert {girth.name for girth in garment.girths} >= {"upper_arm", "wrist"}


@pytest.mark.parametrize("shape", SLEEVE_SHAPES)
@pytest.mark.parametrize("length", SLEEVE_LENGTHS)
def test_every_length_and_shape_holds(shape: str, length: str) -> None:
    """Truing finds no error in any of them; a flared sleeve as short as a cap has no underarm left, and is refused."""
    sleeve = RaglanSleeveChoices(length=SLEEVE_LENGTHS[length], shape=SLEEVE_SHAPES[shape])
    for wearer in (MARIT, random_wearers(Figure.MAN, 1)[0]):
        if (length, shape) == ("cap", "flared"):
            with pytest.raises(InputError, match="underarm-vanishes"):
                draw(wearer, "raglan", sleeve=sleeve)
            continue
        assert trued(draw(wearer, "raglan", sleeve=sleeve), wearer).holds


def test_a_cap_that_leaves_no_width_is_refused() -> None:
    """A cap as high as the armhole is deep is refused by name, with a way out."""
    with pytest.raises(InputError) as refused:
        draw(MARIT, "raglan", "close", sleeve=RaglanSleeveChoices(cap=CapShape(0.4, cm(2))))
    assert [problem.code for problem in refused.value.problems] == ["cap-too-high"]
    assert all(problem.hint for problem in refused.value.problems)


@pytest.mark.parametrize("finish", NeckFinish)
@pytest.mark.parametrize("shape", NECK_SHAPES)
def test_every_neck_fits_over_body_and_sleeves(finish: NeckFinish, shape: str) -> None:
    """Each shape of neck with each finish is drafted without an error, or refused by name as on a set-in top.

    A funnel is cut on to the shoulder seam, which a raglan does not have.
    """
    neck = FinishedNeckline(shape=NECK_SHAPES[shape], finish=finish)
    refused = refusal("raglan", neck)
    assert refused == (["funnel-on-raglan"] if shape == "funnel" else refusal("tee", neck))
    if not refused:
        found = trued(draw(MARIT, "raglan", neckline=neck))
        assert found.holds, [str(finding) for finding in found.findings]


def refusal(style: str, neck: FinishedNeckline) -> list[str]:
    """The codes with which a neck is refused."""
    try:
        draw(MARIT, style, neckline=neck)
    except InputError as refused:
        return [problem.code for problem in refused.problems]
    return []
