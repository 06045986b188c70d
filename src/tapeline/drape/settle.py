"""Sewing and settling by small steps in time: every triangle, hinge and seam is put right a little, one after another.

Position-based dynamics with compliance (M. Macklin, M. Mueller and N. Chentanez, "XPBD: position-based simulation of
compliant constrained dynamics", Motion in Games 2016), one round for each small step. It finds its way out of crumples
quickly, and leaves strains wrong by points; the balance is found afterwards, from where this ends.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from tapeline.drape.band import Distance
from tapeline.drape.compiled import Array, Whole, compiled
from tapeline.drape.contact import HALF_THICKNESS_MM, keep_out
from tapeline.drape.fabric import GRAVITY_MM, UP, Fabric

__all__ = ["Settling"]

STEP_S = 5e-4
SEAM_ROUNDS = 16
FASTEST = 1500.0
"""mm a second: cloth that is drawn together must not jump through the form."""


@dataclass(slots=True)
class Settling:
    """A fabric moving in time about a form; `x` are the nodes' places."""

    fabric: Fabric
    x: Array
    distance: Distance
    pairs: Whole = field(default_factory=lambda: np.zeros((0, 2), np.int64))
    """Nodes that are drawn together, as a seam does."""
    pull: float = 2.0
    """How hard, mN for each mm."""
    friction: float = 0.3
    damping: float = 6.0
    """Share of the speed lost in a second."""
    gravity: float = GRAVITY_MM
    step_s: float = STEP_S
    time_s: float = 0.0
    """How long it has moved."""
    speed: Array = field(init=False)
    was: Array = field(init=False)
    slack: Array = field(init=False)

    def __post_init__(self) -> None:
        f = self.fabric
        self.speed, self.was = np.zeros_like(self.x), np.zeros_like(self.x)
        full = np.zeros((len(f.triangles), 3, 3))
        full[:, 0, 0], full[:, 0, 1], full[:, 1, 0] = f.stiff[:, 0], f.stiff[:, 1], f.stiff[:, 1]
        full[:, 1, 1], full[:, 2, 2] = f.stiff[:, 2], f.stiff[:, 3]
        self.slack = np.ascontiguousarray(np.linalg.inv(full * f.area[:, None, None]))

    def run(self, steps: int) -> None:
        """Small steps in time."""
        f, d, dt = self.fabric, self.distance, self.step_s
        light = 1 / f.mass
        self.time_s += steps * dt
        kept = float(np.exp(-self.damping * dt))
        for _ in range(steps):
            self.was[:] = self.x
            self.speed[:, UP] -= self.gravity * dt
            self.x += dt * self.speed
            _triangles(self.x, light, f.triangles, f.inverse, self.slack, 1 / dt**2)
            _hinges(self.x, light, f.hinges.nodes, f.hinges.weights, f.hinges.stiffness, 1 / dt**2)
            keep_out(self.x, self.was, d.grid, d.low, d.step, HALF_THICKNESS_MM, self.friction)
            if len(self.pairs):
                # Last, so that what was put out of the form does not leave a seam open.
                _seams(self.x, light, self.pairs, 1 / (self.pull * dt**2))
            self.speed[:] = (self.x - self.was) * (kept / dt)
            fast = np.sqrt((self.speed * self.speed).sum(axis=1))
            self.speed *= np.minimum(1.0, FASTEST / np.maximum(fast, 1e-9))[:, None]

    @property
    def gap(self) -> float:
        """The widest that a seam still stands open, mm."""
        apart = self.x[self.pairs[:, 0]] - self.x[self.pairs[:, 1]]
        return float(np.sqrt((apart * apart).sum(axis=1)).max(initial=0.0))


@compiled
def _triangles(x: Array, light: Array, triangles: Whole, inverse: Array, slack: Array, often: float) -> None:
    """Three strains of each triangle at once, with their coupling."""
    f, e, o = np.empty((3, 2)), np.empty(3), np.empty((3, 2))
    for t in range(triangles.shape[0]):
        a, b, c = triangles[t, 0], triangles[t, 1], triangles[t, 2]
        for k in range(3):
            one, two = x[b, k] - x[a, k], x[c, k] - x[a, k]
            f[k, 0] = one * inverse[t, 0, 0] + two * inverse[t, 1, 0]
            f[k, 1] = one * inverse[t, 0, 1] + two * inverse[t, 1, 1]
        q0 = f[0, 0] ** 2 + f[1, 0] ** 2 + f[2, 0] ** 2
        q1 = f[0, 1] ** 2 + f[1, 1] ** 2 + f[2, 1] ** 2
        q2 = f[0, 0] * f[0, 1] + f[1, 0] * f[1, 1] + f[2, 0] * f[2, 1]
        e[0], e[1], e[2] = 0.5 * (q0 - 1), 0.5 * (q1 - 1), q2
        for k in range(2):
            o[1, k], o[2, k] = inverse[t, 0, k], inverse[t, 1, k]
            o[0, k] = -o[1, k] - o[2, k]
        p = light[a] * o[0, 0] ** 2 + light[b] * o[1, 0] ** 2 + light[c] * o[2, 0] ** 2
        r = light[a] * o[0, 0] * o[0, 1] + light[b] * o[1, 0] * o[1, 1] + light[c] * o[2, 0] * o[2, 1]
        s = light[a] * o[0, 1] ** 2 + light[b] * o[1, 1] ** 2 + light[c] * o[2, 1] ** 2
        m00 = p * q0 + slack[t, 0, 0] * often
        m01 = r * q2 + slack[t, 0, 1] * often
        m02 = p * q2 + r * q0
        m11 = s * q1 + slack[t, 1, 1] * often
        m12 = r * q1 + s * q2
        m22 = p * q1 + 2 * r * q2 + s * q0 + slack[t, 2, 2] * often
        a00, a01, a02 = m11 * m22 - m12 * m12, m02 * m12 - m01 * m22, m01 * m12 - m02 * m11
        a11, a12, a22 = m00 * m22 - m02 * m02, m01 * m02 - m00 * m12, m00 * m11 - m01 * m01
        by = -1.0 / (m00 * a00 + m01 * a01 + m02 * a02)
        l0 = by * (a00 * e[0] + a01 * e[1] + a02 * e[2])
        l1 = by * (a01 * e[0] + a11 * e[1] + a12 * e[2])
        l2 = by * (a02 * e[0] + a12 * e[1] + a22 * e[2])
        for k in range(3):
            h0, h1 = f[k, 0] * l0 + f[k, 1] * l2, f[k, 0] * l2 + f[k, 1] * l1
            x[a, k] += light[a] * (o[0, 0] * h0 + o[0, 1] * h1)
            x[b, k] += light[b] * (o[1, 0] * h0 + o[1, 1] * h1)
            x[c, k] += light[c] * (o[2, 0] * h0 + o[2, 1] * h1)


@compiled
def _hinges(x: Array, light: Array, nodes: Whole, weights: Array, stiffness: Array, often: float) -> None:
    for h in range(nodes.shape[0]):
        below = often / stiffness[h]
        for k in range(4):
            below += light[nodes[h, k]] * weights[h, k] ** 2
        for axis in range(3):
            jump = 0.0
            for k in range(4):
                jump += weights[h, k] * x[nodes[h, k], axis]
            for k in range(4):
                x[nodes[h, k], axis] -= light[nodes[h, k]] * weights[h, k] * jump / below


@compiled
def _seams(x: Array, light: Array, pairs: Whole, loose: float) -> None:
    """Several rounds there and back, for where seams meet one node is in several pairs."""
    count = pairs.shape[0]
    for number in range(SEAM_ROUNDS * count):
        p = number % count
        if (number // count) % 2:
            p = count - 1 - p
        i, j = pairs[p, 0], pairs[p, 1]
        below = light[i] + light[j] + loose
        for k in range(3):
            apart = (x[i, k] - x[j, k]) / below
            x[i, k] -= light[i] * apart
            x[j, k] += light[j] * apart
