"""Lengths as makers write them."""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.problems import InputError
from tapeline.units import Unit, parse_angle, parse_length, show_angle, show_length

UNITS = st.sampled_from(list(Unit))


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("84.5", 845),
        ("84,5 cm", 845),
        ("84,5cm", 845),
        ("845 mm", 845),
        ("  845\u00a0mm ", 845),
        ("845\u202fmm", 845),
        ("0.5 m", 500),
        ("1,625 m", 1625),
        ("33 1/4 in", 844.55),
        ('33¼"', 844.55),
        ("33 ¼ in", 844.55),
        ('33-1/4"', 844.55),
        ("33 - 1/4 inches", 844.55),
        ("33–1/4”", 844.55),
        ("33 1\N{FRACTION SLASH}4″", 844.55),
        ("1/2 in", 12.7),
        ("⅞ in.", 22.225),
        (".5 in", 12.7),
        (",5 cm", 5),
        ("+3 cm", 30),
        ("84.5 Centimetres", 845),
        ("84 1/2", 845),
        (84.5, 845),
        (84, 840),
        (Fraction(169, 2), 845),
        (Decimal("84.5"), 845),
        (np.float64(84.5), 845),
        ("0", 0),
    ],
)
def test_what_makers_write_is_understood(text: object, mm: float) -> None:
    """Every usual way to write a length means what its writer meant."""
    assert parse_length(text, Unit.CM) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("value", "says"),
    [
        ("", "is empty"),
        (" \u00a0", "is empty"),
        ("about 84", "is not a length"),
        ("NaN", "is not a length"),
        ("inf", "is not a length"),
        ("1e9", "unit that is not known"),
        (math.nan, "is not a length"),
        (math.inf, "is not a length"),
        (10**400, "is not a length"),
        ("9" * 400, "too large"),
        (True, "true is not a length"),
        (None, "is not a length"),
        ([84], "is not a length"),
        ("1,234.5", "two ways"),
        ("1.234,5", "two ways"),
        ("1,625", "two ways"),
        ("1,625 mm", "two ways"),
        ("33 5/4 in", "not less than one"),
        ("1/0", "divides by zero"),
        ("84 85", "is not a length"),
        ("84.5.1", "is not a length"),
        ("84 kg", "kg"),
        ("84°", "°"),
        ("-3", "below zero"),
        (-3, "below zero"),
        ("−3 cm", "below zero"),
        ("\x00\x1b[31m", "is not a length"),
    ],
)
def test_what_is_no_length_is_refused_and_told(value: object, says: str) -> None:
    """What cannot be read, or can be read in two ways, is refused; the forms that are understood are said."""
    with pytest.raises(InputError) as error:
        parse_length(value, Unit.CM)
    (problem,) = error.value.problems
    assert problem.code == "length-not-understood"
    assert says in problem.says
    assert len(problem.says) < 160
    assert "84,5 cm" in problem.hint
    assert "\x1b" not in problem.says


def test_a_change_may_be_below_zero() -> None:
    """A length below zero is understood only where it makes sense, in every way to write the sign."""
    assert [parse_length(text, Unit.CM, signed=True) for text in ("-1.5", "−1,5 cm", "- 1 1/2", -1.5)] == [-15.0] * 4
    assert math.copysign(1, parse_length("-0", Unit.CM)) == 1


def test_a_bare_number_is_in_the_unit_of_the_docket() -> None:
    """The same docket number is 2.54 times as long in an inch docket, and a written unit always wins."""
    assert parse_length(10, Unit.INCH) == pytest.approx(254)
    assert parse_length("10 cm", Unit.INCH) == parse_length(10, Unit.CM) == 100


@given(st.integers(0, 100), st.integers(0, 63), st.sampled_from([2, 4, 8, 16, 32, 64]), st.sampled_from([" ", "-"]))
def test_fractions_are_exact(whole: int, above: int, below: int, between: str) -> None:
    """A whole number and a fraction of an inch are read exactly."""
    above %= below
    exact = (whole + Fraction(above, below)) * Fraction(254, 10)
    assert parse_length(f"{whole}{between}{above}/{below} in", Unit.CM) == float(exact)


@given(st.floats(0, 5000), UNITS, UNITS)
def test_shown_exactly_and_read_again_is_the_same(mm: float, unit: Unit, docket: Unit) -> None:
    """A length shown with decimals is read back within what the decimals can hold, whatever the docket's unit."""
    assert parse_length(show_length(mm, unit, exact=True), docket) == pytest.approx(mm, abs=0.0501)


@given(st.integers(0, 3000), UNITS)
def test_shown_as_on_a_tape_and_read_again_is_the_same(steps: int, unit: Unit) -> None:
    """What lies on a mark of the tape is shown without ≈ and read back exactly."""
    mm = steps * (1 if unit is Unit.CM else 25.4 / 16)
    shown = show_length(mm, unit)
    assert "≈" not in shown
    assert parse_length(shown, unit) == pytest.approx(mm, abs=1e-9)


@given(st.floats(-5000, 5000))
def test_inches_are_shown_to_the_nearest_sixteenth(mm: float) -> None:
    """A length in inches is at most half a sixteenth away from what is shown, and ≈ says when it is away."""
    shown = show_length(mm, Unit.INCH)
    back = parse_length(shown.removeprefix("≈"), Unit.INCH, signed=True)
    assert abs(back - mm) <= 25.4 / 32 + 1e-9
    assert shown.startswith("≈") == (abs(back - mm) > 0.01)


def harmless(text: str, unit: Unit) -> bool:
    """Whether a text is read as a length of zero or more, or refused as not understood."""
    try:
        return 0 <= parse_length(text, unit) < math.inf
    except InputError as error:
        return [problem.code for problem in error.problems] == ["length-not-understood"]


@given(st.text(max_size=20), UNITS)
def test_no_text_does_harm(text: str, unit: Unit) -> None:
    """Any text is either a finite length of zero or more, or a problem; nothing else happens."""
    assert harmless(text, unit)


@given(st.text('0123456789.,/-+ ¼½⅓"cmin', max_size=12))
def test_no_near_length_does_harm(text: str) -> None:
    """The same for texts that are almost lengths."""
    assert harmless(text, Unit.INCH)


def test_angles_are_in_degrees() -> None:
    """A shoulder slope is written in degrees, and what is none is refused."""
    assert parse_angle("20,5 degrees") == parse_angle(20.5) == parse_angle("20.5°") == math.radians(20.5)
    for value in (True, "steep", "20 cm", math.nan, -1, 360, ""):
        with pytest.raises(InputError) as error:
            parse_angle(value)
        assert error.value.problems[0].code == "angle-not-understood"


@given(st.integers(0, 3599))
def test_angles_are_shown_to_a_tenth_of_a_degree(tenths: int) -> None:
    """An angle of whole tenths of a degree is shown and read back the same."""
    assert parse_angle(show_angle(math.radians(tenths / 10))) == pytest.approx(math.radians(tenths / 10), abs=1e-9)
