"""Sleeves made fuller: head, bell and band, for invented and random wearers."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Any

import pytest
from hypothesis import assume, event, given
from hypothesis import strategies as st

from tapeline.blocks.sleeve_choices import CAPS, SLEEVE_LENGTHS, SLEEVE_SHAPES, SleeveChoices
from tapeline.blocks.sleeve_fullness import SLEEVE_ENDS, SLEEVE_HEADS, SleeveEnd, SleeveHead
from tapeline.geometry import area
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment, Notch, NotchKind, Seam
from tapeline.problems import InputError
from tests.alter.altered import errors, trued
from tests.alter.whole import whole
from tests.properties.drafts import draw, examples, style_choices
from tests.wearers import wearers

MARIT = size_wearer("92")
STYLED = ("tee", "dropped", "shirt", "polo", "sweatshirt", "cardigan")
REFUSED = {
    *("bell-too-short", "nothing-to-gather", "sleeve-ends-twice", "sleeve-too-short", "underarm-vanishes"),
    *("cuff-not-at-wrist", "cuff-too-deep", "pleats-past-seam", "rolled-under-puff", "slit-too-long"),
}


def sleeved(style: str, wearer: Wearer = MARIT, **changes: Any) -> Garment:
    """A garment with another sleeve than its style's own."""
    own: SleeveChoices = style_choices(style, "easy").sleeve
    return draw(wearer, style, "easy", sleeve=replace(own, **changes))


def the_seam(garment: Garment, name: str) -> Seam:
    """A seam by its name."""
    return next(seam for seam in garment.seams if seam.name == name)


def a_notch(garment: Garment, edge: str, kind: NotchKind) -> Notch:
    """A notch of a sleeve."""
    return next(n for n in garment.piece("sleeve").notches_on(edge) if n.kind is kind)


@examples(120)
@given(
    wearers(),
    st.sampled_from(STYLED),
    st.sampled_from(sorted(SLEEVE_HEADS)),
    st.sampled_from(sorted(SLEEVE_ENDS)),
    st.tuples(st.sampled_from(sorted(SLEEVE_SHAPES)), st.sampled_from(sorted(SLEEVE_LENGTHS))),
)
def test_every_full_sleeve_is_whole_and_true(
    wearer: Wearer, style: str, head: str, end: str, way: tuple[str, str]
) -> None:
    """Whatever is combined: closed, uncrossed, notched, every seam as meant; or refused with a reason."""
    shape, length = way
    changes: dict[str, Any] = {"shape": SLEEVE_SHAPES[shape], "length": SLEEVE_LENGTHS[length]}
    try:
        plain = sleeved(style, wearer, **changes)
    except InputError:
        assume(False)
        raise
    try:
        made = sleeved(style, wearer, **changes, head=SLEEVE_HEADS[head], end=SLEEVE_ENDS[end])
    except InputError as error:
        codes = {problem.code for problem in error.problems}
        event(str(codes))
        assert codes <= REFUSED, error  # noqa: PT017 - another code fails
        return
    event("drafted")
    assert whole(made) == []
    assert [found for found in errors(made, wearer) if found not in errors(plain, wearer)] == []


@pytest.mark.parametrize(("style", "head"), [*product(["tee", "shirt", "dropped"], ["gathered", "puffed"])])
def test_a_head_is_gathered_between_the_notches_alone(style: str, head: str) -> None:
    """Below both notches the cap is as long as the armhole there; above, longer, front and back nearly alike."""
    made = sleeved(style, head=SLEEVE_HEADS[head])
    for half, kind in (("front", NotchKind.SINGLE), ("back", NotchKind.DOUBLE)):
        armhole, cap = made.piece(half).edge("armhole"), made.piece("sleeve").edge(f"cap_{half}")
        (mark,) = made.piece(half).notches_on("armhole")
        at = a_notch(made, f"cap_{half}", kind).at_mm
        below = at if half == "back" else cap.length - at
        assert below == pytest.approx(armhole.length - mark.at_mm, abs=0.1)
        seam = the_seam(made, f"armhole_{half}")
        assert cap.length - armhole.length == pytest.approx(seam.ease.mm, abs=1e-6)
        assert "gathered" in seam.reason
    front, back = (the_seam(made, f"armhole_{half}").ease.mm for half in ("front", "back"))
    assert front == pytest.approx(back, rel=0.2)
    # Spread by the chosen amount, and raised on both sides of the crown: no less is gathered.
    assert front + back > SLEEVE_HEADS[head].spread.mm


def test_the_head_is_raised_and_spread_by_what_is_chosen() -> None:
    """Raised alone, the crown stands that much higher over the underarm; the underarm seams and the hem are kept."""
    plain, raised = sleeved("tee"), sleeved("tee", head=SleeveHead(raised=cm(2)))

    def height(garment: Garment) -> float:
        crown = garment.piece("sleeve").edge("cap_front").path
        return crown.start.y - crown.end.y

    assert height(raised) - height(plain) == pytest.approx(20, abs=1e-6)
    for name in ("underarm_front", "underarm_back", "hem"):
        assert raised.piece("sleeve").edge(name) == plain.piece("sleeve").edge(name)
    spread = sleeved("tee", head=SleeveHead(spread=cm(6)))
    for name in ("underarm_front", "underarm_back"):
        old, new = plain.piece("sleeve").edge(name), spread.piece("sleeve").edge(name)
        assert new.length == pytest.approx(old.length, abs=1e-6)
    assert area(spread.piece("sleeve").seam_line) < area(plain.piece("sleeve").seam_line) < 0


@pytest.mark.parametrize("shape", ["straight", "tapered", "easy"])
def test_a_bell_is_spread_at_its_hem_and_fits_at_the_elbow(shape: str) -> None:
    """Its hem is longer by the spread, its upper edge as long as the sleeve above but for the round of a millimetre."""
    changes: dict[str, Any] = {"shape": SLEEVE_SHAPES[shape], "length": SLEEVE_LENGTHS["long"]}
    plain = sleeved("tee", **changes)
    made = sleeved("tee", **changes, end=SleeveEnd(bell=cm(24)))
    longer = made.piece("bell").edge("hem").length - plain.piece("sleeve").edge("hem").length
    assert longer == pytest.approx(240, rel=0.02)
    upper, lower = made.piece("sleeve").edge("elbow").length, made.piece("bell").edge("elbow").length
    assert 0 < lower - upper < 1
    assert lower - upper == pytest.approx(the_seam(made, "elbow").ease.mm, abs=1e-6)
    for half in ("front", "back"):
        whole_seam = plain.piece("sleeve").edge(f"underarm_{half}").length
        parts = [made.piece(piece).edge(f"underarm_{half}").length for piece in ("sleeve", "bell")]
        assert sum(parts) == pytest.approx(whole_seam, abs=0.01)
    grain = made.piece("bell").grain
    assert grain.start.x == pytest.approx(grain.end.x, abs=1e-6)


def test_a_hem_is_gathered_into_a_band_that_goes_over_the_hand() -> None:
    """The band is the wrist and what is loose, or a hand's width; the seam's ease is what the hem is longer."""
    made = sleeved("tee", shape=SLEEVE_SHAPES["straight"], length=SLEEVE_LENGTHS["long"], end=SLEEVE_ENDS["band"])
    wrist = next(step.lengths[0].mm for step in made.steps if step.label == "wrist")
    band, hem = made.piece("sleeve_band").edge("hem").length, made.piece("sleeve").edge("hem").length
    assert band == pytest.approx(max(wrist + 20, wrist * 1.35))
    assert the_seam(made, "sleeve_band").ease.mm == pytest.approx(hem - band, abs=1e-6)
    crown = made.points["sleeve.crown"].y - made.points["sleeve.hem_level"].y
    assert crown + 30 == pytest.approx(MARIT["arm_length"], abs=1e-6)


def test_reach_and_hang_are_those_of_the_cap_below_the_gathers() -> None:
    """A puffed head changes nothing about the angle at which the sleeve hangs; a formal cap does."""
    plain, puffed = (trued(sleeved("tee", head=SLEEVE_HEADS[head]), MARIT).hang for head in ("smooth", "puffed"))
    formal = trued(sleeved("tee", cap=CAPS["formal"]), MARIT).hang
    assert plain is not None
    assert plain == puffed
    assert formal is not None
    assert formal.angle > plain.angle


def test_a_cap_sleeve_ends_just_below_its_cap() -> None:
    """Two centimetres below the underarm in the middle, by its word, and as true as any."""
    made = sleeved("tee", length=SLEEVE_LENGTHS["cap"])
    assert made.points["sleeve.cap_foot"].y - made.points["sleeve.hem_level"].y == pytest.approx(20, abs=1e-6)
    assert errors(made, MARIT) == errors(sleeved("tee"), MARIT)


@pytest.mark.parametrize(
    ("code", "style", "changes"),
    [
        ("bell-too-short", "tee", {"end": SLEEVE_ENDS["bell"]}),
        ("sleeve-ends-twice", "sweatshirt", {"end": SLEEVE_ENDS["band"]}),
        ("nothing-to-gather", "tee", {"length": SLEEVE_LENGTHS["long"], "end": SleeveEnd(band=cm(3), loose=cm(12))}),
    ],
)
def test_what_cannot_be_made_is_refused(code: str, style: str, changes: dict[str, Any]) -> None:
    """With its reason, and with what to do."""
    with pytest.raises(InputError) as error:
        sleeved(style, **changes)
    assert [problem.code for problem in error.value.problems] == [code]
    assert all(problem.hint for problem in error.value.problems)
