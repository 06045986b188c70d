"""The name of each size beside its cut line, in a row across the nest where the sizes lie farthest apart."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from tapeline.export.labels import Label, text_width
from tapeline.geometry import Path, Point, Vector
from tapeline.geometry.silhouette import even_points

__all__ = ["size_tags"]

SIZE_MM = 2.8
SMALLEST_MM = 1.3
"""Smaller is not read at the table."""
CAPITAL = 0.72
"""Height of capitals and figures in sizes of letters."""
CLEAR_MM = 0.5
"""Between a size's line and its name."""
FAR_MM = 1.0
"""Between the name and the next size's line: twice as far, so that nobody asks whose name it is."""
SAMPLE_MM = 6.0
"""From place to place that is tried along the middle size's line."""
FROM_MARK_MM = 9.0
"""From a notch, or whatever else crosses the lines, to a row of tags."""
ROWS = 2
APART_SHARE = 0.25
"""The second row lies at least this share of the outline from the first."""
MOST_TURN = 0.2
"""Radians by which a line may turn along a tag: it stands beside a nearly straight stretch."""
FARTHEST_MM = 120.0
"""A size that lies farther from the middle one than this has no tag in its row."""


@dataclass(frozen=True, slots=True)
class _Row:
    """A place on the middle size's line, and how far the others lie from it there."""

    at: float
    middle: Point
    outward: Vector
    depths: Mapping[int, float]
    size_mm: float


def size_tags(
    outlines: Mapping[int, Path], names: Sequence[str], marks: Sequence[Point] = ()
) -> dict[int, tuple[Label, ...]]:
    """Up to two tags for each size, on the inner side of its line; none where the sizes lie too close.

    Args:
        outlines: Cut lines of one piece by the number of the size, lying on each other.
        names: By number.
        marks: What crosses the lines; no row stands there.
    """
    samples = {number: even_points(path.flattened(0.1), 1.0) for number, path in outlines.items()}
    middle = list(outlines)[len(outlines) // 2]
    path = outlines[middle]
    longest = max(text_width(names[number], SIZE_MM, bold=True) for number in outlines)
    tried = [_row(path, step * SAMPLE_MM, middle, samples, longest / 2) for step in range(int(path.length / SAMPLE_MM))]
    crossed = np.array([(p.x, p.y) for p in marks]).reshape(-1, 2)
    rows = [row for row in tried if row is not None and _clear(row, crossed)]
    # Where room is the same, as along a side, a row stands in the middle of it: halfway between those that tie.
    found: dict[int, list[Label]] = {number: [] for number in outlines}
    chosen: list[_Row] = []
    while rows and len(chosen) < ROWS:
        most = max((len(row.depths), round(row.size_mm, 1)) for row in rows)
        best = [row for row in rows if (len(row.depths), round(row.size_mm, 1)) == most]
        row = best[len(best) // 2]
        chosen.append(row)
        for number in row.depths:
            found[number].append(_tag(outlines[number], row, number, names[number]))
        rows = [other for other in rows if _apart(other.at, row.at, path.length) >= APART_SHARE * path.length]
    return {number: tuple(tags) for number, tags in found.items()}


def _row(path: Path, at: float, middle: int, samples: Mapping[int, np.ndarray], half: float) -> _Row | None:
    """A row at a place, or None where no letters fit."""
    way = path.direction_at(at)
    for end in (at - half, at + half):
        if abs(way.turn_to(path.direction_at(end % path.length))) > MOST_TURN:
            return None
    place, outward = path.at(at), way.left
    depths = {middle: 0.0}
    for number, points in samples.items():
        off = points - (place.x, place.y)
        deep, along = off @ (outward.x, outward.y), np.abs(off @ (way.x, way.y))
        near = (along < half) & (np.abs(deep) < FARTHEST_MM)
        if number != middle and near.any():
            # The size is as near as its nearest part along the tag.
            depths[number] = float(deep[near][np.abs(deep[near]).argmin()])
    ordered = sorted(depths.values())
    room = min((high - low for low, high in pairwise(ordered)), default=FARTHEST_MM)
    size = min(SIZE_MM, (room - CLEAR_MM - FAR_MM) / CAPITAL)
    return _Row(at, place, outward, depths, size) if size >= SMALLEST_MM else None


def _clear(row: _Row, crossed: np.ndarray) -> bool:
    places = [row.middle + row.outward * depth for depth in row.depths.values()]
    return all(bool((np.hypot(*(crossed - (p.x, p.y)).T) > FROM_MARK_MM).all()) for p in places)


def _apart(one: float, other: float, whole: float) -> float:
    away = abs(one - other)
    return min(away, whole - away)


def _tag(path: Path, row: _Row, number: int, name: str) -> Label:
    """The name along its size's line, on the inner side, never upside down."""
    at = path.length_to(row.middle + row.outward * row.depths[number])
    middle, way = path.at(at), path.direction_at(at)
    inward, tall = way.right, CAPITAL * row.size_mm
    if way.x < -1e-9 or (abs(way.x) <= 1e-9 and way.y < 0):
        base, along = middle + inward * CLEAR_MM, -way
    else:
        base, along = middle + inward * (CLEAR_MM + tall), way
    width = text_width(name, row.size_mm, bold=True)
    return Label(name, base + along * (-width / 2), row.size_mm, math.atan2(along.y, along.x), bold=True)
