"""How far one outline can be pushed along until it meets another, exactly: corner against side, both ways round."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.point import Point

__all__ = ["Solid", "push_left"]

TOUCH_MM = 1e-6
"""Outlines that touch are a hair apart, or over each other by as much."""


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
    # In the order of their places, the nearest way of a moving crossing is to its neighbour, where that is a still one.
    rows, places, moves = [], [], []
    for solid, slack in ((still, 0.0), (moving, TOUCH_MM)):
        row, place = _crossings(solid, levels)
        rows.append(row)
        places.append(place + slack)
        moves.append(np.full(len(row), slack > 0))
    row, place, move = (np.concatenate(parts) for parts in (rows, places, moves))
    order = np.lexsort((place, row))
    row, place, move = row[order], place[order], move[order]
    met = (row[1:] == row[:-1]) & move[1:] & ~move[:-1]
    way = place[1:][met] - place[:-1][met]
    return max(float(way.min()) - TOUCH_MM, 0.0) if len(way) else math.inf


def _crossings(solid: Solid, levels: NDArray[np.float64]) -> tuple[NDArray[np.intp], NDArray[np.float64]]:
    """Where levels cross sides: which level, and the place along it."""
    y0, y1 = solid.corners[:, 1], solid.ends[:, 1]
    reach = (np.maximum(y0, y1) >= levels[0]) & (np.minimum(y0, y1) <= levels[-1]) & (y0 != y1)
    x0, x1, y0, y1 = solid.corners[reach, 0], solid.ends[reach, 0], y0[reach], y1[reach]
    at = levels[:, None]
    row, side = np.nonzero((y0 <= at) != (y1 <= at))
    return row, x0[side] + (levels[row] - y0[side]) * (x1[side] - x0[side]) / (y1[side] - y0[side])
