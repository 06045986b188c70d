"""Solving: answers that are right, and a named problem where there is none."""

from __future__ import annotations

import math
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.geometry import solve, solve_one
from tapeline.problems import InputError, Severity


@given(st.floats(0.5, 50))
def test_one_unknown_is_found(answer: float) -> None:
    """The value at which nothing is missing is found between the ends."""
    assert solve_one(lambda x: x**3 - answer**3, 0.1, 60, "it") == pytest.approx(answer, abs=1e-8)


def test_one_unknown_that_is_not_between_the_ends_is_refused() -> None:
    """Where both ends miss to the same side, the problem names what was looked for and how far off it stays."""
    with pytest.raises(InputError) as refusal:
        solve_one(lambda x: x + 40, 0, 10, "the neck width")
    (problem,) = refusal.value.problems
    assert (problem.code, problem.severity) == ("cannot-be-met", Severity.ERROR)
    assert "the neck width" in problem.says
    assert "40.0 mm" in problem.says
    assert problem.hint


@given(st.floats(20, 200), st.floats(20, 200))
def test_two_unknowns_are_found(a: float, b: float) -> None:
    """Two lengths are found from their sum and the root of their squares."""

    def miss(values: Sequence[float]) -> tuple[float, float]:
        x, y = values
        return x + 2 * y - (a + 2 * b), math.hypot(x, 10) + y - (math.hypot(a, 10) + b)

    found = solve(miss, (a + 5, b - 3), "two lengths")
    assert max(abs(m) for m in miss(found)) < 1e-7


def test_two_unknowns_that_contradict_each_other_are_refused() -> None:
    """Where no pair of values will do, the problem names them."""
    with pytest.raises(InputError) as refusal:
        solve(lambda v: (v[0] + v[1] - 10, v[0] + v[1] - 20), (1.0, 1.0), "front and back width")
    (problem,) = refusal.value.problems
    assert problem.code == "cannot-be-met"
    assert "front and back width" in problem.says
