"""Rectangles in which nothing lies."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.point import Point

__all__ = ["empty_boxes"]

CELL_MM = 10.0
"""Side of a cell of the grid on which they are looked for."""
MOST_CELLS = 100_000
"""A longer cloth has larger cells."""

Box = tuple[float, float, float, float]


def empty_boxes(
    outlines: Sequence[Sequence[Point]], length: float, height: float, least: float, most: int
) -> list[Box]:
    """The largest boxes of a rectangle that lie clear of some outlines, the largest first, none over another.

    Args:
        outlines: Closed.
        length: Of the rectangle, from x = 0.
        height: From y = 0.
        least: Both sides of a box are at least so long, mm.
        most: How many.

    Returns:
        Least x, least y, greatest x, greatest y of each.

    >>> square = [Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)]
    >>> empty_boxes([square], 300, 100, 50, 2)
    [(100.0, 0.0, 300.0, 100.0)]
    """
    cell = max(CELL_MM, math.sqrt(length * height / MOST_CELLS))
    free = _free(outlines, int(length // cell), int(height // cell), cell)
    found: list[Box] = []
    while len(found) < most:
        box = _largest(free, math.ceil(least / cell - 1e-9))
        if box is None:
            break
        left, low, right, high = box
        free[left:right, low:high] = False
        found.append((left * cell, low * cell, right * cell, high * cell))
    return found


def _free(outlines: Sequence[Sequence[Point]], columns: int, rows: int, cell: float) -> NDArray[np.bool_]:
    """Which cells touch no outline's inside."""
    import shapely

    free = np.ones((columns, rows), dtype=bool)
    for outline in outlines:
        shape = shapely.Polygon([(p.x, p.y) for p in outline]).buffer(-1e-6)
        box = [int(v // cell) for v in shape.bounds]
        xs, ys = np.meshgrid(
            np.arange(max(box[0], 0), min(box[2] + 1, columns)),
            np.arange(max(box[1], 0), min(box[3] + 1, rows)),
            indexing="ij",
        )
        shapely.prepare(shape)
        cells = shapely.box(xs * cell, ys * cell, (xs + 1) * cell, (ys + 1) * cell)
        free[xs, ys] &= ~shapely.intersects(shape, cells)
    return free


def _largest(free: NDArray[np.bool_], least: int) -> tuple[int, int, int, int] | None:
    """The largest box of free cells: column by column, with the heaps of free cells to the left of it."""
    columns, rows = free.shape
    run = np.zeros(rows, dtype=int)
    best, most = None, 0
    for column in range(columns):
        run = np.where(free[column], run + 1, 0)
        stack: list[tuple[int, int]] = []
        for row, depth in enumerate([*run.tolist(), 0]):
            start = row
            while stack and stack[-1][1] >= depth:
                start, deep = stack.pop()
                if deep >= least and row - start >= least and deep * (row - start) > most:
                    most = deep * (row - start)
                    best = (column - deep + 1, start, column + 1, row)
            stack.append((start, depth))
    return best
