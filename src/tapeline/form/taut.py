"""Taut tapes: where a plane cuts the stand, the shortest line round it or over it, with its slopes.

A slope says by how much the length grows when a point of the stand moves by a millimetre; the plane itself moves with
the landmarks that it is laid by, tilt and all.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from tapeline.form.shapes import Array, Place, Whole

__all__ = ["Plane", "Taken", "around", "hull", "over"]

_AXES = {"x": (1.0, 0.0, 0.0), "y": (0.0, 1.0, 0.0), "z": (0.0, 0.0, 1.0)}


@dataclass(slots=True)
class Taken:
    """A tape as read off a stand: its length, where it lies, and its slopes by points of the stand."""

    value: float
    """mm, or radians for an angle."""
    line: Array
    """(k, 3): where it lies; a closed one ends where it begins."""
    at: list[Whole] = field(default_factory=list)
    slopes: list[Array] = field(default_factory=list)

    def lean(self, place: Place, slope: Array) -> None:
        """Add the slope of a place."""
        self.at.append(place.at)
        self.slopes.append(place.shares[:, None] * slope)

    def gathered(self) -> tuple[Whole, Array]:
        """All slopes as two arrays."""
        return np.concatenate(self.at), np.vstack(self.slopes)


@dataclass(frozen=True, slots=True)
class Plane:
    """Through a place; square to `axis`, or to the line between two places, or holding that line and an axis."""

    through: Place
    axis: str = ""
    line: tuple[Place, Place] | None = None
    shift: float = 0.0
    """So far along an axis the plane is moved, mm."""

    def where(self, points: Array) -> tuple[Array, Array, float]:
        """A point, the unit normal, and the length of the normal before it was made one."""
        normal = self._normal(points)
        size = float(np.linalg.norm(normal))
        return self.through.of(points) + self.shift * normal / size, normal / size, size

    def _normal(self, points: Array) -> Array:
        if self.line is None:
            return np.array(_AXES[self.axis])
        between = self.line[1].of(points) - self.line[0].of(points)
        return np.cross(_AXES[self.axis], between) if self.axis else between

    def lean(self, taken: Taken, by_point: Array, by_normal: Array, normal: Array, size: float) -> None:
        """Hand the slopes of point and normal on to the landmarks."""
        taken.lean(self.through, by_point)
        if self.line is None:
            return
        raw = (by_normal - normal * (normal @ by_normal)) / size
        between = raw if not self.axis else np.cross(raw, np.array(_AXES[self.axis]))
        taken.lean(self.line[1], between)
        taken.lean(self.line[0], -between)


def hull(points: Array) -> Whole:
    """The corners of the convex hull of points in a plane, anticlockwise (monotone chain, Andrew 1979)."""
    order = np.lexsort((points[:, 1], points[:, 0]))
    rows = points[order].tolist()

    def half(numbers: range) -> list[int]:
        kept: list[int] = []
        for i in numbers:
            x, y = rows[i]
            while len(kept) > 1:
                ax, ay = rows[kept[-2]]
                bx, by = rows[kept[-1]]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0:
                    break
                kept.pop()
            kept.append(i)
        return kept

    low, high = half(range(len(rows))), half(range(len(rows) - 1, -1, -1))
    return np.asarray(order[np.array(low[:-1] + high[:-1])])


@dataclass(slots=True)
class _Cut:
    """Where a plane cuts edges."""

    a: Whole
    b: Whole
    share: Array
    points: Array
    off: Array
    """Of a's end, less b's: how fast an edge goes through the plane."""


def _cut(points: Array, edges: Whole, origin: Array, normal: Array) -> _Cut:
    off = ((points @ normal) - origin @ normal)[edges]
    crossing = np.flatnonzero((off[:, 0] < 0) != (off[:, 1] < 0))
    a, b, off = edges[crossing, 0], edges[crossing, 1], off[crossing]
    share = off[:, 0] / (off[:, 0] - off[:, 1])
    return _Cut(a, b, share, points[a] + share[:, None] * (points[b] - points[a]), off[:, 0] - off[:, 1])


def _lean(taken: Taken, points: Array, cut: _Cut, chosen: tuple[Whole, Array], plane: Plane) -> None:
    """Slopes of points on the plane, as slopes of the edges' ends and of the plane's landmarks.

    A point P = A + t (B - A) stays on the plane: n (P - o) = 0 gives dt, and with it dP.
    """
    which, slope = chosen
    origin, normal, size = plane.where(points)
    a, b, t, speed = cut.a[which], cut.b[which], cut.share[which], cut.off[which]
    along = np.einsum("ij,ij->i", slope, points[b] - points[a]) / speed  # slope by t, over n (A - B)
    taken.at += [a, b]
    taken.slopes += [
        (1 - t)[:, None] * slope + (along * (1 - t))[:, None] * normal,
        t[:, None] * slope + (along * t)[:, None] * normal,
    ]
    by_normal = (along[:, None] * (cut.points[which] - origin)).sum(axis=0)
    plane.lean(taken, -along.sum() * normal, by_normal, normal, size)


def _basis(normal: Array) -> tuple[Array, Array]:
    start = np.array(_AXES["x"] if abs(normal[0]) < 0.9 else _AXES["z"])
    u = start - (start @ normal) * normal
    u = u / np.linalg.norm(u)
    return u, np.cross(normal, u)


def around(points: Array, edges: Whole, plane: Plane) -> Taken:
    """A tape round everything that the plane cuts: never into a hollow."""
    where = plane.where(points)
    cut = _cut(points, edges, where[0], where[1])
    u, v = _basis(where[1])
    corners = hull(np.column_stack([cut.points @ u, cut.points @ v]))
    line = cut.points[corners]
    legs = np.roll(line, -1, axis=0) - line
    lengths = np.linalg.norm(legs, axis=1)
    ways = legs / np.maximum(lengths, 1e-9)[:, None]
    taken = Taken(float(lengths.sum()), np.vstack([line, line[:1]]))
    _lean(taken, points, cut, (corners, np.roll(ways, 1, axis=0) - ways), plane)
    return taken


def over(points: Array, edges: Whole, plane: Plane, ends: tuple[Place, Place], side: Array) -> Taken:
    """A tape from one place to another in a plane, over what stands out to one side of the straight line between."""
    where = plane.where(points)
    cut = _cut(points, edges, where[0], where[1])
    first, last = ends[0].of(points), ends[1].of(points)
    chord = last - first
    span = float(np.linalg.norm(chord))
    u = chord / span
    out = side - (side @ u) * u - (side @ where[1]) * where[1]
    v = out / np.linalg.norm(out)
    flat = np.column_stack([(cut.points - first) @ u, (cut.points - first) @ v])
    inside = np.flatnonzero((flat[:, 0] > 0) & (flat[:, 0] < span) & (flat[:, 1] > 0))
    rows = np.vstack([[0.0, 0.0], [span, 0.0], flat[inside]])
    corners = hull(rows)
    # From the first end, through what stands out, to the last: the hull without its chord.
    corners = corners[np.argsort(rows[corners, 0], kind="stable")]
    where_is = [k for k in corners.tolist() if k > 1]
    chosen = inside[np.array(where_is, int) - 2] if where_is else np.array([], int)
    line = np.vstack([first, cut.points[chosen], last])
    legs = np.diff(line, axis=0)
    lengths = np.linalg.norm(legs, axis=1)
    ways = legs / np.maximum(lengths, 1e-9)[:, None]
    taken = Taken(float(lengths.sum()), line)
    if len(chosen):
        _lean(taken, points, cut, (chosen, ways[:-1] - ways[1:]), plane)
    taken.lean(ends[0], -ways[0])
    taken.lean(ends[1], ways[-1])
    return taken
