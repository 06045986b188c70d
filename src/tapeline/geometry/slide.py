"""How far one outline can be pushed along until it meets another, exactly: corner against side, both ways round."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.point import Point

__all__ = ["Solid", "push_left"]


class Solid:
    """An outline made ready to be pushed: corners and sides as arrays."""

    __slots__ = ("box", "corners", "ends")

    corners: NDArray[np.float64]
    ends: NDArray[np.float64]
    box: tuple[float, float, float, float]

    def __init__(self, outline: Sequence[Point]) -> None:
        self.corners = np.array([(p.x, p.y) for p in outline], dtype=np.float64)
        self.ends = np.roll(self.corners, -1, axis=0)
        low, high = self.corners.min(axis=0), self.corners.max(axis=0)
        self.box = (float(low[0]), float(low[1]), float(high[0]), float(high[1]))

    def shifted(self, x: float, y: float) -> Solid:
        """The same, elsewhere."""
        made = Solid.__new__(Solid)
        by = np.array((x, y))
        made.corners, made.ends = self.corners + by, self.ends + by
        a, b, c, d = self.box
        made.box = (a + x, b + y, c + x, d + y)
        return made


def push_left(moving: Solid, still: Solid) -> float:
    """How far an outline can be pushed towards -x until it touches another, mm; infinite when it passes.

    The two must not overlap to begin with. Sides that only graze each other do not stop it.

    >>> square = [Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]
    >>> push_left(Solid(square).shifted(50, 3), Solid(square))
    40.0
    >>> push_left(Solid(square).shifted(50, 10), Solid(square))
    inf
    """
    if moving.box[1] >= still.box[3] or moving.box[3] <= still.box[1] or moving.box[2] <= still.box[0]:
        return math.inf
    # A corner of the moving one runs left into a side of the still one, or a side runs over a corner of the still one.
    # Corners at the very end of the common height only graze; heights a hair inside stand for them.
    low = max(moving.box[1], still.box[1])
    high = min(moving.box[3], still.box[3])
    hair = min(1e-7, (high - low) / 4)
    heights = np.concatenate((moving.corners[:, 1], still.corners[:, 1]))
    heights = np.unique(np.clip(heights[(heights >= low) & (heights <= high)], low + hair, high - hair))
    # Just below and just above a corner the nearest sides may differ: a level side ends there.
    levels = np.unique(np.clip(np.concatenate((heights - hair, heights + hair)), low + hair / 2, high - hair / 2))
    gap = _gaps(_crossings(moving, levels), _crossings(still, levels))
    return max(gap, 0.0) if math.isfinite(gap) else math.inf


def _crossings(solid: Solid, levels: NDArray[np.float64]) -> NDArray[np.float64]:
    """Where each level crosses each side: one row a level, NaN where it does not."""
    y0, y1 = solid.corners[:, 1], solid.ends[:, 1]
    x0, x1 = solid.corners[:, 0], solid.ends[:, 0]
    at = levels[:, None]
    crossed = (y0 <= at) != (y1 <= at)
    rise = np.where(y1 == y0, 1.0, y1 - y0)
    x = x0 + (at - y0) * ((x1 - x0) / rise)
    # A level crosses few sides of the many: sorted, the others stand at the end and are cut off.
    most = int(crossed.sum(axis=1).max(initial=0))
    return np.sort(np.where(crossed, x, np.nan), axis=1)[:, :most]


def _gaps(moving: NDArray[np.float64], still: NDArray[np.float64]) -> float:
    """The least way, at any level, from a crossing of the moving one to the next of the still one on its left."""
    way = moving[:, :, None] - still[:, None, :]
    # A crossing that lies to the right has been passed already: outlines that touch are a hair apart, or over.
    way = np.where(way > -1e-6, way, np.inf)
    return float(np.min(way, initial=np.inf))
