"""Where shapes lie best on a grid of sheets: a beam search over orders, quarter turns and places.

Works on silhouettes with y down; `arrange` translates. All ties are broken by position, so that the same shapes always
come to lie the same way.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from tapeline.geometry.silhouette import Silhouette, clear_spans

__all__ = ["Grid", "Laid", "Turned", "search"]

KEPT = 3
"""Half-laid arrangements kept of each set of shapes. Twice as many saved no sheet on 18 tees tried, short to long."""
MOST_KEPT = 100
"""Of all sets together, over the number of shapes: many shapes take no longer than they must."""
BRANCH = 2
"""Places kept for each shape and turn."""
STRIDE = 8
"""Rows between the tops that are tried, besides those flush with a sheet or with what is laid."""
SLACK_MM = 1e-6
"""Rounding: far below any line."""


_Clear = Callable[[Silhouette, Silhouette], tuple[np.ndarray, np.ndarray]]
_Reach = Callable[["Turned", int], tuple[np.ndarray, np.ndarray]]


@dataclass(frozen=True, slots=True)
class Grid:
    """The sheets: how many columns and rows there may be, and how far each shows."""

    field_mm: float
    """Width that a sheet shows."""
    step_mm: float
    """From the left of one sheet to the left of the next."""
    rows_shown: int
    """Height that a sheet shows, in silhouette rows."""
    rows_step: int
    """From the top of one sheet to the top of the next, in silhouette rows."""
    columns: int
    """Most columns."""
    deep: int
    """Most rows of sheets."""

    @property
    def single(self) -> bool:
        """Whether there is one sheet only, as long as it has to be: a roll."""
        return self.columns == self.deep == 1


@dataclass(frozen=True, eq=False)
class Turned:
    """A shape in one of its quarter turns."""

    shape: int
    turn: int
    body: Silhouette
    """The shape itself."""
    space: Silhouette
    """With the gap round it."""
    above: int
    """Rows by which the space begins above the body."""
    area: float


@dataclass(frozen=True, slots=True)
class _Ways:
    """What the search knows: the sheets, where two shapes are clear of each other, and how far a shape reaches."""

    grid: Grid
    clear: _Clear
    bands: _Reach


@dataclass(frozen=True, slots=True)
class Laid:
    """A turned shape in its place: left in mm, top in rows."""

    turned: Turned
    x: float
    y: int


@dataclass(frozen=True, eq=False)
class _State:
    laid: tuple[Laid, ...]
    used: np.ndarray
    """Sheets that carry ink: rows by columns."""
    right: float
    bottom: int

    @property
    def sheets(self) -> int:
        return int(self.used.sum())


def search(choices: Sequence[Sequence[Turned]], grid: Grid, fixed: Sequence[Laid] = ()) -> tuple[Laid, ...]:
    """The places found for all shapes (each with its turns); empty when one of them does not fit the grid at all.

    Fewest sheets first; then a small rectangle round all of it.
    """
    ways = _Ways(grid, cache(clear_spans), cache(lambda turned, phase: _bands(turned, phase, grid)))
    start = _State(tuple(fixed), np.zeros((grid.deep, grid.columns), dtype=bool), 0.0, 0)
    for laid in fixed:
        start = _State(start.laid, _use(start.used, laid, grid), *_reach(start, laid))
    beam = [start]
    for _ in range(len(choices)):
        found: dict[tuple[frozenset[int], bytes], tuple[tuple[float, ...], _State]] = {}
        for state in beam:
            done = {laid.turned.shape for laid in state.laid}
            for turns in choices:
                if turns[0].shape in done:
                    continue
                # Turning the whole by half a turn changes nothing, so the first shape needs half of its turns.
                for turned in turns if state.laid else turns[:2]:
                    for laid in _places(state, turned, ways):
                        after = _State((*state.laid, laid), _use(state.used, laid, grid), *_reach(state, laid))
                        name = frozenset(i.turned.shape for i in after.laid), after.used.tobytes()
                        item = _rank(after, grid), after
                        found[name] = min(found.get(name, item), item, key=lambda item: item[0])
        beam = []
        kept: Counter[frozenset[int]] = Counter()
        for (shapes, _), (_, state) in sorted(found.items(), key=lambda item: item[1][0]):
            if kept[shapes] < KEPT and len(beam) * len(choices) < MOST_KEPT:
                kept[shapes] += 1
                beam.append(state)
    return beam[0].laid if beam else ()


def _rank(state: _State, grid: Grid) -> tuple[float, ...]:
    """Less is better: sheets (or the length of a roll), then the rectangle round all of it, then position."""
    pitch = state.laid[0].turned.body.pitch_mm
    tall = state.bottom * pitch
    place = (v for i in state.laid for v in (i.turned.shape, i.turned.turn, i.x, i.y))
    first = tall if grid.single else state.sheets
    return (first, round(state.right + tall, 3), tall, *place)


def _reach(state: _State, laid: Laid) -> tuple[float, int]:
    return max(state.right, laid.x + laid.turned.body.width), max(state.bottom, laid.y + laid.turned.body.rows)


def _bands(turned: Turned, phase: int, grid: Grid) -> tuple[np.ndarray, np.ndarray]:
    """Farthest left and right within each row of sheets, for a top that lies some rows below a sheet's top."""
    shared = grid.rows_shown - grid.rows_step
    first = grid.rows_step + shared - phase
    cuts = [0, *range(first, turned.body.rows, grid.rows_step)] if first < turned.body.rows else [0]
    return np.minimum.reduceat(turned.body.left, cuts), np.maximum.reduceat(turned.body.right, cuts)


def _columns(left: np.ndarray, right: np.ndarray, grid: Grid) -> tuple[np.ndarray, np.ndarray]:
    """First and last column that something from left to right needs."""
    first = np.floor((left + SLACK_MM) / grid.step_mm).astype(int).clip(0)
    last = np.ceil((right - grid.field_mm - SLACK_MM) / grid.step_mm).astype(int)
    return first, np.maximum(first, last)


def _use(used: np.ndarray, laid: Laid, grid: Grid) -> np.ndarray:
    after = used.copy()
    row, phase = divmod(laid.y, grid.rows_step)
    lefts, rights = _bands(laid.turned, phase, grid)
    firsts, lasts = _columns(laid.x + lefts, laid.x + rights, grid)
    for band, (first, last) in enumerate(zip(firsts, lasts, strict=True)):
        after[row + band, first : last + 1] = True
    return after


def _places(state: _State, turned: Turned, ways: _Ways) -> list[Laid]:
    """The best few places for one more shape: flush with a sheet, or touching what is laid."""
    grid = ways.grid
    body = turned.body
    deepest = grid.rows_step * (grid.deep - 1) + grid.rows_shown - body.rows
    widest = grid.step_mm * (grid.columns - 1) + grid.field_mm
    if deepest < 0 or body.width > widest + SLACK_MM:
        return []
    ys = _tops(state, turned, grid, min(deepest, state.bottom + grid.rows_step))
    spans = [_span(laid, turned, ys, ways.clear) for laid in state.laid]
    sheets = np.arange(min(grid.columns, int(state.right / grid.step_mm) + 2)) * grid.step_mm
    flush = np.concatenate([sheets, sheets + grid.field_mm - body.width])
    xs = np.hstack([np.broadcast_to(flush, (len(ys), len(flush)))] + [np.column_stack(span) for span in spans])
    good = (xs >= -SLACK_MM) & (xs + body.width <= widest + SLACK_MM)
    for low, high in spans:
        good &= (xs <= low[:, None] + SLACK_MM) | (xs >= high[:, None] - SLACK_MM)
    which, column = np.nonzero(good)
    x, y = np.maximum(xs[which, column], 0.0), ys[which]
    fresh = np.zeros(len(x)) if grid.single else _fresh_sheets(state.used, turned, x, y, ways)
    right = np.maximum(state.right, x + body.width)
    bottom = np.maximum(state.bottom, y + body.rows) * body.pitch_mm
    best = np.lexsort((x, y, np.round(right + bottom, 3), bottom if grid.single else fresh))
    kept: dict[tuple[int, int], Laid] = {}
    for i in best[: 20 * BRANCH]:
        kept.setdefault((int(x[i] // grid.step_mm), int(y[i] // grid.rows_step)), Laid(turned, float(x[i]), int(y[i])))
        if len(kept) == BRANCH:
            break
    return list(kept.values())


def _tops(state: _State, turned: Turned, grid: Grid, lowest: int) -> np.ndarray:
    """The tops to try."""
    rows, sheets = turned.body.rows, np.arange(grid.deep) * grid.rows_step
    above = [laid.y - laid.turned.above - rows for laid in state.laid]
    below = [laid.y - laid.turned.above + laid.turned.space.rows for laid in state.laid]
    tops = np.concatenate([np.arange(0, lowest + 1, STRIDE), sheets, sheets + grid.rows_shown - rows, above, below])
    tops = np.unique(tops.astype(int))
    return tops[(tops >= 0) & (tops <= lowest)]


def _span(laid: Laid, turned: Turned, ys: np.ndarray, clear: _Clear) -> tuple[np.ndarray, np.ndarray]:
    """For each top, the lefts between which the shape would touch what is laid."""
    lows, highs = clear(laid.turned.space, turned.body)
    shift = ys - (laid.y - laid.turned.above) + turned.body.rows - 1
    inside = (shift >= 0) & (shift < len(lows))
    low, high = np.full(len(ys), np.inf), np.full(len(ys), -np.inf)
    low[inside], high[inside] = lows[shift[inside]] + laid.x, highs[shift[inside]] + laid.x
    return low, high


def _fresh_sheets(used: np.ndarray, turned: Turned, x: np.ndarray, y: np.ndarray, ways: _Ways) -> np.ndarray:
    """How many sheets more each place needs."""
    grid, bands = ways.grid, ways.bands
    free = np.zeros((used.shape[0], used.shape[1] + 1), dtype=int)
    free[:, 1:] = np.cumsum(~used, axis=1)
    tops, which = np.unique(y, return_inverse=True)
    reaches = [bands(turned, int(top) % grid.rows_step) for top in tops]
    most = max(len(lefts) for lefts, _ in reaches)
    lefts, rights = np.full((len(tops), most), np.inf), np.full((len(tops), most), -np.inf)
    for index, (left, right) in enumerate(reaches):
        lefts[index, : len(left)], rights[index, : len(right)] = left, right
    fresh = np.zeros(len(x), dtype=int)
    for band in range(most):
        there = np.isfinite(lefts[which, band])
        mine = which[there]
        first, last = _columns(x[there] + lefts[mine, band], x[there] + rights[mine, band], grid)
        row = y[there] // grid.rows_step + band
        fresh[there] += free[row, last + 1] - free[row, first]
    return fresh
