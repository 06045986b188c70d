"""How far a place lies from the form: signed distance on a grid, exact in a band about the surface."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapeline.drape.compiled import Array, Whole, compiled

__all__ = ["Distance", "distance_by", "distance_to"]

FAR = 1e9
STEP_MM = 5.0
BAND_MM = 22.0
ROOM_MM = 40.0


@dataclass(frozen=True, slots=True)
class Distance:
    """Distances in mm on a grid of places, positive outside; beyond the grid nothing is near."""

    low: Array
    step: float
    grid: NDArray[np.float32]

    @classmethod
    def none(cls) -> Distance:
        """Nothing to lie on."""
        return cls(np.full(3, FAR), 1.0, np.ones((2, 2, 2), np.float32))


def distance_by(rule: Callable[[Array], Array], low: Array, high: Array, step: float = STEP_MM) -> Distance:
    """On a grid between two corners, by a formula from places to distances."""
    counts = np.ceil((high - low) / step).astype(int) + 1
    axes = [low[k] + step * np.arange(counts[k]) for k in range(3)]
    return Distance(low, step, rule(np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1)).astype(np.float32))


def distance_to(vertices: Array, triangles: Whole, step: float = STEP_MM) -> Distance:
    """Of a closed surface whose triangles are counter-clockwise seen from outside.

    Exact within 22 mm; further away the sign is right and the distance grows on, which is all that a cloth needs.
    The sign is that of the normal at the nearest place, of the face, the side or the corner (J. A. Baerentzen and
    H. Aanaes, "Signed distance computation using the angle weighted pseudonormal", IEEE Transactions on Visualization
    and Computer Graphics 11, 2005).
    """
    corners = vertices[triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    faces = normals / np.linalg.norm(normals, axis=1, keepdims=True)
    at_corners = np.zeros_like(vertices)
    for k in range(3):
        one, two = corners[:, (k + 1) % 3] - corners[:, k], corners[:, (k + 2) % 3] - corners[:, k]
        cosine = (one * two).sum(axis=1) / (np.linalg.norm(one, axis=1) * np.linalg.norm(two, axis=1))
        np.add.at(at_corners, triangles[:, k], faces * np.arccos(np.clip(cosine, -1, 1))[:, None])
    sides = np.sort(np.stack([triangles[:, [1, 2]], triangles[:, [2, 0]], triangles[:, [0, 1]]], axis=1), axis=2)
    unique, which = np.unique(sides[..., 0] * len(vertices) + sides[..., 1], return_inverse=True)
    summed = np.zeros((len(unique), 3))
    np.add.at(summed, which.ravel(), np.repeat(faces, 3, axis=0))
    at_sides = np.ascontiguousarray(summed[which.reshape(-1, 3)])
    low = vertices.min(axis=0) - ROOM_MM
    counts = (np.ceil((vertices.max(axis=0) + ROOM_MM - low) / step) + 1).astype(np.int64)
    squared, sign = np.full(tuple(counts), FAR), np.zeros(tuple(counts))
    reach = max(BAND_MM, 2.5 * step)
    _band(vertices, triangles, at_corners, at_sides, faces, low, step, counts, reach, squared, sign)
    grid = np.sqrt(squared) * sign
    _beyond(grid, sign, step)
    return Distance(low, step, grid.astype(np.float32))


@compiled
def _beyond(grid: Array, sign: Array, step: float) -> None:
    """Fills what the band did not reach: from known neighbours, one step further, by sweeps there and back."""
    nx, ny, nz = grid.shape
    for sweep in range(8):
        for ii in range(nx):
            i = ii if sweep & 1 == 0 else nx - 1 - ii
            for jj in range(ny):
                j = jj if sweep & 2 == 0 else ny - 1 - jj
                for kk in range(nz):
                    k = kk if sweep & 4 == 0 else nz - 1 - kk
                    if abs(sign[i, j, k]) == 1:
                        continue
                    for axis in range(3):
                        for way in (-1, 1):
                            a = i + (way if axis == 0 else 0)
                            b = j + (way if axis == 1 else 0)
                            c = k + (way if axis == 2 else 0)
                            if a < 0 or b < 0 or c < 0 or a >= nx or b >= ny or c >= nz or sign[a, b, c] == 0:
                                continue
                            further = abs(grid[a, b, c]) + step
                            if sign[i, j, k] == 0 or (abs(sign[i, j, k]) == 2 and further < abs(grid[i, j, k])):
                                sign[i, j, k] = 2.0 if sign[a, b, c] > 0 else -2.0
                                grid[i, j, k] = further if sign[i, j, k] > 0 else -further


@compiled
def _band(
    vertices: Array,
    triangles: Whole,
    at_corners: Array,
    at_sides: Array,
    faces: Array,
    low: Array,
    step: float,
    counts: Whole,
    reach: float,
    squared: Array,
    sign: Array,
) -> None:
    first, last = np.empty(3, np.int64), np.empty(3, np.int64)
    off = np.empty(3)
    for f in range(triangles.shape[0]):
        a, b, c = vertices[triangles[f, 0]], vertices[triangles[f, 1]], vertices[triangles[f, 2]]
        for k in range(3):
            first[k] = max(0, math.ceil((min(a[k], b[k], c[k]) - reach - low[k]) / step))
            last[k] = min(counts[k] - 1, math.floor((max(a[k], b[k], c[k]) + reach - low[k]) / step))
        ab, ac = b - a, c - a
        abab, abac, acac = (ab * ab).sum(), (ab * ac).sum(), (ac * ac).sum()
        for i in range(first[0], last[0] + 1):
            for j in range(first[1], last[1] + 1):
                for m in range(first[2], last[2] + 1):
                    px, py, pz = low[0] + i * step - a[0], low[1] + j * step - a[1], low[2] + m * step - a[2]
                    # The nearest place of the triangle, as shares of its corners, case by case.
                    d1 = ab[0] * px + ab[1] * py + ab[2] * pz
                    d2 = ac[0] * px + ac[1] * py + ac[2] * pz
                    d3, d4, d5, d6 = d1 - abab, d2 - abac, d1 - abac, d2 - acac
                    va, vb, vc = d3 * d6 - d5 * d4, d5 * d2 - d1 * d6, d1 * d4 - d3 * d2
                    kind = 6
                    if d1 <= 0 and d2 <= 0:
                        v, w, kind = 0.0, 0.0, 0
                    elif d3 >= 0 and d4 <= d3:
                        v, w, kind = 1.0, 0.0, 1
                    elif d6 >= 0 and d5 <= d6:
                        v, w, kind = 0.0, 1.0, 2
                    elif vc <= 0 and d1 >= 0 and d3 <= 0:
                        v, w, kind = d1 / (d1 - d3), 0.0, 5
                    elif vb <= 0 and d2 >= 0 and d6 <= 0:
                        v, w, kind = 0.0, d2 / (d2 - d6), 4
                    elif va <= 0 and d4 - d3 >= 0 and d5 - d6 >= 0:
                        w = (d4 - d3) / ((d4 - d3) + (d5 - d6))
                        v, kind = 1 - w, 3
                    else:
                        v, w = vb / (va + vb + vc), vc / (va + vb + vc)
                    off[0] = px - v * ab[0] - w * ac[0]
                    off[1] = py - v * ab[1] - w * ac[1]
                    off[2] = pz - v * ab[2] - w * ac[2]
                    near = off[0] ** 2 + off[1] ** 2 + off[2] ** 2
                    if near < squared[i, j, m] * (1 - 1e-9):
                        squared[i, j, m] = near
                        if kind < 3:
                            normal = at_corners[triangles[f, kind]]
                        elif kind < 6:
                            normal = at_sides[f, kind - 3]
                        else:
                            normal = faces[f]
                        sign[i, j, m] = 1.0 if (off * normal).sum() >= 0 else -1.0
