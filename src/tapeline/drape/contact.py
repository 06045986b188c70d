"""The cloth on the form: it may come no nearer than half its own thickness, and what is pressed on rubs."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from tapeline.drape.compiled import Array, compiled

__all__ = ["HALF_THICKNESS_MM", "PRESSED", "contact", "keep_out", "rubbing"]

HALF_THICKNESS_MM = 0.25
"""How far the middle of the cloth stays off the form: a jersey is about half a millimetre thick (from memory)."""
PRESSED = 10.0
"""Pressure in kPa for each mm that a cloth is pressed flatter than that."""


@compiled
def _distance(grid: NDArray[np.float32], low: Array, step: float, px: float, py: float, pz: float, out: Array) -> None:
    """Distance and its slope, between the eight grid places about a place."""
    fx, fy, fz = (px - low[0]) / step, (py - low[1]) / step, (pz - low[2]) / step
    out[0], out[1], out[2], out[3] = 1e3, 0.0, 0.0, 0.0
    if fx < 0 or fy < 0 or fz < 0:
        return
    if fx >= grid.shape[0] - 1 or fy >= grid.shape[1] - 1 or fz >= grid.shape[2] - 1:
        return
    i, j, k = int(fx), int(fy), int(fz)
    u, v, w = fx - i, fy - j, fz - k
    x00 = grid[i, j, k] * (1 - u) + grid[i + 1, j, k] * u
    x10 = grid[i, j + 1, k] * (1 - u) + grid[i + 1, j + 1, k] * u
    x01 = grid[i, j, k + 1] * (1 - u) + grid[i + 1, j, k + 1] * u
    x11 = grid[i, j + 1, k + 1] * (1 - u) + grid[i + 1, j + 1, k + 1] * u
    y0, y1 = x00 * (1 - v) + x10 * v, x01 * (1 - v) + x11 * v
    out[0] = y0 * (1 - w) + y1 * w
    d00 = grid[i + 1, j, k] - grid[i, j, k]
    d10 = grid[i + 1, j + 1, k] - grid[i, j + 1, k]
    d01 = grid[i + 1, j, k + 1] - grid[i, j, k + 1]
    d11 = grid[i + 1, j + 1, k + 1] - grid[i, j + 1, k + 1]
    out[1] = ((d00 * (1 - v) + d10 * v) * (1 - w) + (d01 * (1 - v) + d11 * v) * w) / step
    out[2] = ((x10 - x00) * (1 - w) + (x11 - x01) * w) / step
    out[3] = (y1 - y0) / step


@compiled
def contact(
    x: Array,
    was: Array,
    grid: NDArray[np.float32],
    low: Array,
    step: float,
    thick: float,
    stiff: Array,
    normal: Array,
    held: Array,
    slip: float,
    gradient: Array,
    blocks: Array,
    near: Array,
) -> float:
    """The energy in mN mm of cloth pressed on the form and rubbing on it; adds to gradients, fills each node's block.

    `stiff` is mN/mm of each node; `held` the most that rubbing can hold it with, mN, and `normal` the way it was
    pressed: both of the step before, so that the energy has a least value. Up to `slip` mm a node only leans.
    """
    energy = 0.0
    at = np.empty(4)
    for i in range(x.shape[0]):
        for a in range(3):
            for b in range(3):
                blocks[i, a, b] = 0.0
        _distance(grid, low, step, x[i, 0], x[i, 1], x[i, 2], at)
        near[i] = at[0]
        deep = thick - at[0]
        if deep > 0:
            energy += 0.5 * stiff[i] * deep * deep
            for a in range(3):
                gradient[i, a] -= stiff[i] * deep * at[1 + a]
                for b in range(3):
                    blocks[i, a, b] += stiff[i] * at[1 + a] * at[1 + b]
        if held[i] > 0:
            off = 0.0
            for a in range(3):
                off += (x[i, a] - was[i, a]) * normal[i, a]
            far = 0.0
            for a in range(3):
                at[1 + a] = x[i, a] - was[i, a] - off * normal[i, a]
                far += at[1 + a] ** 2
            far = math.sqrt(far)
            if far < slip:
                energy += held[i] * (0.5 * far * far / slip + 0.5 * slip)
                steep = held[i] / slip
            else:
                energy += held[i] * far
                steep = held[i] / far
            for a in range(3):
                gradient[i, a] += steep * at[1 + a]
                for b in range(3):
                    blocks[i, a, b] -= steep * normal[i, a] * normal[i, b]
                blocks[i, a, a] += steep
    return energy


@compiled
def rubbing(
    x: Array,
    grid: NDArray[np.float32],
    low: Array,
    step: float,
    thick: float,
    stiff: Array,
    friction: float,
    normal: Array,
    held: Array,
) -> None:
    """How each node is pressed now: the way, and the most that rubbing can hold it with in mN."""
    at = np.empty(4)
    for i in range(x.shape[0]):
        _distance(grid, low, step, x[i, 0], x[i, 1], x[i, 2], at)
        held[i] = 0.0
        length = math.sqrt(at[1] ** 2 + at[2] ** 2 + at[3] ** 2)
        if at[0] < thick and length > 0:
            held[i] = friction * stiff[i] * (thick - at[0])
            for a in range(3):
                normal[i, a] = at[1 + a] / length


@compiled
def keep_out(
    x: Array, was: Array, grid: NDArray[np.float32], low: Array, step: float, thick: float, friction: float
) -> None:
    """Puts what came too near back out, and lets it rub: no further along than `friction` times as far as it went."""
    at = np.empty(4)
    for i in range(x.shape[0]):
        _distance(grid, low, step, x[i, 0], x[i, 1], x[i, 2], at)
        deep = thick - at[0]
        length = math.sqrt(at[1] ** 2 + at[2] ** 2 + at[3] ** 2)
        if deep <= 0 or length == 0:
            continue
        off = 0.0
        for a in range(3):
            at[1 + a] /= length
            x[i, a] += deep * at[1 + a]
            off += (x[i, a] - was[i, a]) * at[1 + a]
        far = 0.0
        for a in range(3):
            far += (x[i, a] - was[i, a] - off * at[1 + a]) ** 2
        back = min(1.0, friction * deep / (math.sqrt(far) + 1e-12))
        for a in range(3):
            x[i, a] -= back * (x[i, a] - was[i, a] - off * at[1 + a])
