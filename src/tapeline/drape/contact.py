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
    """Distance and its slope, from the 27 grid places about a place.

    Quadratic B-splines: their slope does not jump from cell to cell, as it does between eight places, where nodes would
    get stuck. What they smooth away is under a tenth of a millimetre on an arm.
    """
    fx, fy, fz = (px - low[0]) / step, (py - low[1]) / step, (pz - low[2]) / step
    out[0], out[1], out[2], out[3] = 1e3, 0.0, 0.0, 0.0
    if fx < 1 or fy < 1 or fz < 1:
        return
    if fx >= grid.shape[0] - 2 or fy >= grid.shape[1] - 2 or fz >= grid.shape[2] - 2:
        return
    i, j, k = int(fx + 0.5), int(fy + 0.5), int(fz + 0.5)
    u, v, w = fx - i, fy - j, fz - k
    out[0] = 0.0
    for a in range(-1, 2):
        if a < 0:
            wx, dx = 0.5 * (0.5 - u) ** 2, u - 0.5
        elif a == 0:
            wx, dx = 0.75 - u * u, -2 * u
        else:
            wx, dx = 0.5 * (0.5 + u) ** 2, u + 0.5
        for b in range(-1, 2):
            if b < 0:
                wy, dy = 0.5 * (0.5 - v) ** 2, v - 0.5
            elif b == 0:
                wy, dy = 0.75 - v * v, -2 * v
            else:
                wy, dy = 0.5 * (0.5 + v) ** 2, v + 0.5
            g0, g1, g2 = grid[i + a, j + b, k - 1], grid[i + a, j + b, k], grid[i + a, j + b, k + 1]
            line = 0.5 * (0.5 - w) ** 2 * g0 + (0.75 - w * w) * g1 + 0.5 * (0.5 + w) ** 2 * g2
            out[0] += wx * wy * line
            out[1] += dx * wy * line / step
            out[2] += wx * dy * line / step
            out[3] += wx * wy * ((w - 0.5) * g0 - 2 * w * g1 + (w + 0.5) * g2) / step


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
    toward: Array,
) -> float:
    """The energy in mN mm of cloth pressed on the form and rubbing on it.

    Adds to the gradients, and fills each node's block, its distance and the way out of the form.

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
        toward[i, 0], toward[i, 1], toward[i, 2] = at[1], at[2], at[3]
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
