"""A second opinion on drawn lines: lengths, angles and bends from control points, by numpy alone."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry import Path

__all__ = ["bends", "cubics", "dense", "ends", "length", "outline", "turnings", "widths_at"]

Array = NDArray[np.float64]

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_NODES, _WEIGHTS = (_NODES + 1) / 2, _WEIGHTS / 2


def cubics(path: Path) -> Array:
    """Control points of all segments, as cubics: segments x 4 x 2. A straight one has its handles on thirds."""
    rows = []
    for segment in path.segments:
        points = [(p.x, p.y) for p in segment.control_points]
        if len(points) == 2:
            (x0, y0), (x1, y1) = points
            points = [(x0 + (x1 - x0) * k / 3, y0 + (y1 - y0) * k / 3) for k in range(4)]
        rows.append(points)
    return np.array(rows, float)


@lru_cache
def _powers(samples: int) -> tuple[Array, Array, Array]:
    return _basis(np.linspace(0, 1, samples))


def _basis(t: Array) -> tuple[Array, Array, Array]:
    """Weights of control points for places, first and second derivatives at parameters."""
    u = 1 - t
    place = np.stack([u**3, 3 * u * u * t, 3 * u * t * t, t**3])
    first = np.stack([-3 * u * u, 3 * u * u - 6 * u * t, 6 * u * t - 3 * t * t, 3 * t * t])
    second = np.stack([6 * u, 6 * t - 12 * u, 6 * u - 12 * t, 6 * t])
    return place, first, second


def length(path: Path) -> float:
    """Arc length by 24-point Gauss quadrature on halves of every segment; a hundredth of a micrometre for our lines."""
    points = cubics(path)
    total = 0.0
    for low, high in ((0.0, 0.5), (0.5, 1.0)):
        _, first, _ = _basis(low + (high - low) * _NODES)
        velocity = np.einsum("kt,skd->std", first, points)
        total += float((np.hypot(velocity[..., 0], velocity[..., 1]) @ _WEIGHTS).sum()) * (high - low)
    return total


def dense(path: Path, samples: int = 65) -> Array:
    """Places along a path, at even parameters of every segment."""
    place, _, _ = _powers(samples)
    points = np.einsum("kt,skd->std", place, cubics(path))
    return np.vstack([points[:, :-1].reshape(-1, 2), points[-1, -1:]])


def outline(path: Path, samples: int = 33) -> Array:
    """The same, but straight segments by their ends alone, so that no noise lies between places in a row."""
    parts = [dense(Path((s,)), 2 if len(s.control_points) == 2 else samples)[:-1] for s in path.segments]
    return np.vstack([*parts, [(path.end.x, path.end.y)]])


def bends(path: Path, samples: int = 33) -> Array:
    """Curvature in 1/mm along a path, left positive, ends of every segment included: segments x samples."""
    _, first, second = _powers(samples)
    points = cubics(path)
    v, a = np.einsum("kt,skd->std", first, points), np.einsum("kt,skd->std", second, points)
    bend: Array = (v[..., 0] * a[..., 1] - v[..., 1] * a[..., 0]) / np.hypot(v[..., 0], v[..., 1]) ** 3
    return bend


def turnings(path: Path, samples: int = 129) -> tuple[float, float]:
    """By how many radians in all a path turns left, and right."""
    directions = np.diff(dense(path, samples), axis=0)
    heading = np.unwrap(np.arctan2(directions[:, 1], directions[:, 0]))
    turns = np.diff(heading)
    return float(turns[turns > 0].sum()), float(-turns[turns < 0].sum())


def ends(path: Path) -> tuple[Array, Array]:
    """Directions in which a path sets out and comes in, one millimetre long, from its handles."""
    points = cubics(path)
    first = next(points[0, k] - points[0, 0] for k in (1, 2, 3) if np.any(points[0, k] != points[0, 0]))
    last = next(points[-1, 3] - points[-1, k] for k in (2, 1, 0) if np.any(points[-1, k] != points[-1, 3]))
    return first / np.hypot(*first), last / np.hypot(*last)


def widths_at(path: Path, level: float) -> list[float]:
    """Where a path crosses a level, x of every crossing: by cubic equations, solved without our geometry."""
    found: list[float] = []
    for p in cubics(path):
        y = p[:, 1] - level
        roots = np.roots([y[3] - 3 * y[2] + 3 * y[1] - y[0], 3 * y[2] - 6 * y[1] + 3 * y[0], 3 * (y[1] - y[0]), y[0]])
        real = roots[np.abs(roots.imag) < 1e-7].real
        for t in np.clip(real[(real > -1e-9) & (real < 1 + 1e-9)], 0, 1):
            place, _, _ = _basis(np.array([t]))
            found.append(float((place.T @ p)[0, 0]))
        found += [float(q[0]) for q in (p[0], p[3]) if abs(q[1] - level) < 1e-9]
    return found
