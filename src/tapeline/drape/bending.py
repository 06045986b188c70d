"""The cloth as a sheet that bends: across every side that two triangles share, and without stretching.

Because bending does not stretch the cloth, its energy is quadratic in the places of the nodes, and its matrix is made
once (M. Bergou and others, "A quadratic bending model for inextensible surfaces", Symposium on Geometry Processing,
2006). The jump of the slope across a side times its length is K x, with cotangents as weights; the factor that makes
even triangles bend as a beam of the same rigidity does is worked out beside `stiffness`.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tapeline.drape.compiled import Array, Whole, compiled

__all__ = ["Hinges", "bend", "hinges"]


@dataclass(frozen=True, slots=True)
class Hinges:
    """The sides that two triangles share."""

    nodes: Whole
    """The two ends of the side, and the corner on either hand."""
    weights: Array
    """K: how far each node's place moves the jump of the slope."""
    stiffness: Array
    """Energy is half of it times the square of K x, in mN/mm."""


def hinges(flat: Array, corners: Whole, node: Whole, area: Array, rigid: Array) -> Hinges:
    """Every shared side of a mesh whose nodes are welded by `node`; rigidities of each triangle in mN mm."""
    count = len(corners)
    welded = node[corners]
    ends = np.sort(np.vstack([welded[:, [0, 1]], welded[:, [1, 2]], welded[:, [2, 0]]]), axis=1)
    owner, local = np.tile(np.arange(count), 3), np.repeat(np.arange(3), count)
    order = np.lexsort((ends[:, 1], ends[:, 0]))
    same = np.flatnonzero((ends[order[1:]] == ends[order[:-1]]).all(axis=1))
    one, two = order[same], order[same + 1]
    cot_a0, cot_a1, a, normal_a = _cotangents(flat, corners, owner[one], local[one])
    cot_b0, cot_b1, b, normal_b = _cotangents(flat, corners, owner[two], local[two])
    turned = node[b[:, 0]] != node[a[:, 0]]
    cot_b0, cot_b1 = np.where(turned, cot_b1, cot_b0), np.where(turned, cot_b0, cot_b1)
    weights = np.stack([cot_a1 + cot_b1, cot_a0 + cot_b0, -(cot_a0 + cot_a1), -(cot_b0 + cot_b1)], axis=1)
    nodes = np.stack([node[a[:, 0]], node[a[:, 1]], node[a[:, 2]], node[b[:, 2]]], axis=1)
    first, second = owner[one], owner[two]
    mean = (_rigidity(rigid[first], normal_a) + _rigidity(rigid[second], normal_b)) / 2
    # On even triangles of side h, curvature k about the line across a direction jumps by k h / sqrt 3 (1/2 + cos 2 p)
    # over a side whose normal stands at p to it; the squares over the three sides come to 9/4 whichever way the mesh
    # lies, and with a factor of 1 the energy is B k^2 / 2 for each unit of area. A triangle at an edge of the cloth has
    # fewer shared sides, which carry its part too.
    sides = np.maximum(np.bincount(np.r_[first, second], minlength=count), 1)
    share = 3 * (area[first] / sides[first] + area[second] / sides[second]) / (area[first] + area[second])
    return Hinges(nodes, np.ascontiguousarray(weights), share * mean / (area[first] + area[second]))


def _cotangents(flat: Array, corners: Whole, triangle: Whole, local: Whole) -> tuple[Array, Array, Whole, Array]:
    """At both ends of a side, the three corners from its first end, and the side's normal in the cloth's axes."""
    ids = np.stack([corners[triangle, (local + k) % 3] for k in range(3)], axis=1)
    start, end, tip = (flat[ids[:, k]] for k in range(3))
    side = end - start

    def cotangent(one: Array, two: Array) -> Array:
        out: Array = (one * two).sum(axis=1) / np.abs(one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0])
        return out

    normal = np.stack([side[:, 1], -side[:, 0]], axis=1) / np.linalg.norm(side, axis=1)[:, None]
    return cotangent(side, tip - start), cotangent(-side, tip - end), ids, normal


def _rigidity(rigid: Array, way: Array) -> Array:
    """Of a strip cut in a direction, between those of the two it is known for.

    The geometric mean stands for the mixed term: common practice for orthotropic sheets, no source.
    """
    across, along = rigid[:, 0], rigid[:, 1]
    x2, y2 = way[:, 0] ** 2, way[:, 1] ** 2
    out: Array = across * x2 * x2 + along * y2 * y2 + 2 * np.sqrt(across * along) * x2 * y2
    return out


@compiled
def bend(x: Array, starts: Whole, columns: Whole, values: Array, gradient: Array) -> float:
    """The bending energy in mN mm by its matrix, whose rows are the nodes; adds to each node's gradient."""
    energy = 0.0
    for i in range(starts.shape[0] - 1):
        for k in range(3):
            force = 0.0
            for s in range(starts[i], starts[i + 1]):
                force += values[s] * x[columns[s], k]
            gradient[i, k] += force
            energy += 0.5 * force * x[i, k]
    return energy
