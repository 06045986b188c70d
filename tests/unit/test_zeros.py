"""Where a line meets a segment, against numpy's roots of the same polynomial."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.geometry.zeros import zeros

heights = st.lists(st.floats(-100, 100).map(lambda mm: round(mm, 3)), min_size=4, max_size=4)


def height(b: list[float], t: float) -> float:
    """The cubic's height at a parameter."""
    u = 1 - t
    return float(u**3 * b[0] + 3 * u * u * t * b[1] + 3 * u * t * t * b[2] + t**3 * b[3])


@given(heights)
def test_every_zero_is_one(b: list[float]) -> None:
    """At each place that is found the cubic is as near zero as rounding lets it be."""
    found = zeros(b, 1e-9)
    assert found == sorted(found)
    for t in found:
        assert 0 <= t <= 1
        assert abs(height(b, t)) < 1e-8


@given(heights)
def test_no_zero_is_missed(b: list[float]) -> None:
    """Every simple root that numpy finds well inside is found (`numpy.roots`, eigenvalues of the companion matrix)."""
    cubic = [b[3] - 3 * b[2] + 3 * b[1] - b[0], 3 * b[2] - 6 * b[1] + 3 * b[0], 3 * b[1] - 3 * b[0], b[0]]
    found = zeros(b, 1e-9)
    for root in np.roots(cubic):
        t = float(root.real)
        slope = np.polyval(np.polyder(cubic), t)
        if abs(root.imag) < 1e-12 and 1e-6 < t < 1 - 1e-6 and abs(slope) > 1e-2:
            assert any(abs(t - one) < 1e-6 for one in found)


@pytest.mark.parametrize(
    ("b", "expected"),
    [
        ([1, -1 / 3, -1 / 3, 1], [0.5]),  # touches in the middle: 1 - 4t + 4t^2
        ([0, 0, 0, 0], []),  # lies on the line
        ([0, 1, 1, 0], [0, 1]),  # its two ends alone
        ([-1, -1 / 3, 1 / 3, 1], [0.5]),  # straight
        ([5, 5, 5, 5], []),
    ],
)
def test_touching_and_lying_on(b: list[float], expected: list[float]) -> None:
    """A line that touches meets the curve once; one that lies on it crosses it nowhere."""
    assert zeros(b, 1e-9) == pytest.approx(expected, abs=1e-7)
