"""How much longer the cloth has become at each place: across, along, and the most and least of any direction."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tapeline.drape.compiled import Array
from tapeline.drape.fabric import Fabric

__all__ = ["Strain", "strain"]


@dataclass(frozen=True, slots=True)
class Strain:
    """Stretch (0.1 is a tenth longer), of each triangle or of each node."""

    across: Array
    along: Array
    most: Array
    least: Array

    def at_nodes(self, fabric: Fabric) -> Strain:
        """Means over the triangles about each node, by area: single triangles zigzag at edges."""
        weight = np.zeros(fabric.count)
        for corner in range(3):
            np.add.at(weight, fabric.triangles[:, corner], fabric.area)

        def mean(values: Array) -> Array:
            out: Array = np.zeros(fabric.count)
            for corner in range(3):
                np.add.at(out, fabric.triangles[:, corner], fabric.area * values)
            return out / weight

        return Strain(mean(self.across), mean(self.along), mean(self.most), mean(self.least))


def strain(fabric: Fabric, x: Array) -> Strain:
    """Of each triangle, with the nodes at `x`."""
    corners = x[fabric.triangles]
    sides = np.stack([corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]], axis=2)
    slope = sides @ fabric.inverse
    u, v = (slope[:, :, 0] ** 2).sum(axis=1), (slope[:, :, 1] ** 2).sum(axis=1)
    w = (slope[:, :, 0] * slope[:, :, 1]).sum(axis=1)
    middle, radius = (u + v) / 2, np.hypot((u - v) / 2, w)
    return Strain(
        np.sqrt(u) - 1, np.sqrt(v) - 1, np.sqrt(middle + radius) - 1, np.sqrt(np.maximum(middle - radius, 0)) - 1
    )
