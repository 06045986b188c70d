"""A `Silhouette` is an outline seen as rows of equal height: quick to slide against others, never too small."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from tapeline.geometry.point import Point

__all__ = ["Silhouette", "clear_spans", "even_points"]

SAMPLE_MM = 0.5
"""Distance of the samples along an outline; a row may miss the outline's farthest place by no more."""


@dataclass(frozen=True, eq=False)
class Silhouette:
    """Rows from the top down; each from its farthest left to its farthest right, hollows from the side kept.

    Hollows from above and below are filled, so two silhouettes that do not touch belong to outlines that do not.
    """

    left: np.ndarray
    right: np.ndarray
    pitch_mm: float

    @classmethod
    def of(cls, points: np.ndarray, pitch_mm: float) -> Silhouette:
        """Of the closed outline through points (n x 2, mm, y down, all of it right of and below the origin)."""
        rows = np.floor(points[:, 1] / pitch_mm).astype(int).clip(0)
        count = int(rows.max()) + 1
        left, right = np.full(count, np.inf), np.full(count, -np.inf)
        np.minimum.at(left, rows, points[:, 0] - SAMPLE_MM)
        np.maximum.at(right, rows, points[:, 0] + SAMPLE_MM)
        return cls(left, right, pitch_mm)

    @cached_property
    def rows(self) -> int:
        """How many rows high."""
        return len(self.left)

    @cached_property
    def width(self) -> float:
        """From the origin to the farthest right, mm."""
        return float(self.right.max())

    def grown(self, by_mm: float) -> Silhouette:
        """With a margin all round (at corners a little more); its first row lies that many rows higher.

        >>> box = Silhouette(np.zeros(3), np.full(3, 10.0), 4.0)
        >>> box.grown(8.0).rows, box.grown(8.0).width
        (7, 18.0)
        """
        extra = self.extra_rows(by_mm)
        window = 2 * extra + 1
        left = np.pad(self.left, 2 * extra, constant_values=np.inf)
        right = np.pad(self.right, 2 * extra, constant_values=-np.inf)
        return Silhouette(
            sliding_window_view(left, window).min(axis=1) - by_mm,
            sliding_window_view(right, window).max(axis=1) + by_mm,
            self.pitch_mm,
        )

    def extra_rows(self, by_mm: float) -> int:
        """How many rows a margin adds above and below."""
        return int(np.ceil(by_mm / self.pitch_mm))


def clear_spans(still: Silhouette, moving: Silhouette) -> tuple[np.ndarray, np.ndarray]:
    """Where a silhouette may not lie beside another: for each row shift, the x shifts between which they touch.

    The first row shift has the moving one's last row on the other's first; the last, its first on the other's last.

    >>> box = Silhouette(np.zeros(2), np.full(2, 10.0), 4.0)
    >>> [ends.tolist() for ends in clear_spans(box, box)]
    [[-10.0, -10.0, -10.0], [10.0, 10.0, 10.0]]
    """
    a, b = still.rows, moving.rows
    # Row shift d pairs row r of the still one with row r - d of the moving one.
    lefts = np.pad(moving.left, a - 1, constant_values=np.inf)
    rights = np.pad(moving.right, a - 1, constant_values=-np.inf)
    low = (still.left - sliding_window_view(rights, a)).min(axis=1)[::-1]
    high = (still.right - sliding_window_view(lefts, a)).max(axis=1)[::-1]
    assert len(low) == a + b - 1  # noqa: S101 - one for each shift
    return low, high


def even_points(outline: Sequence[Point], spacing: float = SAMPLE_MM) -> np.ndarray:
    """Places along straight lines between points, no farther apart than a spacing in mm.

    >>> even_points([Point(0, 0), Point(1, 0)]).tolist()
    [[0.0, 0.0], [0.5, 0.0], [1.0, 0.0]]
    """
    corners = np.array([(p.x, p.y) for p in outline])
    steps = np.diff(corners, axis=0)
    counts = np.maximum(1, np.ceil(np.hypot(steps[:, 0], steps[:, 1]) / spacing).astype(int))
    index = np.repeat(np.arange(len(counts)), counts)
    share = (np.arange(len(index)) - np.repeat(np.cumsum(counts) - counts, counts)) / counts[index]
    return np.vstack([corners[index] + share[:, None] * steps[index], corners[-1:]])
