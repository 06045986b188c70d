"""A form has its wearer's tapes."""

from __future__ import annotations

import numpy as np
import pytest

from tapeline.form import ARMS_TO, Form, fit_form
from tapeline.measures import Figure, Wearer, size_wearer
from tapeline.problems import InputError
from tests.form.mesh import girth, open_edges
from tests.wearers import LIMIT_WEARERS, child, random_wearers

MET_MM = 0.5
"""What is promised; nobody reads a tape nearer."""


@pytest.fixture(scope="module")
def form() -> Form:
    """Size 92 with tapes of neck, back, arm and bust."""
    tapes = {"neck": 370, "upper_arm": 285, "wrist": 155, "shoulder_length": 125, "bust_span": 185, "height": 1680}
    wearer = size_wearer("92")
    for name, value in tapes.items():
        wearer = wearer.with_tape(name, value)
    return fit_form(wearer)


def test_every_tape_that_was_taken_is_met(form: Form) -> None:
    """The eight tapes and the optional ones read on the stand what they read on the wearer."""
    given = {name: reading for name, reading in form.readings.items() if reading.given}
    assert len(given) == 14
    assert {name: r.off for name, r in given.items() if abs(r.off) > MET_MM} == {}


def test_girths_read_another_way(form: Form) -> None:
    """Triangle by triangle, and with the hull of qhull, level girths at the form's levels are the tapes."""
    for tape, level in (("upper_chest", "upper_chest"), ("bust", "bust"), ("waist", "waist"), ("hip", "hip")):
        assert girth(form, form.levels[level]) == pytest.approx(form.readings[tape].wanted, abs=MET_MM)


def test_the_form_is_sound(form: Form) -> None:
    """Closed, without inverted triangles, a mirror of itself, and on the floor."""
    assert open_edges(form.triangles) == 0
    assert form.inverted == 0
    left, right = form.points["shoulder_point"], form.points["right_shoulder_point"]
    assert right == pytest.approx(left * [-1, 1, 1])
    assert form.points["floor"][1] == pytest.approx(0)
    assert form.points["crown"][1] == pytest.approx(1680, abs=MET_MM)


def test_landmarks_stand_in_the_order_of_a_body(form: Form) -> None:
    """From above: nape, shoulder, armpit, bust, waist, hip; each where a maker would look for it."""
    heights = [form.points[name][1] for name in ("nape", "shoulder_point", "armpit")]
    heights += [form.levels[name] for name in ("bust", "waist", "hip", "end")]
    assert heights == sorted(heights, reverse=True)
    assert form.points["hollow"][2] > form.points["nape"][2]
    assert form.points["front_fold"][2] > form.points["armpit"][2] > form.points["back_fold"][2]
    left, right = form.armholes
    assert left[0] == pytest.approx(left[-1])
    assert left[:, 0].min() > 0 > right[:, 0].max()


def test_the_bust_tape_lies_at_the_fullest_level(form: Form) -> None:
    """No level from 3 cm below the bust points up to below the upper chest tape reads a millimetre more."""
    low, high = form.points["bust_point"][1] - 30, form.levels["upper_chest"] - 20
    fullest = max(girth(form, height) for height in np.linspace(low, high, 15))
    assert fullest < form.readings["bust"].read + 1


def test_the_same_wearer_gives_the_same_form() -> None:
    """To the last bit."""
    first, second = (fit_form(size_wearer("88")) for _ in range(2))
    assert np.array_equal(first.vertices, second.vertices)


def test_a_child_has_no_form() -> None:
    """It is refused by name, before anything is made."""
    with pytest.raises(InputError) as refused:
        fit_form(child(120))
    assert [problem.code for problem in refused.value.problems] == ["form-child"]


def test_arms_too_far_off_are_refused() -> None:
    """Beyond the last angle nothing is made, and the message names the two ends."""
    with pytest.raises(InputError) as refused:
        fit_form(size_wearer("88"), ARMS_TO + 0.1)
    [problem] = refused.value.problems
    assert problem.code == "form-arms"
    assert "35 to 60 degrees" in problem.says


def test_tapes_that_no_body_has_are_refused() -> None:
    """A shoulder line longer than half the shoulder width leaves no stand that has both."""
    tapes = dict(size_wearer("88").tapes) | {"shoulder_width": 300, "shoulder_length": 205, "shoulder_slope": 0.1}
    with pytest.raises(InputError) as refused:
        fit_form(Wearer("Odd", Figure.WOMAN, tapes))
    assert [problem.code for problem in refused.value.problems] == ["form-not-met"]


@pytest.mark.slow
@pytest.mark.parametrize("wearer", [*LIMIT_WEARERS, *random_wearers(Figure.WOMAN, 2), *random_wearers(Figure.MAN, 2)])
def test_odd_and_random_wearers_have_a_form(wearer: Wearer) -> None:
    """Whoever can be drafted for has a sound form with all tapes."""
    made = fit_form(wearer)
    assert made.residual_mm < MET_MM
    assert made.inverted == 0
