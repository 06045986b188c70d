"""Bodies and choices that break a rule: each gets the named problem that says which tape or size to look at."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.looseness import LOOSENESS
from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.problems import InputError, Severity
from tapeline.styles import STYLES
from tests.properties.drafts import draw, style_choices, taped_children
from tests.wearers import CHILDREN

WEARER = size_wearer("88")


@pytest.mark.parametrize(
    ("code", "by_hand", "says"),
    [
        ("back-wider-than-chest", {"half_back_width": 215}, "half_back_width"),
        ("chest-wider-than-bust", {"half_chest_width": 215}, "half_chest_width"),
        ("waist-above-chest", {"armhole_depth": 345}, "armhole_depth"),
        ("armhole-closed", {"armhole_depth": 80}, "armhole_depth"),
        ("shoulder-not-reached", {"neck_width": 140, "shoulder_length": 0}, "shoulder"),
    ],
)
def test_a_size_that_cannot_be_is_refused_by_name(code: str, by_hand: dict[str, float], says: str) -> None:
    """A size set by hand that closes the armhole or crosses the lines is refused; the hint names what to change."""
    wearer = WEARER
    if not by_hand.get("shoulder_length", 1):
        by_hand = {"neck_width": by_hand["neck_width"]}
        wearer = WEARER.with_tape("shoulder_width", 270)
    with pytest.raises(InputError) as refusal:
        draw(wearer, "block", "close", by_hand=by_hand)
    (problem,) = refusal.value.problems
    assert (problem.code, problem.severity) == (code, Severity.ERROR)
    assert says in problem.hint.replace(" ", "_")
    assert problem.where


def test_a_sleeve_that_ends_before_its_cap_is_refused() -> None:
    """A length that the maker gives is not stretched: where it ends above the foot of the cap, it is refused."""
    sleeve = style_choices("tee", "loose").sleeve
    with pytest.raises(InputError) as refusal:
        draw(WEARER, "tee", "loose", sleeve=replace(sleeve, length=SleeveLength(given=cm(12))))
    assert [problem.code for problem in refusal.value.problems] == ["sleeve-too-short"]


def test_a_child_without_a_wrist_tape_is_asked_for_it() -> None:
    """There is no survey of children, so what is needed is taped; the problem says how."""
    with pytest.raises(InputError) as refusal:
        draw(CHILDREN[3], surveyed=False)
    (problem,) = refusal.value.problems
    assert (problem.code, problem.where) == ("no-estimate", "tapes.wrist")
    assert "take the tape" in problem.hint


def remarks(
    wearer: Wearer, looseness: Any = LOOSENESS["close"], by_hand: Mapping[str, float] | None = None
) -> set[str]:
    """Codes of what drafting remarks on."""
    d = Draft(wearer, by_hand or {})
    style = STYLES["block"]
    style.page(d, replace(style.choices(), looseness=looseness), surveyed=wearer.figure.has_survey)
    assert all(note.severity is Severity.DOUBT and note.hint for note in d.notes)
    return {note.code for note in d.notes}


def test_a_plain_wearer_gets_no_remark() -> None:
    """Nothing is said of a standard size, nor of a child."""
    assert remarks(WEARER) == set()
    assert remarks(taped_children()[5]) == set()


def test_what_a_rule_is_not_made_for_is_remarked_on() -> None:
    """Shoulders narrower than the back, much bust over the upper chest and a wide shoulder are drawn, with a doubt."""
    assert remarks(WEARER, by_hand={"half_back_width": 199}) == {"shoulder-inside-back"}
    assert remarks(WEARER.with_tape("bust", WEARER["upper_chest"] + 110)) == {"bust-wants-dart"}
    assert remarks(WEARER, replace(LOOSENESS["loose"], shoulder=cm(2.5))) == {"shoulder-wide"}
