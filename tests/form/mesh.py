"""What a closed mesh is, and a second way to read a girth off it: written apart from what is tested."""

from __future__ import annotations

from collections import Counter

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import ConvexHull

from tapeline.form import Form

__all__ = ["girth", "open_edges"]


def open_edges(triangles: NDArray[np.int64]) -> int:
    """Edges that are not walked once each way: none in a closed surface whose sides all look out."""
    walked = Counter((int(t[i]), int(t[(i + 1) % 3])) for t in triangles for i in range(3))
    return sum(1 for (a, b), times in walked.items() if times != 1 or walked[b, a] != 1)


def girth(form: Form, height: float) -> float:
    """A level tape round the trunk: triangles cut one by one, and the hull of qhull round the points."""
    points = []
    for triangle in form.triangles:
        if (form.arm[triangle] >= 0.5).any():
            continue
        corners = form.vertices[triangle]
        for a, b in zip(corners, np.roll(corners, -1, axis=0), strict=True):
            if (a[1] < height) != (b[1] < height):
                share = (height - a[1]) / (b[1] - a[1])
                points.append((a + share * (b - a))[[0, 2]])
    return float(ConvexHull(np.array(points)).area)  # in the plane, qhull's "area" is the length of the outline
