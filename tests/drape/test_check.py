"""The solver, against textbooks and against its own energy."""

from __future__ import annotations

import numpy as np
import pytest

from tapeline.drape import HANDS
from tapeline.drape.balance import Balance
from tapeline.drape.band import distance_by, distance_to
from tapeline.drape.check import check
from tapeline.drape.compiled import Array, Whole
from tapeline.drape.exact import hanging_strip, strip_over_edge, tube
from tapeline.drape.fabric import fabric
from tapeline.drape.trial import rectangle
from tapeline.geometry.triangulate import lost_edges, triangulate


def ball(radius: float, rounds: int) -> tuple[Array, Whole]:
    """A ball of equal triangles, made from an octahedron by halving every side."""
    corners = np.array([[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]], float)
    faces = np.array([[0, 2, 4], [2, 1, 4], [1, 3, 4], [3, 0, 4], [2, 0, 5], [1, 2, 5], [3, 1, 5], [0, 3, 5]])
    for _ in range(rounds):
        middles = [(corners[faces[:, k]] + corners[faces[:, (k + 1) % 3]]) / 2 for k in range(3)]
        count = len(faces)
        ids = [np.arange(count) + len(corners) + k * count for k in range(3)]
        corners = np.vstack([corners, *middles])
        a, b, c = faces.T
        ab, bc, ca = ids
        faces = np.vstack([np.stack(q, 1) for q in ((a, ab, ca), (ab, b, bc), (ca, bc, c), (ab, bc, ca))])
    unique, which = np.unique(corners.round(9), axis=0, return_inverse=True)
    unique = unique / np.linalg.norm(unique, axis=1, keepdims=True)
    return unique * radius, which.ravel()[faces]


def test_peirces_angle_is_where_the_textbook_puts_it() -> None:
    """A strip that hangs over by two bending lengths slopes by 41.5 degrees (Peirce 1930), as his test has it."""
    assert strip_over_edge(2.0) == pytest.approx(41.5, abs=0.05)


def test_a_spring_hangs_by_half_its_weight() -> None:
    """A strip that hardly stretches gets longer by w L^2 / 2 k (any text on strength of materials)."""
    hand = HANDS["denim"]
    expected = hand.load / 1000 * 500**2 / 2 / hand.along.k
    assert hanging_strip(hand, 500.0) == pytest.approx(expected, rel=1e-3)


def test_pressure_is_laplaces() -> None:
    """Tension over radius, for each unit of cloth as cut: 100 N/m round 100 mm press with 1 kPa."""
    hand = HANDS["single jersey"]
    hoop = hand.across.stretch(100.0)
    assert tube(hand, 100.0, 100.0 * (1 + hoop)).pressure == pytest.approx(1.0)


@pytest.mark.parametrize("edge", [20.0, 12.0, 7.0])
def test_triangles_keep_the_outline_and_are_even(edge: float) -> None:
    """Every boundary edge is a side of a triangle, the areas add up to the outline's, and no corner is a sliver."""
    nodes, triangles = rectangle(173.0, 211.0, edge)
    sides = nodes[triangles][:, [1, 2, 0]] - nodes[triangles]
    twice = sides[:, 0, 0] * sides[:, 1, 1] - sides[:, 0, 1] * sides[:, 1, 0]
    assert twice.min() > 0
    assert twice.sum() / 2 == pytest.approx(173.0 * 211.0)
    way = sides / np.linalg.norm(sides, axis=2, keepdims=True)
    smallest = np.degrees(np.arccos(np.clip(-(way * np.roll(way, 1, axis=1)).sum(axis=2), -1, 1)).min())
    # Common practice: finite elements are sound from 20 to 25 degrees up.
    assert smallest > 25


def test_an_outline_that_turns_in_is_kept() -> None:
    """No triangle lies outside an outline with a corner that turns in."""
    steps = [(x, 0) for x in range(0, 60, 10)] + [(60, y) for y in range(0, 30, 10)]
    steps += [(x, 30) for x in range(60, 30, -10)] + [(30, y) for y in range(30, 60, 10)]
    steps += [(x, 60) for x in range(30, 0, -10)] + [(0, y) for y in range(60, 0, -10)]
    outline = np.array(steps, float)
    nodes, triangles = triangulate(outline, 10.0)
    one, two = nodes[triangles[:, 1]] - nodes[triangles[:, 0]], nodes[triangles[:, 2]] - nodes[triangles[:, 0]]
    assert lost_edges(triangles, len(outline)) == []
    assert (one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]).sum() / 2 == pytest.approx(60 * 30 + 30 * 30)


@pytest.mark.slow
def test_the_distance_is_that_of_a_ball() -> None:
    """From a ball of 100 mm every grid place near it is as far as its radius says, within what flat faces leave."""
    vertices, triangles = ball(100.0, 4)
    found = distance_to(vertices, triangles)
    places = np.stack(np.meshgrid(*(np.arange(n) * found.step for n in found.grid.shape), indexing="ij"), axis=-1)
    exact = np.linalg.norm(places + found.low, axis=-1) - 100.0
    near = np.abs(exact) < 15
    # The middle of a flat face lies inside the ball, by as much as is counted here.
    flat = 100.0 - np.linalg.norm(vertices[triangles].mean(axis=1), axis=1).min()
    assert np.abs(found.grid - exact)[near].max() < 1.1 * flat
    assert (np.sign(found.grid) == np.sign(exact))[np.abs(exact) > 1].all()


@pytest.mark.slow
def test_the_forces_are_the_slope_of_the_energy() -> None:
    """Moving a node a little changes the energy by its gradient: stretch, shear, bending, contact and rubbing."""
    flat, triangles = rectangle(40.0, 40.0, 10.0)
    chance = np.random.default_rng(1)
    x = np.column_stack([flat, np.zeros(len(flat))]) + chance.normal(0, 0.8, (len(flat), 3))
    form = distance_by(lambda p: p[..., 2] + 0.1 * p[..., 0] - 2.3, np.full(3, -30.0), np.full(3, 70.0))
    balance = Balance(fabric(flat, triangles, HANDS["rib"]), x, form)
    balance.step(100.0)
    was, x = balance.x, balance.x + chance.normal(0, 0.05, x.shape)
    balance.energy(x, was, 50.0)
    gradient = balance.gradient.copy()
    for node, axis in [(0, 0), (3, 1), (len(x) - 1, 2), (len(x) - 2, 0)]:
        more, less = x.copy(), x.copy()
        more[node, axis] += 1e-5
        less[node, axis] -= 1e-5
        slope = (balance.energy(more, was, 50.0) - balance.energy(less, was, 50.0)) / 2e-5
        assert gradient[node, axis] == pytest.approx(slope, rel=1e-5, abs=1e-4)


@pytest.mark.slow
def test_the_solver_finds_what_the_textbooks_say() -> None:
    """Strips that hang and bend, tubes on larger cylinders, mirrored and turned: all within what the table allows."""
    rows = list(check(quick=True))
    assert [row.what for row in rows if not row.holds] == []
    assert {row.unit for row in rows} == {"mm longer", "degrees", "per cent", "Pa", "points of strain"}
    within = [row for row in rows if row.unit in ("mm longer", "per cent", "Pa")]
    assert all(row.allowed <= abs(row.exact) / 100 for row in within)
