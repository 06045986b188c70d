"""From a coarse mesh of a garment to a fine one: every node goes where its place on the drawing has gone."""

from __future__ import annotations

import numpy as np

from tapeline.drape.compiled import Array
from tapeline.drape.panel import Panel
from tapeline.drape.sew import Sewn

__all__ = ["carried"]


def carried(coarse: Sewn, at: Array, fine: Sewn) -> Array:
    """Places of the fine mesh's nodes, from the places of the coarse one's; panel by panel, on the drawing."""
    out = np.zeros((len(fine.flat), 3))
    for panel in fine.panels:
        same = next(other for other in coarse.panels if other.name == panel.name)
        out[fine.of(panel.name)] = _within(same, at[coarse.of(panel.name)], panel)
    return out


def _within(coarse: Panel, at: Array, fine: Panel) -> Array:
    """By shares of the three corners of the triangle that a node lies in, or that it lies least outside of."""
    corners = coarse.drawn[coarse.triangles]
    one, two = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    area = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    out = np.empty((len(fine.drawn), 3))
    for begin in range(0, len(fine.drawn), 256):
        off = fine.drawn[begin : begin + 256, None, :] - corners[None, :, 0]
        v = (off[..., 0] * two[:, 1] - off[..., 1] * two[:, 0]) / area
        w = (one[:, 0] * off[..., 1] - one[:, 1] * off[..., 0]) / area
        shares = np.stack([1 - v - w, v, w], axis=-1)
        best = shares.min(axis=-1).argmax(axis=1)
        rows = np.arange(len(best))
        out[begin : begin + 256] = np.einsum("nk,nkj->nj", shares[rows, best], at[coarse.triangles[best]])
    return out
