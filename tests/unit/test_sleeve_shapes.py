"""Sleeves by word: how long they are, which way their seams go, and what that leaves as it is."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES, SleeveLength, SleeveShape
from tapeline.docket import docket_from
from tapeline.draft import Draft
from tapeline.geometry import crosses_itself
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tapeline.truing.reach import sleeve_hang
from tests.properties.drafts import Drawing, draw, style_choices
from tests.properties.girths import sleeve_as_long_as_said
from tests.properties.invariants import CHECKS
from tests.properties.test_invariants import REFUSALS
from tests.wearers import random_wearers

TAPES = {
    "bust": 940, "upper_chest": 890, "waist": 770, "hip": 1010, "shoulder_width": 395, "back_length": 400,
    "hip_depth": 205, "arm_length": 580, "wrist": 160,
}  # fmt: skip
MARIT = Wearer("Marit", Figure.WOMAN, TAPES)
SHARES = {"short": 1 / 3, "elbow": 0.55, "three-quarter": 0.75, "long": 1.0}
"""Of the arm, crown to finished hem: common practice in the trade, no source; the elbow's from memory."""
SHAPES = tuple(SLEEVE_SHAPES)


def sleeved(style: str = "tee", looseness: str = "slight", **changes: Any) -> Any:
    """A style's choices with another sleeve."""
    choices = style_choices(style, looseness)
    return replace(choices, sleeve=replace(choices.sleeve, **changes))


def drawn(length: str, shape: str | SleeveShape, style: str = "tee") -> Garment:
    """Marit's garment with a sleeve of a length and shape."""
    made = SLEEVE_SHAPES[shape] if isinstance(shape, str) else shape
    return draw(MARIT, style, sleeve=sleeved(style, length=SLEEVE_LENGTHS[length], shape=made).sleeve)


def size(garment: Garment, name: str) -> float:
    """A size, mm."""
    return next(s.length.mm for s in garment.sizes if s.name == name)


def lean(garment: Garment, half: str) -> float:
    """How far an underarm seam goes out on a millimetre down, below its bend."""
    points = garment.points
    bend, wrist = points[f"sleeve.{half}_bend"], points[f"sleeve.{half}_wrist"]
    out = wrist.x - bend.x if half == "front" else bend.x - wrist.x
    return out / (bend.y - wrist.y)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("length", SHARES)
def test_a_word_is_a_share_of_the_arm(length: str, shape: str) -> None:
    """Whatever its shape, a sleeve by a word ends at its share of the arm."""
    points = drawn(length, shape).points
    assert points["sleeve.crown"].y - points["sleeve.hem_level"].y == pytest.approx(SHARES[length] * 580, abs=1e-6)


@pytest.mark.parametrize("length", SHARES)
def test_a_straight_sleeve_is_as_wide_at_the_hem_as_under_the_arm(length: str) -> None:
    """Parallel seams: the hem is as long as the sleeve is wide, and level."""
    garment = drawn(length, "straight")
    assert size(garment, "sleeve_hem_width") == pytest.approx(size(garment, "sleeve_width"), abs=1e-6)
    assert size(garment, "sleeve_hem_dip") == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("length", SHARES)
def test_a_flared_sleeve_goes_out_as_said(length: str) -> None:
    """Both seams go out by 1.5 cm on 10 cm down, at every length; the hem is wider than the sleeve."""
    garment = drawn(length, "flared")
    assert lean(garment, "front") == pytest.approx(0.15, abs=1e-9)
    assert lean(garment, "back") == pytest.approx(0.15, abs=1e-9)
    assert size(garment, "sleeve_hem_width") > size(garment, "sleeve_width") + 5


def test_a_half_taper_lies_half_way() -> None:
    """Half the taper: the hem of a long sleeve at the wrist lies half way between straight and tapered."""
    whole, half, none = (lean(drawn("long", SleeveShape(taper=taper)), "front") for taper in (1.0, 0.5, 0.0))
    assert none == pytest.approx(0, abs=1e-12)
    assert whole < 0
    assert half == pytest.approx(whole / 2, abs=1e-9)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_shape_leaves_cap_reach_and_hang_as_they_are(shape: str) -> None:
    """The cap is drawn to the armhole alone, so the angle at which the sleeve hangs is that of the tapered one."""
    tapered, other = (drawn("elbow", one) for one in ("tapered", shape))
    hangs = sleeve_hang(tapered), sleeve_hang(other)
    assert hangs[0] is not None
    assert hangs[0] == hangs[1]
    # From crown to foot and half the width: the triangle of the block's own sleeve.
    assert hangs[0].angle == pytest.approx(math.atan2(hangs[0].cap_height_mm, hangs[0].width_mm / 2), abs=1e-12)


def test_only_a_sleeve_that_comes_in_to_the_wrist_is_measured_there() -> None:
    """A straight or flared long sleeve is meant to be wide at the wrist: that is no girth to doubt."""
    girths = {shape: {g.name for g in drawn("long", shape).girths} for shape in SHAPES}
    assert "wrist" in girths["tapered"]
    assert "wrist" not in girths["straight"] | girths["flared"]


@pytest.mark.parametrize("looseness", ["slight", "easy"])
def test_a_short_sleeve_with_a_cuff_keeps_its_underarm_seam(looseness: str) -> None:
    """By a word, the cloth of a short sleeve goes 4 cm past its cap, and the cuff comes below that."""
    garment = draw(MARIT, "sweatshirt", looseness, sleeve=sleeved("sweatshirt", length=SLEEVE_LENGTHS["short"]).sleeve)
    points = garment.points
    assert points["sleeve.cap_foot"].y - points["sleeve.hem_level"].y >= 40 - 1e-6


def test_a_flare_that_lifts_the_hem_into_the_cap_is_refused() -> None:
    """Four centimetres on ten, 2 cm below the cap: the square corner would lie above the underarm."""
    cap = size(drawn("short", "tapered"), "cap_height")
    short = SleeveLength(given=cm(cap / 10 + 2))
    choices = sleeved(length=short, shape=SleeveShape(taper=0, flare=cm(4)))
    with pytest.raises(InputError) as caught:
        STYLES["tee"].page(Draft(MARIT, {}), choices, surveyed=True)
    assert [problem.code for problem in caught.value.problems] == ["underarm-vanishes"]


@pytest.mark.parametrize("style", ["tee", "raglan"])
def test_a_sleeve_far_longer_than_the_arm_is_refused(style: str) -> None:
    """Its seams come in to the wrist and would cross below it: refused by name; at the arm's length it is sound."""
    far = sleeved(style, "close", length=SleeveLength(given=cm(90)), wrist_ease=cm(2))
    with pytest.raises(InputError, match="sleeve-vanishes"):
        STYLES[style].page(Draft(MARIT, {}), far, surveyed=True)
    long = sleeved(style, "close", length=SLEEVE_LENGTHS["long"], wrist_ease=cm(2))
    garment = STYLES[style].page(Draft(MARIT, {}), long, surveyed=True)
    assert not any(crosses_itself(piece.seam_line) for piece in garment.pieces)


def test_a_docket_says_them_by_word_or_number() -> None:
    """Words, and a table of numbers, are read; a word that is not known is refused with those that are."""

    def read(sleeve: dict[str, Any]) -> Any:
        docket = {"wearer": {"figure": "woman", "size": "88"}, "garment": {"style": "tee", "sleeve": sleeve}}
        return docket_from(docket, "sleeves").choices.sleeve

    by_word = read({"length": "three-quarter", "shape": "straight"})
    assert by_word.length.share == SLEEVE_LENGTHS["three-quarter"].share
    assert by_word.shape.taper == 0
    by_number = read({"shape": {"taper": 0.25, "flare": "1 cm"}})
    assert (by_number.shape.taper, by_number.shape.flare.mm) == (0.25, 10)
    with pytest.raises(InputError, match="straight, easy, tapered, flared"):
        read({"shape": "wide"})


WEARERS = (*random_wearers(Figure.WOMAN, 8, seed=7), *random_wearers(Figure.MAN, 4, seed=7))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("length", SHARES)
def test_every_invariant_holds_for_every_sleeve(length: str, shape: str) -> None:
    """Whoever is drafted gets sound pieces in every length and shape; whoever is not, a named refusal."""
    sound, wrong = 0, []
    for number, wearer in enumerate(WEARERS):
        style = ("tee", "sweatshirt", "dropped")[number % 3]
        made = sleeved(style, "easy", length=SLEEVE_LENGTHS[length], shape=SLEEVE_SHAPES[shape])
        d = Draft(wearer, {})
        try:
            garment = STYLES[style].page(d, made, surveyed=True)
        except InputError as refusal:
            wrong += [str(one) for one in refusal.problems if one.code not in REFUSALS or not one.hint]
            continue
        drawing = Drawing(wearer, style, "easy", True, garment, frozenset(note.code for note in d.notes))
        wrong += [what for check in CHECKS if check is not sleeve_as_long_as_said for what in check(drawing)]
        sound += 1
    assert not wrong, "\n".join(wrong)
    assert sound >= len(WEARERS) * 2 // 3
