"""What is measured at a table, against physics and the trade's own figures."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.drape import HANDS, HomeTest, Pull, Strip, hand_of
from tapeline.drape.cloth import HAND_PULL
from tapeline.problems import InputError

TEST = HomeTest(
    square_mm=100,
    square_grams=1.5,
    across=Strip(longer=((250, 12.0),)),
    along=Strip(longer=((250, 6.0),)),
    overhang_across_mm=24,
    overhang_along_mm=30,
)


def test_rigidity_is_peirces() -> None:
    """150 g/m2 that hang over by 24 mm at 41.5 degrees have B = w g c^3 = 2.54 uN m (ASTM D1388; computed by hand)."""
    hand = TEST.hand("jersey", shear=45)
    assert hand.rigidity_across == pytest.approx(0.150 * 9.80665 * 0.012**3 * 1e6, rel=1e-12)
    assert hand.rigidity_across == pytest.approx(2.54, abs=0.005)


def test_the_strip_stretches_as_it_was_measured() -> None:
    """Under the weight that was hung on it, the cloth that comes of the test is as much longer as was measured."""
    tension = 0.250 * 9.80665 / 0.050
    hand = TEST.hand("jersey", shear=45)
    assert hand.across.stretch(tension) == pytest.approx(0.12, abs=1e-9)
    assert hand.along.stretch(tension) == pytest.approx(0.06, abs=1e-9)


def test_two_weights_tell_how_it_stiffens() -> None:
    """Both points of a knit that stiffens are met exactly, and a pull beyond them asks for more than a spring's."""
    strip = Strip(longer=((100, 10.0), (500, 30.0)))
    curve = Pull.measured(strip.points())
    assert [curve.stretch(tension) for tension, _ in strip.points()] == pytest.approx([0.10, 0.30], abs=1e-9)
    assert curve.tension(0.5) > Pull.measured(strip.points()[:1]).tension(0.5)


def test_many_weights_that_scatter_are_met_in_the_middle() -> None:
    """Points scattered evenly about a known curve give that curve back within the scatter."""
    true = Pull(100.0, 800.0)
    points = [(true.tension(stretch) * (1 + off), stretch) for stretch in (0.1, 0.2, 0.3, 0.4) for off in (-0.02, 0.02)]
    found = Pull.measured(points)
    assert found.k == pytest.approx(true.k, rel=0.02)
    assert found.s == pytest.approx(true.s, rel=0.02)


def test_a_cloth_that_softens_is_no_less_than_a_spring() -> None:
    """A second point that lies below the line of the first bends no curve down: tension never falls with stretch."""
    assert Pull.measured([(60.0, 0.10), (70.0, 0.30)]).s == 0


def test_shear_from_the_bias_is_the_textbooks() -> None:
    """A sheet alike in every direction pulls alike on the bias, and G = E / (2 (1 + n)) (any text on elasticity)."""
    points = ((100.0, 8.0),)
    test = replace(TEST, across=Strip(points), along=Strip(points), bias=Strip(points), narrows=0.3)
    hand = test.hand("alike")
    assert hand.shear == pytest.approx(hand.across.k / (2 * 1.3), rel=1e-9)


@pytest.mark.parametrize(
    ("test", "where"),
    [
        pytest.param(replace(TEST, square_grams=0), "square_grams", id="a square of no weight"),
        pytest.param(replace(TEST, overhang_across_mm=2), "overhang_across_mm", id="hangs over by nothing"),
        pytest.param(replace(TEST, across=Strip(longer=())), "across", id="no weight hung on it"),
        pytest.param(replace(TEST, along=Strip(longer=((250, -1.0),))), "along", id="a strip that got shorter"),
        pytest.param(replace(TEST, narrows=0.8), "narrows", id="narrows more than energy allows"),
        pytest.param(replace(TEST, bias=Strip(longer=((250, 0.5),))), "bias", id="a bias that hardly stretches"),
    ],
)
def test_what_cannot_be_is_named(test: HomeTest, where: str) -> None:
    """A number that cannot have been measured is refused, and the one meant is named."""
    with pytest.raises(InputError) as refused:
        test.hand("jersey", shear=45)
    assert [(problem.code, problem.where) for problem in refused.value.problems] == [("home-test-range", where)]


def test_shear_is_asked_for() -> None:
    """Without a strip on the bias and without a shear, how easily it shears would have to be made up: refused."""
    with pytest.raises(InputError, match="bias"):
        TEST.hand("jersey")


RANGES = {
    # Weight in g/m2, stretch across in per cent, bending length in mm: from memory of the trade's ranges, no source.
    "single jersey": ((140, 200), (20, 50), (10, 18)),
    "rib": ((180, 280), (60, 120), (10, 18)),
    "brushed sweatshirt knit": ((260, 350), (15, 30), (10, 25)),
    "poplin": ((105, 140), (1, 5), (18, 28)),
    "linen": ((120, 200), (1, 5), (18, 32)),
    "denim": ((280, 480), (1, 5), (25, 45)),
}


@pytest.mark.parametrize("name", RANGES)
def test_named_cloths_lie_where_the_trade_puts_them(name: str) -> None:
    """Weight, stretch and bending length lie in the usual ranges of each kind (from memory)."""
    hand, (weight, stretch, bend) = HANDS[name], RANGES[name]
    assert weight[0] <= hand.weight <= weight[1]
    assert stretch[0] <= hand.across.stretch(HAND_PULL) * 100 <= stretch[1]
    assert bend[0] <= hand.bend_across <= hand.bend_along <= bend[1]
    assert "memory" in hand.source


def test_every_named_cloth_has_energy_however_it_is_pulled() -> None:
    """No named cloth narrows so much that pulling it would set energy free."""
    assert all(hand.narrows**2 * hand.along.k < hand.across.k for hand in HANDS.values())


def test_a_kind_without_a_hand_is_refused() -> None:
    """A kind of cloth whose hang is not known is named, with the nearest that is."""
    with pytest.raises(InputError, match="did you mean poplin"):
        hand_of("popln")
