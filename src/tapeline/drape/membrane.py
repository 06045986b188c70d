"""The cloth as a sheet that is stretched and sheared: energy, forces and stiffness of its triangles.

Strain is Green's, so that turning costs nothing: E = (F^T F - 1) / 2 in the axes of the cloth, across and along.
Stress is C E, and grows with the cube of the strain where a knit stiffens. Forces in mN, lengths in mm.
"""

from __future__ import annotations

import math

from tapeline.drape.compiled import Array, Whole, compiled

__all__ = ["add_membrane_stiffness", "membrane"]


@compiled
def membrane(
    x: Array,
    triangles: Whole,
    inverse: Array,
    area: Array,
    stiff: Array,
    stiffens: Array,
    slope: Array,
    stress: Array,
    gradient: Array,
) -> float:
    """The energy in mN mm; fills each triangle's deformation and stress, and adds to each node's gradient."""
    energy = 0.0
    for t in range(triangles.shape[0]):
        a, b, c = triangles[t, 0], triangles[t, 1], triangles[t, 2]
        for k in range(3):
            one, two = x[b, k] - x[a, k], x[c, k] - x[a, k]
            slope[t, k, 0] = one * inverse[t, 0, 0] + two * inverse[t, 1, 0]
            slope[t, k, 1] = one * inverse[t, 0, 1] + two * inverse[t, 1, 1]
        e0 = 0.5 * (slope[t, 0, 0] ** 2 + slope[t, 1, 0] ** 2 + slope[t, 2, 0] ** 2 - 1)
        e1 = 0.5 * (slope[t, 0, 1] ** 2 + slope[t, 1, 1] ** 2 + slope[t, 2, 1] ** 2 - 1)
        e2 = slope[t, 0, 0] * slope[t, 0, 1] + slope[t, 1, 0] * slope[t, 1, 1] + slope[t, 2, 0] * slope[t, 2, 1]
        s0 = stiff[t, 0] * e0 + stiff[t, 1] * e1
        s1 = stiff[t, 1] * e0 + stiff[t, 2] * e1
        s2 = stiff[t, 3] * e2
        energy += 0.5 * area[t] * (s0 * e0 + s1 * e1 + s2 * e2)
        # Only a stretched cloth stiffens; a pressed one buckles.
        p0, p1 = max(e0, 0.0), max(e1, 0.0)
        energy += 0.25 * area[t] * (stiffens[t, 0] * p0**4 + stiffens[t, 1] * p1**4)
        s0 += stiffens[t, 0] * p0**3
        s1 += stiffens[t, 1] * p1**3
        stress[t, 0], stress[t, 1], stress[t, 2] = s0, s1, s2
        for corner in range(1, 3):
            i = triangles[t, corner]
            n0, n1 = inverse[t, corner - 1, 0], inverse[t, corner - 1, 1]
            w0, w1 = area[t] * (s0 * n0 + s2 * n1), area[t] * (s2 * n0 + s1 * n1)
            for k in range(3):
                g = slope[t, k, 0] * w0 + slope[t, k, 1] * w1
                gradient[i, k] += g
                gradient[a, k] -= g
    return energy


@compiled
def add_membrane_stiffness(
    triangles: Whole,
    inverse: Array,
    area: Array,
    stiff: Array,
    stiffens: Array,
    slope: Array,
    stress: Array,
    slots: Whole,
    blocks: Array,
) -> None:
    """Adds the second derivatives to the blocks; of the stress only its pulling part, so that no direction is soft.

    The part that is left out belongs to cloth that is pressed together: it buckles, and the solver finds how.
    """
    n = [0.0] * 6
    for t in range(triangles.shape[0]):
        s0, s1, s2 = stress[t, 0], stress[t, 1], stress[t, 2]
        half, off = 0.5 * (s0 + s1), 0.5 * (s0 - s1)
        radius = math.sqrt(off * off + s2 * s2)
        if half - radius < 0:
            if half + radius <= 0:
                s0, s1, s2 = 0.0, 0.0, 0.0
            else:
                large = half + radius
                s0, s1, s2 = (
                    large * 0.5 * (1 + off / radius),
                    large * 0.5 * (1 - off / radius),
                    large * 0.5 * s2 / radius,
                )
        e0 = 0.5 * (slope[t, 0, 0] ** 2 + slope[t, 1, 0] ** 2 + slope[t, 2, 0] ** 2 - 1)
        e1 = 0.5 * (slope[t, 0, 1] ** 2 + slope[t, 1, 1] ** 2 + slope[t, 2, 1] ** 2 - 1)
        c00 = stiff[t, 0] + 3 * stiffens[t, 0] * max(e0, 0.0) ** 2
        c11 = stiff[t, 2] + 3 * stiffens[t, 1] * max(e1, 0.0) ** 2
        c01, c22 = stiff[t, 1], stiff[t, 3]
        n[2], n[3], n[4], n[5] = inverse[t, 0, 0], inverse[t, 0, 1], inverse[t, 1, 0], inverse[t, 1, 1]
        n[0], n[1] = -n[2] - n[4], -n[3] - n[5]
        for one in range(3):
            p0, p1 = n[2 * one], n[2 * one + 1]
            for two in range(3):
                q0, q1 = n[2 * two], n[2 * two + 1]
                slot = slots[t, one, two]
                turning = area[t] * (p0 * (s0 * q0 + s2 * q1) + p1 * (s2 * q0 + s1 * q1))
                k00 = area[t] * (c00 * p0 * q0 + c22 * p1 * q1)
                k01 = area[t] * (c01 * p0 * q1 + c22 * p1 * q0)
                k10 = area[t] * (c01 * p1 * q0 + c22 * p0 * q1)
                k11 = area[t] * (c11 * p1 * q1 + c22 * p0 * q0)
                for a in range(3):
                    u0 = k00 * slope[t, a, 0] + k10 * slope[t, a, 1]
                    u1 = k01 * slope[t, a, 0] + k11 * slope[t, a, 1]
                    for b in range(3):
                        blocks[slot, a, b] += u0 * slope[t, b, 0] + u1 * slope[t, b, 1]
                    blocks[slot, a, a] += turning
