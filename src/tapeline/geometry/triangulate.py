"""Triangles inside an outline whose boundary nodes are given: even, and with every boundary edge kept."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

__all__ = ["lost_edges", "triangulate"]

Array = NDArray[np.float64]
Whole = NDArray[np.int64]

ROUNDS = 12
"""Of smoothing; more do not make the smallest angle larger."""
OFF_THE_EDGE = 0.62
"""Grid nodes nearer to the boundary than this share of an edge would make slivers."""
NO_AREA = 1e-9
SMOOTHING = 0.8
PER_SIDE = 6


def triangulate(outline: Array, edge: float) -> tuple[Array, Whole]:
    """Nodes and triangles (counter-clockwise) inside a closed counter-clockwise outline, about `edge` mm long.

    The outline's own nodes come first and are not moved; the others lie on a grid of equal triangles that is then
    smoothed: each goes towards the middle of the triangles about it, weighed by area (Lloyd, "Least squares
    quantization in PCM", IEEE Transactions on Information Theory 28, 1982, in the form in which it is usually run on
    meshes), and they are joined anew by Delaunay's rule each time.

    >>> square = np.array([[0, 0], [10, 0], [20, 0], [20, 10], [20, 20], [10, 20], [0, 20], [0, 10]], float)
    >>> nodes, triangles = triangulate(square, 10.0)
    >>> (nodes[:8] == square).all(), lost_edges(triangles, 8)
    (np.True_, [])
    """
    from scipy.spatial import cKDTree

    count = len(outline)
    low, high = outline.min(axis=0), outline.max(axis=0)
    middle = (low + high) / 2
    rows = np.arange(-int((high[1] - low[1]) / edge) - 2, int((high[1] - low[1]) / edge) + 3)
    across = np.arange(-int((high[0] - low[0]) / edge) - 2, int((high[0] - low[0]) / edge) + 3)
    # Laid out from the middle, so that a symmetrical outline has a symmetrical grid.
    x = middle[0] + edge * (across[None, :] + 0.5 * (rows[:, None] % 2))
    y = middle[1] + edge * np.sqrt(3) / 2 * (rows[:, None] + 0.0 * across[None, :])
    grid = np.column_stack([x.ravel(), y.ravel()])
    grid = grid[_inside(outline, grid)]
    sides = np.roll(outline, -1, axis=0) - outline
    dense = np.vstack([outline + sides * part for part in np.linspace(0, 1, PER_SIDE)[:-1]])
    grid = grid[cKDTree(dense).query(grid)[0] > OFF_THE_EDGE * edge] if len(grid) else grid
    nodes: Array = np.vstack([outline, grid])
    triangles = _delaunay(outline, nodes, edge)
    for _ in range(ROUNDS):
        corners = nodes[triangles]
        areas = _twice_area(corners) / 2
        centres = corners.mean(axis=1)
        pulled, weight = np.zeros_like(nodes), np.full(len(nodes), 1e-300)
        for corner in range(3):
            np.add.at(pulled, triangles[:, corner], centres * areas[:, None])
            np.add.at(weight, triangles[:, corner], areas)
        nodes[count:] += SMOOTHING * (pulled[count:] / weight[count:, None] - nodes[count:])
        triangles = _delaunay(outline, nodes, edge)
    return nodes, triangles


def lost_edges(triangles: Whole, count: int) -> list[int]:
    """Which of the boundary's edges (by their first node) are no side of a triangle."""
    sides = np.sort(np.vstack([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [2, 0]]]), axis=1)
    there = {(int(a), int(b)) for a, b in sides[(sides < count).all(axis=1)]}
    wanted = [(k, (k + 1) % count) for k in range(count)]
    return [a for a, b in wanted if (min(a, b), max(a, b)) not in there]


def _twice_area(corners: Array) -> Array:
    one, two = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    out: Array = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    return out


def _delaunay(outline: Array, nodes: Array, edge: float) -> Whole:
    from scipy.spatial import Delaunay

    triangles: Whole = Delaunay(nodes).simplices.astype(np.int64)
    triangles = triangles[_inside(outline, nodes[triangles].mean(axis=1))]
    twice = _twice_area(nodes[triangles])
    triangles[twice < 0] = triangles[twice < 0][:, [0, 2, 1]]
    return triangles[np.abs(twice) > NO_AREA * edge * edge]


def _inside(outline: Array, places: Array) -> NDArray[np.bool_]:
    """By counting how often a line to the right crosses the outline."""
    inside = np.zeros(len(places), bool)
    x, y = places[:, 0], places[:, 1]
    for (x0, y0), (x1, y1) in zip(outline, np.roll(outline, -1, axis=0), strict=True):
        if y0 == y1:
            continue
        inside ^= ((y0 > y) != (y1 > y)) & (x < x0 + (x1 - x0) * (y - y0) / (y1 - y0))
    return inside
