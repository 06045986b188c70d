"""What the maker tapes or sets by hand goes before every rule and every estimate."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.frame import LEAST_FALL, NECK_EASE, SLOPE_EASE
from tapeline.blocks.neck import SHOULDER_RUN
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.measures import Figure, Wearer, estimates, size_wearer
from tapeline.pattern import Garment, Source
from tests.properties.drafts import Drawing, draw, examples
from tests.properties.invariants import broken
from tests.properties.measuring import ends, length
from tests.wearers import drawn, survey

OPTIONAL = {
    "neck": "neck_width",
    "back_width": "half_back_width",
    "armhole_depth": "armhole_depth",
    "shoulder_length": "shoulder_length",
    "shoulder_slope": "back_shoulder_fall",
    "upper_arm": "upper_arm",
    "wrist": "wrist",
}
"""Tapes that replace an estimate or a rule, and the size that they rule."""


def everything_holds(garment: Garment, wearer: Wearer, style: str, looseness: str) -> None:
    """All invariants."""
    wrong = broken(Drawing(wearer, style, looseness, True, garment, frozenset({"shoulder-inside-back"})))
    assert not wrong, "\n".join(wrong)


def sizes(garment: Garment) -> dict[str, float]:
    """All sizes, mm."""
    return {size.name: size.length.mm for size in garment.sizes}


@st.composite
def taped(draw_: st.DrawFn) -> Wearer:
    """A random woman with every tape that the survey knows and drafting uses."""
    return next(drawn(Figure.WOMAN, draw_(st.integers(0, 2**32 - 1)), tuple(OPTIONAL)))


@examples(40)
@given(taped())
def test_every_tape_that_is_taken_rules_its_size(wearer: Wearer) -> None:
    """A woman who is taped everywhere gets her own neck, shoulders, back and arms, and everything else still holds."""
    garment = draw(wearer, "block", "close")
    found = sizes(garment)
    by_name = {size.name: size for size in garment.sizes}
    for tape, name in OPTIONAL.items():
        assert by_name[name].source is Source.TAPED, f"{tape} does not rule {name}"
    back, front = garment.piece("back"), garment.piece("front")
    shoulder = wearer["shoulder_length"]
    assert length(back.edge("shoulder").path) == pytest.approx(shoulder, abs=1e-6)
    assert length(front.edge("shoulder").path) == pytest.approx(shoulder, abs=1e-6)
    way = ends(back.edge("shoulder").path)[0]
    fall = SHOULDER_RUN.mm * math.tan(wearer["shoulder_slope"]) - SLOPE_EASE.mm
    assert -SHOULDER_RUN.mm * way[1] / way[0] == pytest.approx(max(fall, LEAST_FALL.mm), abs=1e-6)
    neckline = 2 * sum(length(piece.edge("neckline").path) for piece in (back, front))
    assert neckline == pytest.approx(wearer["neck"] + NECK_EASE.mm, abs=1e-4)
    assert found["wrist"] == wearer["wrist"]
    (girth,) = (girth for girth in garment.girths if girth.name == "upper_arm")
    assert girth.tape.mm == wearer["upper_arm"]
    everything_holds(garment, wearer, "block", "close")


@pytest.mark.parametrize(("tape", "cm"), [("chest_width", 33.0), ("back_width", 36.0), ("armhole_depth", 19.0)])
def test_one_tape_more_changes_its_own_size_by_as_much(tape: str, cm: float) -> None:
    """A centimetre more on one optional tape gives a centimetre, or for widths half of it, in the frame."""
    wearer = size_wearer("88")
    name = {"chest_width": "half_chest_width", "back_width": "half_back_width"}.get(tape, tape)
    first, then = (sizes(draw(wearer.with_tape(tape, cm * 10 + more))) for more in (0, 10))
    assert then[name] - first[name] == pytest.approx(10 if tape == "armhole_depth" else 5, abs=1e-9)


@pytest.mark.parametrize("name", HAND_SIZES)
@pytest.mark.parametrize("style", ["tee", "block"])
def test_sizes_set_by_hand_are_taken_as_they_are(name: str, style: str) -> None:
    """A size of the frame that is set by hand is drawn, is said to be by hand, and everything else still holds."""
    wearer = size_wearer("92")
    before = draw(wearer, style)
    wanted = sizes(before)[name] + 6
    garment = draw(wearer, style, by_hand={name: wanted})
    size = next(size for size in garment.sizes if size.name == name)
    assert (size.length.mm, size.source) == (wanted, Source.BY_HAND)
    assert {other.name for other in size.others} & {"rule", "survey"}, "what the rule would have said is kept"
    assert [p.seam_line for p in garment.pieces] != [p.seam_line for p in before.pieces], "nothing changed"
    everything_holds(garment, wearer, style, "slight")


@pytest.mark.parametrize("surveyed", [True, False])
def test_taping_what_was_expected_changes_nothing(surveyed: bool) -> None:
    """A woman whose back and armpits are just what the survey expects is drafted as if they had not been taped."""
    wearer = size_wearer("96")
    expected = estimates(wearer)
    frame = sizes(draw(wearer))
    for tape, name in (("back_width", "half_back_width"), ("armhole_depth", "armhole_depth")):
        found = sizes(draw(wearer.with_tape(tape, expected[tape].mm), surveyed=surveyed))
        assert found[name] == pytest.approx(frame[name], abs=1e-9)


def test_the_usual_slope_gives_the_rule_s_shoulder() -> None:
    """A woman of the middle size whose taped slope is the survey's mean gets the rule's fall of 4 on 14 cm.

    The mean is of 2,208 women (the 1988 survey); 4 on 14 is common practice, no source.
    """
    usual = survey(Figure.WOMAN).expect("shoulder_slope", {"upper_chest": 860}).radians
    assert SHOULDER_RUN.mm * math.tan(usual) - SLOPE_EASE.mm == pytest.approx(40, abs=0.5)
