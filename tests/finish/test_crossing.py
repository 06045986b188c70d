"""Where two paths cross, against places known beforehand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.geometry import Path, Point, Vector, fair_line
from tapeline.geometry.crossing import crossings

quarter = fair_line([Point(100, 0), Point(0, 100)], leave=Vector(0, 1), arrive=Vector(-1, 0))


def test_a_curve_and_a_line_cross_where_both_are() -> None:
    """The diagonal crosses a quarter circle half way along it."""
    ((along, up),) = crossings(quarter, Path.through(Point(0, 0), Point(100, 100)))
    assert along == pytest.approx(quarter.length / 2, abs=1e-6)
    assert up == pytest.approx(100, abs=0.05)


def test_a_line_can_cross_a_curve_twice() -> None:
    """A chord run on crosses at both its ends."""
    found = crossings(quarter, Path.through(Point(110, -10), Point(-10, 110)))
    assert [along for along, _ in found] == pytest.approx([0, quarter.length], abs=1e-6)


def test_paths_that_stay_apart_do_not_cross() -> None:
    """Beside each other, and collinear, there is no crossing."""
    assert crossings(quarter, Path.through(Point(0, 0), Point(50, 50))) == []
    line = Path.through(Point(0, 0), Point(50, 50))
    assert crossings(line, line) == []


def test_a_crossing_at_a_knot_is_found_once() -> None:
    """Where two segments meet on another path, that is one crossing."""
    bent = Path.through(Point(0, 0), Point(50, 50), Point(100, 0))
    ((along, up),) = crossings(bent, Path.through(Point(50, 0), Point(50, 100)))
    assert (along, up) == pytest.approx((50 * math.sqrt(2), 50))


@given(st.floats(0.02, 0.98), st.floats(0.002, math.pi - 0.002), st.sampled_from([1, -1]))
def test_two_curves_laid_to_cross_at_a_place_do_so(share: float, angle: float, bend: int) -> None:
    """Two curves through one place at any angle above a tenth of a degree: that place is among their crossings."""
    along = share * quarter.length
    place, way = quarter.at(along), quarter.direction_at(along).turned(angle)
    other = fair_line([place + way * -40, place, place + way * 40 + way.left * (5 * bend)])
    here = other.knots[1]
    assert any(
        quarter.at(a).distance_to(here) < 1e-6 and other.at(b).distance_to(here) < 1e-6
        for a, b in crossings(quarter, other)
    )
