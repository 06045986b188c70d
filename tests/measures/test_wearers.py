"""A wearer's tapes: complete, known, believable; and the shared random wearers."""

from __future__ import annotations

import pickle

import numpy as np
import pytest
from hypothesis import given

from tapeline.measures import TAPES, Figure, Tape, Wearer, required_tapes, size_wearer, tapes_of, wearer_problems
from tapeline.problems import InputError, Problem, Severity
from tapeline.units import Unit
from tests.wearers import CHILDREN, LIMIT_WEARERS, random_wearers, stretched_wearers, survey, wearers

MARIT = {
    "bust": 940.0,
    "upper_chest": 890.0,
    "waist": 770.0,
    "hip": 1010.0,
    "shoulder_width": 395.0,
    "back_length": 400.0,
    "hip_depth": 205.0,
    "arm_length": 580.0,
}


def problems(tapes: dict[str, float], figure: Figure = Figure.WOMAN, unit: Unit = Unit.CM) -> list[Problem]:
    """What keeps these tapes from being a wearer's."""
    return wearer_problems(figure, tapes, unit)


def test_a_wearer_answers_for_her_tapes() -> None:
    """A tape that was taken is given, one that was not is missed by name, and a change makes another wearer."""
    marit = Wearer("Marit", Figure.WOMAN, MARIT)
    wider = marit.with_tape("hip", 1050).with_tape("neck", 360)
    assert marit["bust"] == marit["chest"] == 940
    assert not marit.given("neck")
    assert (wider["hip"], wider["neck"], marit["hip"]) == (1050, 360, 1010)
    assert marit.show("hip_depth") == "20.5 cm"
    with pytest.raises(KeyError):
        marit["neck"]
    with pytest.raises(TypeError):
        marit.tapes["hip"] = 1  # type: ignore[index]  # what is refused


def test_a_wearer_travels_between_processes() -> None:
    """Pickled and read back, a wearer is the same."""
    marit = Wearer("Marit", Figure.WOMAN, MARIT, frozenset({"tape-doubt"}), Unit.INCH, "invented")
    assert pickle.loads(pickle.dumps(marit)) == marit  # noqa: S301 - pickled in this very line
    assert len({marit, Wearer("Marit", Figure.WOMAN, MARIT)}) == 2


def test_all_that_is_wrong_is_said_at_once() -> None:
    """A missing, an unknown and an impossible tape are three problems in one error, and nothing is made."""
    tapes = {**MARIT, "waste": 770.0, "arm_length": 58.0}
    del tapes["waist"]
    with pytest.raises(InputError) as error:
        Wearer("Marit", Figure.WOMAN, tapes)
    found = {(p.code, p.where) for p in error.value.problems}
    assert found == {("tape-missing", "tapes"), ("tape-unknown", "tapes.waste"), ("tape-range", "tapes.arm_length")}
    assert any("did you mean waist?" in p.hint for p in error.value.problems)
    assert any("58 cm" in p.hint for p in error.value.problems)


def test_men_have_a_chest_and_children_either_word() -> None:
    """Bust for a man is answered with the word for men; a child's chest is its bust; both together are one too many."""
    man = dict(size_wearer("M", Figure.MAN).tapes)
    man["bust"] = man.pop("chest")
    (found,) = problems(man, Figure.MAN)
    assert (found.code, found.hint) == ("tape-unknown", "did you mean chest?")
    tapes = dict(CHILDREN[3].tapes)
    chest = {"chest" if name == "bust" else name: value for name, value in tapes.items()}
    assert Wearer("", Figure.CHILD, chest) == Wearer("", Figure.CHILD, tapes)
    assert [p.code for p in problems({**tapes, **chest}, Figure.CHILD)] == ["tape-unknown"]


def test_a_tape_of_another_figure_is_told_so() -> None:
    """A tape that exists, but not for this figure, is not called unknown to Tapeline."""
    (found,) = problems({**size_wearer("M", Figure.MAN).tapes, "bust_span": 180.0}, Figure.MAN)
    assert "man have no tape bust_span" in found.says


@pytest.mark.parametrize("value", [-1, 0, float("nan"), float("inf"), 1e12])
@pytest.mark.parametrize("unit", list(Unit))
def test_no_number_gets_past_the_limits(value: float, unit: Unit) -> None:
    """Numbers that are no length of a body are problems, in either unit."""
    assert [p.code for p in problems({**MARIT, "hip": value}, unit=unit)] == ["tape-range"]


def test_a_tape_outside_its_limits_can_be_allowed() -> None:
    """Allowed for all tapes or for this one it is a note and the wearer is made; allowed for another it stays."""
    tapes = {**MARIT, "hip": 2050.0}
    for allow in ("tape-range", "tape-range:hip"):
        assert Wearer("", Figure.WOMAN, tapes, frozenset({allow}))["hip"] == 2050
        (found,) = wearer_problems(Figure.WOMAN, tapes, Unit.CM, frozenset({allow}))
        assert found.severity is Severity.NOTE
    with pytest.raises(InputError):
        Wearer("", Figure.WOMAN, tapes, frozenset({"tape-range:waist"}))


@pytest.mark.parametrize("figure", list(Figure))
def test_every_figure_has_eight_required_tapes(figure: Figure) -> None:
    """The eight are the eight of the method, with the figure's own word for the fullest girth."""
    names = [tape.name for tape in required_tapes(figure)]
    assert names == [figure.fullest, *list(MARIT)[1:]]


@pytest.mark.parametrize("tape", TAPES.values(), ids=lambda tape: tape.name)
def test_every_tape_says_how_it_is_taken(tape: Tape) -> None:
    """Two or three sentences, limits that are a span, and a clause of the standard only with its name."""
    assert 2 <= tape.take.count(". ") + tape.take.endswith(".") <= 3
    assert all(0 < limits.low < limits.high for limits in tape.limits.values())
    assert bool(tape.iso_name) == bool(tape.iso_clause)
    assert tape.reason


def test_limits_hold_all_whom_the_survey_met() -> None:
    """No tape's limits lie within four standard deviations of the survey's mean: its people would be refused."""
    for figure in (Figure.WOMAN, Figure.MAN):
        model = survey(figure)
        for name, mean, spread in zip(model.names, model.mean, np.sqrt(np.diag(model.cov)), strict=True):
            limits = TAPES[name].limits[figure]
            assert limits.low <= mean - 4 * spread, name
            assert mean + 4 * spread <= limits.high, name


def test_tapes_of_a_figure_are_in_the_order_of_the_table() -> None:
    """Men have no bust point, children no bust span; women have every tape but the chest."""
    assert {tape.name for tape in tapes_of(Figure.WOMAN)} == TAPES.keys() - {"chest"}
    assert {tape.name for tape in tapes_of(Figure.MAN)} == TAPES.keys() - {"bust", "bust_point_depth", "bust_span"}


def test_random_wearers_are_the_same_in_every_run() -> None:
    """A seed names its wearers; another seed has others; more of them begin with the same ones."""
    few, many = random_wearers(Figure.WOMAN, 5, 7), random_wearers(Figure.WOMAN, 60, 7)
    assert many[:5] == few
    assert random_wearers(Figure.WOMAN, 5, 8) != few
    assert random_wearers(Figure.MAN, 3, 1, ("neck",))[0].given("neck")


@given(wearers(), stretched_wearers())
def test_shared_wearers_are_wearers(drawn: Wearer, stretched: Wearer) -> None:
    """Whatever the strategies give has its eight tapes within the limits."""
    for wearer in (drawn, stretched):
        assert wearer_problems(wearer.figure, wearer.tapes) == []
        assert len(wearer.tapes) == 8


def test_odd_wearers_and_children_are_wearers() -> None:
    """The wearers that break rules, and the children, are within the limits; their names are their own."""
    assert len({wearer.name for wearer in (*LIMIT_WEARERS, *CHILDREN)}) == len(LIMIT_WEARERS) + len(CHILDREN)
    assert all(wearer["waist"] < wearer["hip"] for wearer in CHILDREN)
