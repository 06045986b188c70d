"""Finds a place for every name in a picture: near its point, over no other name, and clear of lines where it can."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from tapeline.geometry import Path, Point
from tapeline.sheets.hand_sheet_marks import Label, WidthOf, Words

__all__ = ["NameTable"]

REACHES_MM = (1.2, 2.6, 5.0, 8.0, 12.0, 17.0, 23.0, 30.0)
"""How far from its point a name may lie: the nearest that is free."""
TURNS = 16
CLEAR_MM = 0.4
NOT_HERE = 1000.0
"""What it costs to lie over another name: more than anything else together."""
NEVER = 10 * NOT_HERE
"""What it costs to leave the picture."""


@dataclass(slots=True)
class NameTable:
    """The names placed so far, and what they have to keep clear of."""

    width: float
    height: float
    low: float
    """No name lies lower: the scale bar is there."""
    width_of: WidthOf
    strong: np.ndarray
    """Samples of the lines that are new."""
    thin: np.ndarray
    dots: np.ndarray
    labels: list[Label] = field(default_factory=list)
    leads: list[Path] = field(default_factory=list)

    def place(
        self, texts: Sequence[str], anchors: Sequence[Point], size_mm: float, *, bold: bool, grey: float = 0.0
    ) -> None:
        """Put down the first of some texts that finds a free place (the last one in any case), near one of the anchors.

        Where every place is taken the last text goes where it does the least harm.
        """
        for text in texts:
            width = self.width_of(text, size_mm, bold=bold)
            cost, spot = self._best(width, size_mm, anchors)
            if cost < NOT_HERE or text is texts[-1]:
                x, y, anchor, reach = spot
                words = Words(text, x, y + 0.25 * size_mm, size_mm, bold, grey)
                lead = _lead(anchor, (x, y, x + width, y + 1.05 * size_mm)) if reach > REACHES_MM[1] else None
                self.labels.append(Label(words, width, lead))
                if lead is not None:
                    self.leads.append(lead)
                return

    def _best(
        self, width: float, size_mm: float, anchors: Sequence[Point]
    ) -> tuple[float, tuple[float, float, Point, float]]:
        size = np.array([width, 1.05 * size_mm])
        best, found = math.inf, (0.0, 0.0, anchors[0], 0.0)
        places = np.array([(p.x, p.y) for p in anchors]).repeat(TURNS, axis=0)
        turns = np.tile(np.arange(TURNS), len(anchors))
        ways = np.stack([np.cos(math.tau * turns / TURNS), np.sin(math.tau * turns / TURNS)], axis=1)
        for reach in REACHES_MM:
            if best < 0.6 * reach:
                break
            corners = places + reach * ways - size * (1 - ways) / 2
            boxes = np.hstack([corners, corners + size])
            costs = 0.6 * reach + 0.02 * turns + self._harm(boxes, places, led=reach > REACHES_MM[1])
            n = int(costs.argmin())
            if costs[n] < best:
                best = float(costs[n])
                found = (float(corners[n, 0]), float(corners[n, 1]), anchors[n // TURNS], reach)
        return best, found

    def _harm(self, boxes: np.ndarray, anchors: np.ndarray, *, led: bool) -> np.ndarray:
        """What it would cost to put a name into each of some boxes."""
        left, low, right, high = boxes.T
        harm = 4.0 * _inside(self.strong, boxes) + 1.5 * _inside(self.thin, boxes) + 30.0 * _inside(self.dots, boxes)
        harm += NEVER * ((left < 0) | (right > self.width) | (low < self.low) | (high > self.height))
        ends = np.stack([anchors[:, 0].clip(left, right), anchors[:, 1].clip(low, high)], axis=1)
        along = (anchors[:, None] + (ends - anchors)[:, None] * np.linspace(0, 1, 12)[:, None]) if led else None
        for label in self.labels:
            a, b, c, d = label.corners
            over = (left < c + CLEAR_MM) & (a < right + CLEAR_MM) & (low < d + CLEAR_MM) & (b < high + CLEAR_MM)
            harm += NOT_HERE * over
            if along is not None:
                x, y = along[..., 0], along[..., 1]
                harm += NOT_HERE / 2 * ((x > a) & (x < c) & (y > b) & (y < d)).any(axis=1)
        for lead in self.leads:
            harm += NOT_HERE / 2 * (_inside(_samples(lead), boxes) > 0)
        return harm


def _lead(anchor: Point, box: tuple[float, float, float, float]) -> Path:
    """From a point to the nearest place of a box."""
    left, low, right, high = box
    end = Point(min(max(anchor.x, left - 0.3), right + 0.3), min(max(anchor.y, low), high))
    return Path.through(anchor, end)


def _samples(line: Path) -> np.ndarray:
    ways = np.linspace(0, 1, 12)[:, None]
    return np.array([line.start.x, line.start.y]) * (1 - ways) + np.array([line.end.x, line.end.y]) * ways


def _inside(points: np.ndarray, boxes: np.ndarray) -> np.ndarray:
    """How many of some points lie in each of some boxes."""
    left, low, right, high = boxes.T[:, :, None]
    x, y = points[:, 0], points[:, 1]
    return np.asarray(((x > left) & (x < right) & (y > low) & (y < high)).sum(axis=1))
