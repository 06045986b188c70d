"""Taut tapes on shapes whose girth is known, and their slopes."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.spatial import ConvexHull

from tapeline.form.shapes import Place, shapes
from tapeline.form.tape_line import LAID, stand_at
from tapeline.form.taut import Plane, around, hull, over

ROUND = 90


def pillar(*middles: float, radius: float = 100, lean: float = 0) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Edges up round pillars whose axes stand at these places, each leaning by so many mm to the front per mm up."""
    angle = 2 * np.pi * np.arange(ROUND) / ROUND
    rows = []
    for middle in middles:
        for y in (-100.0, 100.0):
            rows += [[middle + radius * np.cos(a), y, radius * np.sin(a) + lean * y] for a in angle]
    points = np.array([*rows, [0.0, 0, 0], [0.0, 1, -lean]])
    pairs = [[2 * k * ROUND + i, (2 * k + 1) * ROUND + i] for k in range(len(middles)) for i in range(ROUND)]
    return points, np.array(pairs)


def spot(index: int) -> Place:
    """A point as a place."""
    return Place(np.array([index]), np.ones(1))


def test_a_tape_round_a_pillar() -> None:
    """Round a pillar of 90 sides lies 90 times one side: 2 r sin(2 degrees) each."""
    points, edges = pillar(0)
    taken = around(points, edges, Plane(spot(-2 % len(points)), "y"))
    assert taken.value == pytest.approx(ROUND * 2 * 100 * np.sin(np.pi / ROUND))


def test_a_tape_round_two_pillars_goes_straight_between() -> None:
    """Round two equal pillars lies one girth and twice the way between their axes, as a belt round two wheels."""
    points, edges = pillar(-150, 150)
    taken = around(points, edges, Plane(spot(len(points) - 2), "y"))
    assert taken.value == pytest.approx(2 * np.pi * 100 + 600, rel=1e-3)


def test_a_tape_over_a_half_pillar() -> None:
    """From side to side over the front of a pillar is half its girth."""
    points, edges = pillar(0)
    points = np.vstack([points, [[100.0, 0, 0], [-100.0, 0, 0]]])
    ends = spot(len(points) - 2), spot(len(points) - 1)
    taken = over(points, edges, Plane(ends[0], "y"), ends, np.array([0.0, 0, 1]))
    assert taken.value == pytest.approx(np.pi * 100, rel=1e-3)


def test_hull_has_the_corners_that_qhull_finds() -> None:
    """Our chain and the library's hull agree on random points."""
    points = np.random.default_rng(3).normal(size=(200, 2))
    assert set(hull(points).tolist()) == set(ConvexHull(points).vertices.tolist())


@pytest.mark.parametrize("name", LAID)
def test_slopes_are_what_moving_the_points_does(name: str) -> None:
    """When all points move a little at random, each tape grows by the sum of its slopes: planes tilt and all."""
    stand = stand_at(shapes())
    # Off the mean, where rings of the trunk lie level and a level tape would graze one.
    points = stand.shapes.whole(stand.shapes.half(np.full(8, 0.61), np.zeros(len(stand.shapes.local_names))))
    way = np.random.default_rng(2).normal(size=points.shape)
    at, slopes = LAID[name](stand, points).gathered()
    step = 1e-5
    grown = (LAID[name](stand, points + step * way).value - LAID[name](stand, points - step * way).value) / (2 * step)
    assert (slopes * way[at]).sum() == pytest.approx(grown, rel=1e-3, abs=1e-5)
