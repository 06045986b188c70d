"""How far two outlines of a piece lie apart, and where most."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scripts.goldens.reading import DrawnPiece
from tapeline.geometry import Path, Point

__all__ = ["SEEN_MM", "Apart", "apart"]

SEEN_MM = 0.05
"""Less is rounding: of the texts, in which places stand to a hundredth, and of the chords that are measured."""
STEP_MM = 2.0
"""Between the places that are looked at; between them a line has moved as much as beside them."""
FLAT_MM = 0.02
"""Chords leave a curve by this much."""
Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Apart:
    """The greatest distance from a place of the one outline to the nearest of the other, in mm."""

    mm: float
    at: Point
    """On the one outline."""
    to: Point
    """The nearest place of the other."""

    @property
    def moved(self) -> bool:
        """Whether it can be seen at all."""
        return self.mm > SEEN_MM


def apart(old: DrawnPiece, new: DrawnPiece) -> Apart:
    """Looks from both sides: what was added is as far from the old line as what was taken off is from the new."""
    there, back = _farthest(old.outline, new.outline), _farthest(new.outline, old.outline)
    return there if there.mm >= back.mm else Apart(back.mm, back.to, back.at)


def _farthest(one: Path, other: Path) -> Apart:
    """The place of one outline that is farthest from another."""
    places = _places(one)
    corners = other.sampled(FLAT_MM)
    start, way = corners[:-1], np.diff(corners, axis=0)
    long = (way**2).sum(axis=1)
    start, way, long = start[long > 0], way[long > 0], long[long > 0]
    off = places[:, None, :] - start
    along = np.clip((off * way).sum(axis=2) / long, 0.0, 1.0)
    nearest = start + along[..., None] * way
    distances: Array = np.hypot(*np.moveaxis(places[:, None, :] - nearest, 2, 0))
    closest = distances.argmin(axis=1)
    rows = np.arange(len(places))
    worst = int(distances[rows, closest].argmax())
    at, to = places[worst].tolist(), nearest[worst, closest[worst]].tolist()
    return Apart(float(distances[worst, closest[worst]]), Point(*at), Point(*to))


def _places(path: Path) -> Array:
    """Places along a path, no further apart than a step."""
    corners = path.sampled(FLAT_MM)
    counts = np.maximum(1, np.ceil(np.hypot(*np.diff(corners, axis=0).T) / STEP_MM)).astype(int)
    parts = [
        np.linspace(a, b, count, endpoint=False) for a, b, count in zip(corners, corners[1:], counts, strict=False)
    ]
    return np.concatenate([*parts, corners[-1:]])
