"""Corrections on many bodies: every invariant of every garment holds after them, alone and together."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.looseness import LOOSENESS
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Corrections
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tapeline.truing.waves import wave_problems
from tests.corrections import corrections
from tests.properties.drafts import drawing, examples, taped_children
from tests.properties.invariants import broken
from tests.properties.test_invariants import REFUSALS
from tests.wearers import LIMIT_WEARERS, wearers

CORRECTING = frozenset(
    {
        "arm-too-large",
        "bust-given-too-much",
        "correction-undrawn",
        "shoulder-too-far-forward",
        "side-too-short",
    }
)
"""What drafting may say of a correction instead of drafting it."""


def holds(wearer: Wearer, style: str, looseness: str, made: Corrections, *, surveyed: bool) -> None:
    """Drafted with everything in order that is in order without the correction, or refused by name."""
    found = drawing(wearer, style, looseness, surveyed=surveyed, corrections=made)
    if isinstance(found, InputError):
        assert {problem.code for problem in found.problems} <= REFUSALS | CORRECTING
        assert all(problem.hint for problem in found.problems)
        return
    wrong = broken(found)
    if wrong:
        usual = drawing(wearer, style, looseness, surveyed=surveyed)
        wrong = [] if isinstance(usual, InputError) else sorted(set(wrong) - set(broken(usual)))
    assert not wrong, "\n".join(wrong)


@pytest.mark.slow
@examples(200)
@given(wearers((Figure.WOMAN, Figure.MAN)), corrections(), st.data())
def test_everything_holds_for_two_corrections_together(wearer: Wearer, made: Corrections, data: st.DataObject) -> None:
    """Every invariant holds for random wearers with any two corrections, in any style, looseness and frame."""
    style, looseness = data.draw(st.sampled_from([*STYLES])), data.draw(st.sampled_from([*LOOSENESS]))
    holds(wearer, style, looseness, made, surveyed=data.draw(st.booleans()))


@pytest.mark.slow
@examples(80)
@given(st.sampled_from((*LIMIT_WEARERS, *taped_children())), corrections(3), st.sampled_from([*STYLES]))
def test_everything_holds_for_odd_bodies_corrected(wearer: Wearer, made: Corrections, style: str) -> None:
    """Every invariant holds for corrected bodies that break a rule, and for children, or they are refused by name."""
    holds(wearer, style, "slight", made, surveyed=wearer.figure.has_survey)


@examples(20)
@given(wearers((Figure.WOMAN,)), corrections())
def test_everything_holds_for_a_corrected_tee(wearer: Wearer, made: Corrections) -> None:
    """Every invariant holds for a tee with one correction or two."""
    holds(wearer, "tee", "slight", made, surveyed=True)


def test_a_raglan_that_turns_back_says_so() -> None:
    """On one odd body with shoulders both sloping and forward the front seam turns back by 5.1 degrees: a doubt."""
    wearer = next(one for one in LIMIT_WEARERS if one.name == "full bust on a narrow back")
    for by, told in ((2.0, ["front.raglan"]), (0.0, [])):
        made = Corrections(sloping_shoulders=cm(by), forward_shoulders=cm(by / 2))
        found = drawing(wearer, "raglan", "slight", surveyed=True, corrections=made)
        assert not isinstance(found, InputError)
        assert [p.where for p in wave_problems(found.garment) if p.code == "raglan-wave"] == told
        assert not broken(found)
