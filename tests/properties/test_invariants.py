"""Every invariant of every garment, on many bodies, in every looseness, frame and style."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.measures import Figure, Wearer
from tests.properties.drafts import Drawing, drawings, examples, taped_children
from tests.properties.invariants import broken
from tests.wearers import LIMIT_WEARERS, wearers

ODD = {wearer.name: wearer for wearer in (*LIMIT_WEARERS, *taped_children())}
QUICK = frozenset({"very small", "waist over hip", "short man", "child of 120 cm"})
"""Those that are looked at while working, too."""
REFUSALS = frozenset(
    {
        "armhole-closed",
        "back-wider-than-chest",
        "band-too-wide-for-v",
        "cannot-be-met",
        "cap-too-high",
        "cap-too-low",
        "chest-wider-than-bust",
        "facing-too-wide",
        "finish-not-for-neckline",
        "funnel-too-high",
        "keyhole-not-here",
        "cut-in-one-tight",
        "level-not-crossed",
        "line-not-fair",
        "shoulder-beyond-side",
        "shoulder-dropped-too-far",
        "shoulder-not-reached",
        "sleeve-too-short",
        "neckline-past-chest",
        "neckline-too-wide",
        "pocket-over-armhole",
        "pocket-past-hem",
        "pocket-too-deep",
        "pocket-too-wide",
        "strap-too-narrow",
        "underarm-vanishes",
        "waist-above-chest",
        "wrap-on-throat",
        "wrap-past-side",
    }
)
"""What drafting may say instead of drafting."""
HALVES = pytest.mark.parametrize("half", ["one half", "the other half"])
"""The same test twice, with other wearers, so that two processors share it."""


def of(*figures: Figure) -> st.SearchStrategy[Wearer]:
    """Wearers as the survey met them, other ones in each half."""
    return wearers(figures)


def all_hold(wearer: Wearer) -> None:
    """A wearer in every looseness, frame and style: drafted with everything in order, or refused by name."""
    wrong = []
    for drawing in drawings(wearer):
        if isinstance(drawing, Drawing):
            wrong += broken(drawing)
        else:
            wrong += [str(problem) for problem in drawing.problems if problem.code not in REFUSALS or not problem.hint]
    assert not wrong, "\n".join(wrong)


@pytest.mark.slow
@HALVES
@examples(250)
@given(st.data())
def test_everything_holds_for_random_women(half: str, data: st.DataObject) -> None:
    """Every invariant holds for women as the survey met them."""
    all_hold(data.draw(of(Figure.WOMAN)))


@pytest.mark.slow
@HALVES
@examples(100)
@given(st.data())
def test_everything_holds_for_random_men(half: str, data: st.DataObject) -> None:
    """Every invariant holds for men as the survey met them."""
    all_hold(data.draw(of(Figure.MAN)))


@pytest.mark.parametrize(
    "name", [name if name in QUICK else pytest.param(name, marks=pytest.mark.slow) for name in ODD]
)
def test_everything_holds_for_odd_bodies(name: str) -> None:
    """Every invariant holds for bodies that break a rule, and for children, where they are not refused by name."""
    all_hold(ODD[name])
