"""Places that tapes are laid by, found once on a model stand: each is a mixture of three of its vertices."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from scripts.form.assets import Array

__all__ = ["landmarks"]

Whole = NDArray[np.int64]
Place = tuple[Whole, Array]
"""Three vertices and how much of each."""

NAPE_BELOW = 12.0
"""The bone at the base of the neck lies so far, in mm, below the joint that the neck is bent in."""
NECK_POINT_AT = 0.42
"""The neck point lies so far from nape to hollow, seen from the side."""
HOLLOW_ABOVE = 8.0
"""The hollow between the collar bones lies so far above their inner joints."""


def landmarks(
    half: Array, triangles: Whole, rings: list[list[int]], joints: Mapping[str, Array], apex: Array
) -> dict[str, Place]:
    """All places by name.

    Args:
        half: The left half of the model stand.
        triangles: Its triangles.
        rings: Those of the trunk, from above.
        joints: Joints of the model body.
        apex: Where the model body's bust stands out most.
    """
    shoulder, elbow, hand = joints["shoulder"], joints["elbow"], joints["hand"]
    found = {
        "nape": _middle(half, triangles, joints["neck"][1] - NAPE_BELOW, -1),
        "hollow": _middle(half, triangles, joints["clavicle"][1] + HOLLOW_ABOVE, 1),
        "shoulder_point": _ray(half, triangles, shoulder, np.array([0.35, 1.0, 0.0]), last=True),
        "armpit": _armpit(half, triangles, shoulder),
        "bust_point": _ray(half, triangles, apex * [1, 1, 0], np.array([0.0, 0.0, 1.0]), last=True),
        "elbow": _ray(half, triangles, elbow, np.array([0.0, 0.0, -1.0]), last=True),
        "wrist": _ray(half, triangles, hand, np.array([0.0, 0.0, -1.0]), last=True),
    }
    girths = [float(np.linalg.norm(np.diff(half[ring], axis=0), axis=1).sum()) for ring in rings[4:-8]]
    narrowest = 4 + int(np.argmin(girths[:20]))
    found["waist"] = _between(rings[narrowest][len(rings[0]) // 2], rings[narrowest + 1][len(rings[0]) // 2])
    backs = [ring[-1] if half[ring[-1], 2] < half[ring[0], 2] else ring[0] for ring in rings]
    furthest = int(np.argmin(half[backs, 2]))
    found["seat"] = _between(backs[furthest], backs[furthest + 1])
    top, pit = (_at(half, found[name]) for name in ("shoulder_point", "armpit"))
    fold = (top + pit) / 2
    fold[2] = shoulder[2]
    found["back_fold"] = _ray(half, triangles, fold, np.array([0.0, 0.0, -1.0]), last=True)
    found["front_fold"] = _ray(half, triangles, fold, np.array([0.0, 0.0, 1.0]), last=True)
    nape, hollow = (_at(half, found[name]) for name in ("nape", "hollow"))
    found["neck_point"] = _side(half, triangles, nape, hollow)
    return found


def _at(half: Array, place: Place) -> Array:
    return np.asarray(place[1] @ half[place[0]])


def _between(one: int, other: int) -> Place:
    """Between two rings: a level plane through a vertex of a ring would graze the whole ring."""
    return np.array([one, other, other]), np.array([0.5, 0.5, 0.0])


def _ray(half: Array, triangles: Whole, start: Array, way: Array, *, last: bool) -> Place:
    """Where a straight line from a point leaves the surface (or first meets it)."""
    a, b, c = half[triangles].transpose(1, 0, 2)
    across = np.cross(way, c - a)
    det = np.einsum("ij,ij->i", b - a, across)
    det = np.where(np.abs(det) < 1e-12, 1e-12, det)
    u = np.einsum("ij,ij->i", start - a, across) / det
    other = np.cross(start - a, b - a)
    v = other @ way / det
    how_far = np.einsum("ij,ij->i", c - a, other) / det
    hit = np.flatnonzero((u >= -1e-6) & (v >= -1e-6) & (u + v <= 1 + 1e-6) & (how_far > 0))
    k = hit[np.argmax(how_far[hit]) if last else np.argmin(how_far[hit])]
    return triangles[k], np.array([1 - u[k] - v[k], u[k], v[k]])


def _middle(half: Array, triangles: Whole, height: float, side: int) -> Place:
    """On the middle line, front (1) or back (-1), at a height."""
    pairs = np.unique(np.sort(np.vstack([triangles[:, [i, (i + 1) % 3]] for i in range(3)])), axis=0)
    pairs = pairs[(np.abs(half[pairs][:, :, 0]) < 1e-9).all(axis=1)]
    off = half[pairs][:, :, 1] - height
    crossing = np.flatnonzero(off[:, 0] * off[:, 1] <= 0)
    best = max(crossing, key=lambda k: side * half[pairs[k], 2].mean())
    share = off[best, 0] / (off[best, 0] - off[best, 1])
    a, b = pairs[best]
    return np.array([a, b, b]), np.array([1 - share, share, 0.0])


def _armpit(half: Array, triangles: Whole, shoulder: Array) -> Place:
    """The highest place that a level strip of paper under the arm reaches."""
    best: Place | None = None
    for across in np.arange(shoulder[0] - 30, shoulder[0] + 30, 1.0):
        start = np.array([across, shoulder[1] - 220, shoulder[2] - 8])
        corner = half[triangles]
        inside = (corner[:, :, 0].min(axis=1) < across) & (corner[:, :, 0].max(axis=1) > across)
        if not inside.any():
            continue
        try:
            place = _ray(half, triangles, start, np.array([0.0, 1.0, 0.0]), last=False)
        except ValueError:
            continue
        a, b, c = half[place[0]]
        if np.cross(b - a, c - a)[1] < 0 and (best is None or _at(half, place)[1] > _at(half, best)[1]):
            best = place
    if best is None:
        raise ValueError("no armpit was found")
    return best


def _side(half: Array, triangles: Whole, nape: Array, hollow: Array) -> Place:
    """Where neck turns into shoulder: seen from the front the surface falls there at 45 degrees."""
    depth = nape[2] + NECK_POINT_AT * (hollow[2] - nape[2])
    pairs = np.unique(np.sort(np.vstack([triangles[:, [i, (i + 1) % 3]] for i in range(3)])), axis=0)
    off = half[pairs][:, :, 2] - depth
    pairs, off = pairs[off[:, 0] * off[:, 1] < 0], off[off[:, 0] * off[:, 1] < 0]
    share = off[:, 0] / (off[:, 0] - off[:, 1])
    places = half[pairs[:, 0]] * (1 - share)[:, None] + half[pairs[:, 1]] * share[:, None]
    near = np.flatnonzero(
        (places[:, 1] > hollow[1]) & (places[:, 1] < nape[1] + 12) & (places[:, 0] > 20) & (places[:, 0] < 160)
    )
    # Where the line down from the neck falls at 45 degrees it is nearest to a point far up and out: least x + y.
    k = near[np.argmin(places[near, 0] + places[near, 1])]
    return np.array([*pairs[k], pairs[k, 1]]), np.array([1 - share[k], share[k], 0.0])
