"""Views of solids made without a screen: each dot shows what lies nearest to the eye."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapeline.export.solid import Solid

__all__ = ["SIDES", "view"]

Array = NDArray[np.float64]

SIDES = {"front": 0.0, "left": 90.0, "back": 180.0, "right": 270.0}
"""From where the eye looks: degrees round the wearer, from the front towards the wearer's left."""

_PAPER = np.array([255.0, 255.0, 255.0])
_LIGHT = np.array([-0.35, 0.55, 0.76])
"""Where the light comes from: over the looker's left shoulder."""
_FINE = 2
"""Each dot is the mean of so many by so many, so that edges are smooth."""
_LIFT = 12.0
"""A line so little behind the surface, in mm, is drawn: a tape lies on the triangles, not in them."""


def view(
    solids: Sequence[Solid], turn: float, mm_per_dot: float, box: tuple[float, float, float, float]
) -> NDArray[np.uint8]:
    """What is seen from one side, without perspective, so that sizes can be read off.

    Args:
        solids: What is shown.
        turn: From where, in degrees: one of `SIDES`, or between.
        mm_per_dot: The scale.
        box: What part is shown: least and most across, least and most height, in mm.

    Returns:
        (rows, columns, 3).
    """
    left, right, low, high = box
    scale = _FINE / mm_per_dot
    width, height = (max(round(span / mm_per_dot), 1) * _FINE for span in (right - left, high - low))
    depth = np.full((height, width), -np.inf)
    dots = np.tile(_PAPER, (height, width, 1))
    a = np.radians(turn)
    # Rows: across, up, towards the eye.
    eye = np.array([[np.cos(a), 0, -np.sin(a)], [0, 1, 0], [np.sin(a), 0, np.cos(a)]])
    for solid in solids:
        seen = solid.vertices @ eye.T
        lit = 0.55 + 0.5 * np.clip((solid.normals @ eye.T) @ _LIGHT, -0.3, 1)
        colour = np.clip(solid.colours * (lit[:, None] if solid.shaded else 1.0), 0, 255)
        _fill((seen - [left, low, 0]) * [scale, scale, 1], solid.triangles, colour, depth, dots)
    for solid in solids:
        for line in solid.lines:
            _line((line.points @ eye.T - [left, low, 0]) * [scale, scale, 1], line.colour, depth, dots)
    small = dots.reshape(height // _FINE, _FINE, width // _FINE, _FINE, 3).mean(axis=(1, 3))
    return np.asarray(np.round(small[::-1]).astype(np.uint8))


def _fill(seen: Array, triangles: NDArray[np.int64], colour: Array, depth: Array, dots: Array) -> None:
    height, width = depth.shape
    corner = seen[triangles]
    ab, ac = corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]
    area = ab[:, 0] * ac[:, 1] - ab[:, 1] * ac[:, 0]
    low = np.clip(np.ceil(corner[:, :, :2].min(axis=1) - 0.5), 0, [width, height]).astype(int)
    high = np.clip(np.floor(corner[:, :, :2].max(axis=1) - 0.5) + 1, 0, [width, height]).astype(int)
    for k in np.flatnonzero((area > 1e-9) & (high > low).all(axis=1)):
        (x0, y0), (x1, y1) = low[k], high[k]
        across, up = np.meshgrid(np.arange(x0, x1) + 0.5, np.arange(y0, y1) + 0.5)
        p, q = across - corner[k, 0, 0], up - corner[k, 0, 1]
        v = (p * ac[k, 1] - q * ac[k, 0]) / area[k]
        w = (q * ab[k, 0] - p * ab[k, 1]) / area[k]
        u = 1 - v - w
        near = u * corner[k, 0, 2] + v * corner[k, 1, 2] + w * corner[k, 2, 2]
        part = depth[y0:y1, x0:x1]
        shown = (u >= -1e-9) & (v >= -1e-9) & (w >= -1e-9) & (near > part)
        part[shown] = near[shown]
        mixed = np.stack([u, v, w], axis=-1) @ colour[triangles[k]]
        dots[y0:y1, x0:x1][shown] = mixed[shown]


def _line(seen: Array, colour: tuple[int, int, int], depth: Array, dots: Array) -> None:
    height, width = depth.shape
    for a, b in pairwise(seen):
        steps = int(np.hypot(*(b - a)[:2]) * 1.5) + 2
        for x, y, z in a + np.linspace(0, 1, steps)[:, None] * (b - a):
            column, row = int(x), int(y)
            if 1 <= column < width - 1 and 1 <= row < height - 1 and z + _LIFT > depth[row, column]:
                dots[row - 1 : row + 2, column - 1 : column + 2] = colour
