"""The noun: a solid to be looked at, with lines on it; the glTF file and the views are made of it."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

__all__ = ["Drawn", "Solid"]


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
    """A line drawn on a solid."""

    name: str
    points: NDArray[np.float64]
    """(k, 3), mm."""
    colour: tuple[int, int, int]


@dataclass(frozen=True, slots=True, eq=False)
class Solid:
    """Triangles with a colour at each vertex; mm, x to the wearer's left, y up, z to the front."""

    name: str
    vertices: NDArray[np.float64]
    """(n, 3), mm."""
    triangles: NDArray[np.int64]
    """(m, 3), anticlockwise seen from outside."""
    colours: NDArray[np.uint8]
    """(n, 3): red, green and blue from 0 to 255."""
    lines: tuple[Drawn, ...] = field(default=())
    shaded: bool = True
    """Whether views darken what is turned away from the light; not where colours are values."""

    @property
    def normals(self) -> NDArray[np.float64]:
        """(n, 3): outward at each vertex, of length 1; triangles count by their area."""
        corner = self.vertices[self.triangles]
        across = np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0])
        out = np.zeros_like(self.vertices)
        for k in range(3):
            np.add.at(out, self.triangles[:, k], across)
        return np.asarray(out / np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-12))
