"""Which allowance an edge gets, and what is refused."""

from __future__ import annotations

import math
import pickle

import pytest

from tapeline.finish import FinishChoices, finish
from tapeline.finish.choices import allowances
from tapeline.problems import InputError, Problem
from tests.finish.shapes import TITLE, top


def refused(choices: FinishChoices) -> tuple[Problem, ...]:
    """What is said about choices that cannot be used."""
    with pytest.raises(InputError) as caught:
        finish(top(), choices, TITLE)
    return caught.value.problems


def test_without_names_seams_hems_and_folds_have_their_own_width() -> None:
    """One number for all seams, the hem's depth for hems, nothing on the fold."""
    widths = allowances(top(), FinishChoices(allowance_mm=12, hem_mm=40))
    assert widths["front"] == {"centre": 0, "neckline": 12, "shoulder": 12, "armhole": 12, "side": 12, "hem": 40}
    assert widths["sleeve"]["hem"] == 40


def test_the_most_exact_name_wins() -> None:
    """An edge of one piece comes before an edge, an edge before a seam, a seam before the number for all."""
    names = {"band": 5, "neckline": 7, "front.neckline": 9, "underarm": 11}
    widths = allowances(top(), FinishChoices(by_name=names))
    assert widths["neckband"]["seam"] == 5
    assert widths["back"]["neckline"] == 7
    assert widths["front"]["neckline"] == 9
    assert widths["sleeve"]["underarm_front"] == widths["sleeve"]["underarm_back"] == 11
    assert widths["sleeve"]["cap_front"] == 10


def test_a_seam_names_all_its_edges() -> None:
    """The seam between band and neckline widens both sides."""
    widths = allowances(top(), FinishChoices(by_name={"band": 6}))
    assert widths["neckband"]["seam"] == widths["back"]["neckline"] == widths["front"]["neckline"] == 6
    assert widths["neckband"]["other_seam"] == 10


def test_a_hem_can_be_named() -> None:
    """A name also sets the depth of a hem, and one of more than 50 mm is no mistake there."""
    widths = allowances(top(), FinishChoices(by_name={"hem": 60, "sleeve.hem": 20}))
    assert (widths["front"]["hem"], widths["sleeve"]["hem"]) == (60, 20)


def test_an_unknown_name_is_answered_with_the_nearest() -> None:
    """A slip of the pen gets a hint."""
    (problem,) = refused(FinishChoices(by_name={"nekline": 8}))
    assert problem.code == "allowance-unknown"
    assert "nekline" in problem.says
    assert problem.hint == "did you mean neckline?"


def test_a_width_on_the_fold_is_refused() -> None:
    """What lies on the fold is not cut."""
    (problem,) = refused(FinishChoices(by_name={"front.centre": 10}))
    assert problem.code == "allowance-on-fold"
    assert allowances(top(), FinishChoices(by_name={"front.centre": 0}))["front"]["centre"] == 0


@pytest.mark.parametrize("width", [-1, -0.001, math.nan, math.inf, -math.inf, 50.5, 1e9])
def test_a_width_out_of_range_is_refused_wherever_it_stands(width: float) -> None:
    """Negative, not a number, or too wide: for all seams, by name, and both are said at once."""
    problems = refused(FinishChoices(allowance_mm=width, by_name={"neckline": width, "side": 5}))
    assert [p.code for p in problems] == ["allowance-range", "allowance-range"]
    assert all(str(width) in p.says for p in problems)


@pytest.mark.parametrize("depth", [-1, math.nan, 100.5])
def test_a_hem_out_of_range_is_refused(depth: float) -> None:
    """A hem is 0 to 100 mm deep."""
    assert [p.code for p in refused(FinishChoices(hem_mm=depth))] == ["allowance-range"]


@pytest.mark.parametrize("depth", [0, -1, math.nan, 11])
def test_a_notch_depth_out_of_range_is_refused(depth: float) -> None:
    """A notch is 1 to 10 mm deep."""
    assert [p.code for p in refused(FinishChoices(notch_depth_mm=depth))] == ["allowance-range"]


def test_the_limits_themselves_are_taken() -> None:
    """0 and 50 mm are allowances, 0 and 100 mm are hems."""
    widths = allowances(top(), FinishChoices(allowance_mm=0, hem_mm=100, by_name={"side": 50}))
    assert (widths["front"]["shoulder"], widths["front"]["hem"], widths["front"]["side"]) == (0, 100, 50)


def test_choices_travel_between_processes() -> None:
    """Choices can be sent to another process and come back the same."""
    choices = FinishChoices(by_name={"side": 5})
    assert pickle.loads(pickle.dumps(choices)) == choices  # noqa: S301 - made in the line itself
