"""The second step of fitting: the smallest smooth push that makes every given tape exact."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from tapeline.form.shapes import Array, Whole
from tapeline.form.solve import Wanted, read_all
from tapeline.form.tape_line import Stand
from tapeline.form.taut import Taken

__all__ = ["corrected"]

REACHES = ((55.0, 1.0), (140.0, 0.5))
"""How far a push at one point is felt at others, in mm, and how much of each: a mixture of Gaussian hills."""
ROUNDS = 16
STEP_MM = 12.0
"""No point is pushed further in one round: beyond that the slopes are no longer the same."""
TINY = 1e-9
"""Keeps tapes that lie on each other from pulling without end."""
EXACT_MM = 0.02
"""A twenty-fifth of what is promised: a tape is read to half a millimetre at best."""
ANGLE_MM = 150.0
"""An angle counts as the millimetres it makes over this length, about a shoulder's."""


def corrected(stand: Stand, half: Array, wanted: Mapping[str, Wanted]) -> Array:
    """The half of the stand with all given tapes met.

    Each tape pulls at the points that it touches; a pull is spread by a smooth kernel (a minimal push in the norm that
    belongs to the kernel), so that no tape leaves a mark. Repeated, because the slopes change on the way.
    """
    shapes = stand.shapes
    given = {name: w for name, w in wanted.items() if w.given}
    units = np.array([ANGLE_MM if name == "shoulder_slope" else 1.0 for name in given])
    off, taken = _off(stand, half, given, units)
    for _ in range(ROUNDS):
        if np.abs(off).max() < EXACT_MM:
            break
        whole = shapes.whole(half)
        folded = np.array([shapes.folded(*t.gathered()) for t in taken.values()]) * units[:, None, None]
        # A pull counts on both sides alike, so that the push is symmetric.
        pulls = folded[:, shapes.row] * shapes.sign
        touched = np.flatnonzero(np.abs(pulls).max(axis=(0, 2)) > 1e-9)
        pushes = np.einsum("vt,ktc->kvc", _kernel(half, whole[touched]), pulls[:, touched])
        pushes[:, _middle(stand), 0] = 0
        square = np.einsum("kvc,lvc->kl", folded, pushes)
        square += TINY * np.trace(square) * np.eye(len(square)) / len(square)
        push = np.einsum("k,kvc->vc", np.linalg.solve(square, -off), pushes)
        push *= min(1.0, STEP_MM / max(float(np.linalg.norm(push, axis=1).max()), 1e-9))
        # Where a tape jumps to another level a whole step may go too far: then half of it, and half again.
        for share in (1.0, 0.5, 0.25, 0.125):
            tried, found = _off(stand, half + share * push, given, units)
            if np.abs(tried).max() < np.abs(off).max() or share == 0.125:
                half, off, taken = half + share * push, tried, found
                break
    return half


def _off(stand: Stand, half: Array, given: Mapping[str, Wanted], units: Array) -> tuple[Array, dict[str, Taken]]:
    """By how much each tape is off, in mm, and the tapes as read."""
    taken = read_all(stand, stand.shapes.whole(half), given)
    return (np.array([taken[name].value - w.value for name, w in given.items()])) * units, taken


def _kernel(at: Array, where: Array) -> Array:
    squared = (at**2).sum(axis=1)[:, None] + (where**2).sum(axis=1) - 2 * at @ where.T
    return np.asarray(sum(share * np.exp(-squared / (2 * reach**2)) for reach, share in REACHES))


def _middle(stand: Stand) -> Whole:
    mean = stand.shapes.mean.reshape(-1, 3)
    return np.flatnonzero(np.abs(mean[:, 0]) < 1e-3)
