"""Traced lengths: they calculate as numbers do, and say how."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.lengths import Length, at_least, at_most, cm, phrase_text
from tapeline.problems import InputError
from tapeline.units import Unit

MM = st.floats(1, 2000)
FACTOR = st.floats(0.1, 10)


@given(MM, MM, FACTOR)
def test_lengths_calculate_as_their_millimetres_do(a: float, b: float, k: float) -> None:
    """Sums, differences, multiples, shares and proportions are those of the numbers."""
    one, two = Length(a, "one"), Length(b, "two")
    assert (one + two).mm == a + b
    assert (one - two).mm == a - b
    assert (one * k).mm == (k * one).mm == a * k
    assert (one / k).mm == a / k
    assert (one * (two / one)).mm == pytest.approx(b)
    assert at_least(one, two).mm == max(a, b)
    assert at_most(one, two).mm == min(a, b)


@given(MM, MM, FACTOR)
def test_the_slope_is_the_difference(a: float, b: float, k: float) -> None:
    """How much a formula grows per unit of a name is what it grows when the name does."""

    def formula(mm: float) -> Length:
        one, two = Length(mm, "one"), Length(b, "two")
        return (one * k + two - one / 4) * (one / two)

    step = 1e-4
    grown = (formula(a + step).mm - formula(a - step).mm) / (2 * step)
    assert formula(a).slope("one") == pytest.approx(grown, rel=1e-5, abs=1e-5)
    assert Length(a, "one").slope("three") == 0


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (Length(940, "bust") / 4 - cm(1), "bust / 4 - 1 = 94 / 4 - 1 = 22.5 cm"),
        ((Length(940, "bust") + cm(8)) / 4, "(bust + 8) / 4 = (94 + 8) / 4 = 25.5 cm"),
        (Length(400, "a") - (Length(100, "b") - cm(2)), "a - (b - 2) = 40 - (10 - 2) = 32 cm"),
        (Length(400, "a") - (Length(100, "b") + cm(2)), "a - (b + 2) = 40 - (10 + 2) = 28 cm"),
        (Length(400, "a") - Length(100, "b") + cm(2), "a - b + 2 = 40 - 10 + 2 = 32 cm"),
        (at_least(Length(-5, "drop"), cm(0)) + cm(1), "(drop, but at least 0) + 1 = (-0.5, but at least 0) + 1 = 1 cm"),
        ((Length(940, "bust") / 4).named("quarter") * 2, "quarter * 2 = 23.5 * 2 = 47 cm"),
    ],
)
def test_formulas_keep_their_brackets(length: Length, text: str) -> None:
    """Brackets stand where leaving them out would change the answer, and nowhere else."""
    assert length.equation() == text


def test_a_bare_number_is_refused() -> None:
    """A length and a number without a unit are not added, and the hint says how to write it."""
    with pytest.raises(InputError) as refusal:
        cm(3) + 2  # type: ignore[operator]  # what is refused
    (problem,) = refusal.value.problems
    assert problem.code == "length-without-unit"
    assert "cm(2)" in problem.hint


@given(MM)
def test_inches_are_the_same_length(mm: float) -> None:
    """What is shown in inches is what is shown in centimetres, to the last place shown."""
    length = Length(mm)
    shown = {unit: float(re.sub(r" \w+$", "", length.show(unit))) * unit.mm for unit in Unit}
    assert shown[Unit.CM] == pytest.approx(mm, abs=0.051)
    assert shown[Unit.INCH] == pytest.approx(mm, abs=0.128)


def test_needs_are_the_names_and_leaves_go_deeper() -> None:
    """A formula needs the names that stand in it; its leaves are the names under those, too."""
    quarter = (Length(940, "bust") / 4).named("quarter")
    formula = quarter + Length(20, "ease") + Length(5, "ease")
    assert formula.needs() == ("quarter", "ease")
    assert formula.leaves() == ("quarter", "bust", "ease")


def test_a_phrase_reads_in_either_unit() -> None:
    """Words stay, numbers change with the unit."""
    phrase = ("down by ", cm(2.54))
    assert phrase_text(phrase, Unit.CM) == "down by 2.54 cm"
    assert phrase_text(phrase, Unit.INCH) == "down by 1 in"
