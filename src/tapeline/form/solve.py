"""The first step of fitting: which body of the data, with which changes, comes nearest to the tapes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np

from tapeline.form.modes import Mode, modes
from tapeline.form.shapes import PHENOTYPE, Array, Shapes
from tapeline.form.tape_line import LAID, Stand
from tapeline.form.taut import Taken

__all__ = ["Wanted", "nearest", "read_all"]

ROUNDS = 14
GOOD_ENOUGH = 2e-3
"""A round that makes the whole better by less than this share of it is the last."""

_START = {
    "gender": 0.5,
    "age": 0.72,
    "muscle": 0.5,
    "weight": 0.5,
    "height": 0.5,
    "proportions": 0.5,
    "cupsize": 0.5,
    "firmness": 0.55,
}
_SPREAD = {
    "gender": 0.05,
    "age": 0.03,
    "muscle": 0.2,
    "weight": 0.5,
    "height": 0.5,
    "proportions": 0.15,
    "cupsize": 0.35,
    "firmness": 0.15,
}
_LOW = {"weight": -0.2, "height": -0.3, "cupsize": -0.2}
_HIGH = {"weight": 1.6, "height": 1.3, "cupsize": 1.5}
_LOCAL_SPREAD = 0.3
_LOCAL_RARE = frozenset({"pelvis tone", "stomach pregnant", "hip waist"})
_RARE_SPREAD = 0.12
_MODE_END = 8.0
"""Further than this no change goes: the fit then says that the tapes cannot be met."""
_BESIDE_SPREAD = 0.5
"""How much a band of the trunk differs from the next one."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A tape that the stand should have."""

    value: float
    """mm, or radians."""
    spread: float
    """How near: 1 mm where it was taped, the spread of the estimate where it was not."""
    given: bool


@dataclass(frozen=True, slots=True, eq=False)
class _Space:
    """All that may vary, with what is known of it before a tape is seen."""

    linear: Array
    """(mixtures + 2 local + modes, 3 rows)."""
    modes: tuple[Mode, ...]
    local: int
    low: Array
    high: Array
    spread: Array
    ties: Array
    """Rows of differences that should be small, each over its spread."""


@cache
def _space(shapes: Shapes) -> _Space:
    found = modes(shapes)
    n, m = len(shapes.local_names), len(found)
    linear = np.vstack([shapes.basis, shapes.local, np.array([mode.moves for mode in found])])
    ends = [
        np.r_[[table.get(name, usual) for name in PHENOTYPE], np.full(n, sign), np.full(m, sign * _MODE_END)]
        for table, usual, sign in ((_LOW, 0.0, -1.0), (_HIGH, 1.0, 1.0))
    ]
    local = [_RARE_SPREAD if name in _LOCAL_RARE else _LOCAL_SPREAD for name in shapes.local_names]
    spread = np.r_[[_SPREAD[name] for name in PHENOTYPE], local, [mode.spread for mode in found]]
    names = [mode.name for mode in found]
    ties = np.zeros((sum(bool(mode.beside) for mode in found), 8 + n + m))
    for row, mode in zip(ties, (mode for mode in found if mode.beside), strict=True):
        row[8 + n + names.index(mode.name)] = 1 / _BESIDE_SPREAD
        row[8 + n + names.index(mode.beside)] = -1 / _BESIDE_SPREAD
    return _Space(linear, found, n, ends[0], ends[1], spread, ties)


def read_all(stand: Stand, points: Array, names: Mapping[str, object]) -> dict[str, Taken]:
    """Each tape as it is read off the stand."""
    return {name: LAID[name](stand, points) for name in names}


def nearest(stand: Stand, wanted: Mapping[str, Wanted], start: Mapping[str, float]) -> Array:
    """The half of the stand that comes nearest: bounded Gauss-Newton, with what is usual as a counterweight.

    Args:
        stand: In the pose that is wanted.
        wanted: The tapes, by name.
        start: Properties of the body to begin with, and to stay near.
    """
    shapes, space = stand.shapes, _space(stand.shapes)
    usual = np.zeros(len(space.low))
    usual[:8] = [start.get(name, _START[name]) for name in PHENOTYPE]
    targets = np.array([w.value for w in wanted.values()])
    spreads = np.array([w.spread for w in wanted.values()])

    def half_of(x: Array) -> Array:
        half = shapes.half(x[:8], x[8 : 8 + space.local])
        return np.asarray(half + (x[8 + space.local :] @ space.linear[-len(space.modes) :]).reshape(-1, 3))

    def seen(x: Array) -> tuple[Array, dict[str, Taken], Array, float]:
        half = half_of(x)
        taken = read_all(stand, shapes.whole(half), wanted)
        off = (np.array([t.value for t in taken.values()]) - targets) / spreads
        cost = float(off @ off + (((x - usual) / space.spread) ** 2).sum() + ((space.ties @ x) ** 2).sum())
        return half, taken, off, cost

    x = np.clip(usual, space.low, space.high)
    half, taken, off, cost = seen(x)
    damping = 1e-3
    for _ in range(ROUNDS):
        slopes = _slopes(shapes, space, taken, x) / spreads[:, None]
        rows = np.vstack([slopes, np.diag(1 / space.spread), space.ties])
        wrong = np.concatenate([off, (x - usual) / space.spread, space.ties @ x])
        square, down = rows.T @ rows, -rows.T @ wrong
        for _ in range(6):
            tried = np.clip(x + _step(square, down, damping, x, space), space.low, space.high)
            new = seen(tried)
            if new[3] < cost:
                break
            damping = max(damping * 6, 1e-3)
        else:
            break
        better = cost - new[3]
        x, (half, taken, off, cost) = tried, new
        damping = max(damping / 4, 1e-6)
        if better < GOOD_ENOUGH * max(cost, 1):
            break
    return half


def _step(square: Array, down: Array, damping: float, x: Array, space: _Space) -> Array:
    """A damped step; what stands at an end and would go on beyond it stays."""
    free = np.ones(len(x), bool)
    step = np.zeros(len(x))
    for _ in range(3):
        step[:] = 0
        some = np.flatnonzero(free)
        part = square[np.ix_(some, some)]
        step[some] = np.linalg.solve(part + damping * np.diag(np.diag(part)), down[some])
        stuck = ((x <= space.low) & (step < 0)) | ((x >= space.high) & (step > 0))
        if not (stuck & free).any():
            break
        free &= ~stuck
    return step


def _slopes(shapes: Shapes, space: _Space, taken: Mapping[str, Taken], x: Array) -> Array:
    """By how much each tape grows with each thing that varies."""
    flat = np.array([shapes.folded(*t.gathered()).ravel() for t in taken.values()])
    by_linear = flat @ space.linear.T
    mixtures = len(shapes.basis)
    here = shapes.coefficients(x[:8])
    by_phenotype = np.zeros((8, mixtures))
    for i in range(8):
        moved = x[:8].copy()
        step = 1e-4 if moved[i] + 1e-4 <= space.high[i] else -1e-4
        moved[i] += step
        by_phenotype[i] = (shapes.coefficients(moved) - here) / step
    ways = by_linear[:, mixtures : mixtures + 2 * space.local]
    by_local = np.where(x[8 : 8 + space.local] >= 0, ways[:, 0::2], -ways[:, 1::2])
    return np.hstack([by_linear[:, :mixtures] @ by_phenotype.T, by_local, by_linear[:, mixtures + 2 * space.local :]])
