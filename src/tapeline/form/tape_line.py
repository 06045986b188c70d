"""How each tape is laid on the stand: the same words as in Measure, as planes, edges and landmarks."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np

from tapeline.form.shapes import Array, Place, Shapes, Whole
from tapeline.form.taut import Plane, Taken, around, over

__all__ = ["LAID", "Stand", "stand_at"]

UP, AHEAD, BACK = np.array([0.0, 1, 0]), np.array([0.0, 0, 1]), np.array([0.0, 0, -1])

BELOW_BUST_MM = 30.0
"""So far below the bust points the fullest level is looked for; a tape that is level does not go further."""
BELOW_ARMPITS_MM = 8.0
"""The upper chest tape is about 16 mm wide and touches the armpits with its upper edge (house rule)."""
BETWEEN_MM = BELOW_ARMPITS_MM + 20.0
"""So far below the armpits the bust tape lies at the highest: two tapes lie side by side, not on each other."""
LEVELS = 6
"""So many levels are tried below the bust points, and as many above."""


@dataclass(frozen=True, slots=True, eq=False)
class Stand:
    """What tapes are laid on: the edges of the stand by part, in one pose."""

    shapes: Shapes
    trunk: Whole
    """Edges of trunk and shoulders, arms left out."""
    shoulders: Whole
    """The same with the upper arms."""
    neck: Whole
    arm: Whole
    """Of the left arm."""
    armhole: Whole
    """Round the left shoulder, above the armpit."""
    back: Whole
    """The middle of the back, vertices from the neck down."""

    def place(self, name: str) -> Place:
        """A landmark or joint."""
        return self.shapes.places[name]


def stand_at(shapes: Shapes) -> Stand:
    """Sorts the edges of the mesh by part, once for a pose."""
    return _sorted(shapes)


@cache
def _sorted(shapes: Shapes) -> Stand:
    points = shapes.whole(shapes.mean.reshape(-1, 3))
    triangles = shapes.triangles
    edges = np.unique(np.sort(np.vstack([triangles[:, [i, (i + 1) % 3]] for i in range(3)]), axis=1), axis=0)
    arm, x, y = shapes.arm[edges], points[edges][:, :, 0], points[edges][:, :, 1]
    armpit = shapes.places["armpit"].of(points)
    hollow = shapes.places["hollow"].of(points)
    middle = np.flatnonzero(np.abs(points[: shapes.count, 0]) < 1e-3)
    nape = shapes.places["nape"].of(points)
    behind = middle[(points[middle, 2] < nape[2] + 60) & (points[middle, 1] < nape[1] + 1)]
    seat = shapes.places["seat"].of(points)
    axis = np.interp(points[behind, 1], [seat[1], nape[1]], [seat[2] + 90, nape[2] + 60])
    behind = behind[points[behind, 2] < axis]
    return Stand(
        shapes,
        trunk=edges[(arm < 0.5).all(axis=1)],
        shoulders=edges[(arm < 0.97).all(axis=1)],
        neck=edges[(arm < 0.05).all(axis=1) & (y > hollow[1] - 60).all(axis=1) & (np.abs(x) < 120).all(axis=1)],
        arm=edges[(arm > 0.5).all(axis=1) & (x > 0).all(axis=1)],
        armhole=edges[(x > armpit[0] - 60).all(axis=1) & (y > armpit[1] - 16).all(axis=1)],
        back=behind[np.argsort(-points[behind, 1])],
    )


def _level(name: str, shift: float = 0.0) -> Callable[[Stand], Plane]:
    return lambda stand: Plane(stand.place(name), "y", shift=shift)


def _fullest(found: Iterable[Taken]) -> Taken:
    return max(found, key=lambda taken: taken.value)


def _bust(stand: Stand, points: Array) -> Taken:
    """The fullest level from a little below the bust points up to the upper chest tape."""
    bust, armpit = stand.place("bust_point"), stand.place("armpit")
    below = [Plane(bust, "y", shift=-shift) for shift in np.linspace(BELOW_BUST_MM, 0, LEVELS)]
    shares = np.linspace(0, 1, LEVELS)[1:]
    above = [Plane(bust.towards(armpit, share), "y", shift=-share * BETWEEN_MM) for share in shares]
    return _fullest(around(points, stand.trunk, plane) for plane in (*below, *above))


def _upper_arm(stand: Stand, points: Array) -> Taken:
    shoulder, elbow = stand.place("shoulder_joint"), stand.place("elbow_joint")
    return _fullest(
        around(points, stand.arm, Plane(shoulder.towards(elbow, float(share)), line=(shoulder, elbow)))
        for share in np.arange(0.34, 0.62, 0.04)
    )


def _elbow(stand: Stand, points: Array) -> Taken:
    line = (stand.place("shoulder_joint"), stand.place("hand_joint"))
    return around(points, stand.arm, Plane(stand.place("elbow_joint"), line=line))


def _wrist(stand: Stand, points: Array) -> Taken:
    line = (stand.place("elbow_joint"), stand.place("hand_joint"))
    return around(
        points, stand.arm, Plane(stand.place("elbow_joint").towards(stand.place("hand_joint"), 0.98), line=line)
    )


def _neck(stand: Stand, points: Array) -> Taken:
    """Two planes that meet in the neck points: through the nape behind, through the hollow in front."""
    ends = (stand.place("neck_point"), stand.place("right_neck_point"))
    middle = ends[0].towards(ends[1], 0.5)
    halves = []
    for name in ("nape", "hollow"):
        far = stand.place(name)
        side = far.of(points) - middle.of(points)
        halves.append(over(points, stand.neck, Plane(far, "x", (middle, far)), ends, side))
    back, front = halves
    line = np.vstack([back.line, front.line[::-1]])
    return Taken(back.value + front.value, line, back.at + front.at, back.slopes + front.slopes)


def _shoulder_width(stand: Stand, points: Array) -> Taken:
    left, right, nape = stand.place("shoulder_point"), stand.place("right_shoulder_point"), stand.place("nape")
    middle = left.towards(right, 0.5)
    plane = Plane(nape, "x", (middle, nape))
    return over(points, stand.shoulders, plane, (left, right), nape.of(points) - middle.of(points))


def _width(fold: str, side: Array) -> Callable[[Stand, Array], Taken]:
    def taken(stand: Stand, points: Array) -> Taken:
        ends = (stand.place(fold), stand.place(f"right_{fold}"))
        return over(points, stand.shoulders, Plane(ends[0], "y"), ends, side)

    return taken


def _armhole(stand: Stand, points: Array) -> Taken:
    line = (stand.place("armpit"), stand.place("shoulder_point"))
    return around(points, stand.armhole, Plane(line[0], "z", line))


def _down_the_back(stand: Stand, points: Array, top: Place, low: Place) -> Taken:
    """Along the middle of the back, following its hollow; from a place on it, or from its level, to another level."""
    line, low_y, top_y = stand.back, low.of(points)[1], top.of(points)[1]
    heights = points[line, 1]
    first = int(np.argmax(heights < top_y))
    last = int(np.argmax(heights < low_y))
    a = _at_level(points, line[first - 1], line[first], top_y)
    b = _at_level(points, line[last - 1], line[last], low_y)
    route = np.vstack([a, points[line[first:last]], b])
    legs = np.diff(route, axis=0)
    lengths = np.linalg.norm(legs, axis=1)
    ways = legs / np.maximum(lengths, 1e-9)[:, None]
    taken = Taken(float(lengths.sum()), route)
    slopes = np.vstack([-ways[0], ways[:-1] - ways[1:], ways[-1]])
    if last > first:
        taken.at.append(line[first:last])
        taken.slopes.append(slopes[1:-1])
    for end, place, at in ((0, top, first), (-1, low, last)):
        _lean_level(taken, points, slopes[end], place, (int(line[at - 1]), int(line[at])))
    return taken


def _at_level(points: Array, upper: int, lower: int, height: float) -> Array:
    a, b = points[upper], points[lower]
    return np.asarray(a + (a[1] - height) / (a[1] - b[1]) * (b - a))


def _lean_level(taken: Taken, points: Array, slope: Array, place: Place, edge: tuple[int, int]) -> None:
    """A point that slides along an edge of the back as its level moves."""
    a, b = points[list(edge)]
    height = place.of(points)[1]
    t = (a[1] - height) / (a[1] - b[1])
    along = slope @ (b - a) / (a[1] - b[1])
    taken.at.append(np.array(edge))
    taken.slopes.append(np.vstack([(1 - t) * (slope + along * UP), t * (slope + along * UP)]))
    taken.lean(place, -along * UP)


def _back_length(stand: Stand, points: Array) -> Taken:
    return _down_the_back(stand, points, stand.place("nape"), stand.place("waist"))


def _hip_depth(stand: Stand, points: Array) -> Taken:
    return _down_the_back(stand, points, stand.place("waist"), stand.place("seat"))


def _armhole_depth(stand: Stand, points: Array) -> Taken:
    return _down_the_back(stand, points, stand.place("nape"), stand.place("armpit"))


def _straight(stand: Stand, points: Array, names: tuple[str, ...]) -> Taken:
    places = [stand.place(name) for name in names]
    line = np.array([place.of(points) for place in places])
    legs = np.diff(line, axis=0)
    lengths = np.linalg.norm(legs, axis=1)
    taken = Taken(float(lengths.sum()), line)
    for i, way in enumerate(legs / lengths[:, None]):
        taken.lean(places[i + 1], way)
        taken.lean(places[i], -way)
    return taken


def _shoulder_length(stand: Stand, points: Array) -> Taken:
    ends = (stand.place("neck_point"), stand.place("shoulder_point"))
    return over(points, stand.shoulders, Plane(ends[0], "y", ends), ends, UP)


def _shoulder_slope(stand: Stand, points: Array) -> Taken:
    ends = (stand.place("neck_point"), stand.place("shoulder_point"))
    line = np.array([end.of(points) for end in ends])
    across, down = line[1, 0] - line[0, 0], line[0, 1] - line[1, 1]
    taken = Taken(float(np.arctan2(down, across)), line)
    slope = np.array([-down, -across, 0.0]) / (across**2 + down**2)
    taken.lean(ends[1], slope)
    taken.lean(ends[0], -slope)
    return taken


def _bust_point_depth(stand: Stand, points: Array) -> Taken:
    ends = (stand.place("neck_point"), stand.place("bust_point"))
    return over(points, stand.trunk, Plane(ends[0], "z", ends), ends, AHEAD)


def _height(stand: Stand, points: Array) -> Taken:
    top, low = stand.place("crown"), stand.place("floor")
    a, b = top.of(points), low.of(points)
    taken = Taken(float(a[1] - b[1]), np.array([[0, a[1], a[2]], [0, b[1], a[2]]]))
    taken.lean(top, UP)
    taken.lean(low, -UP)
    return taken


def _round(edges: str, plane: Callable[[Stand], Plane]) -> Callable[[Stand, Array], Taken]:
    return lambda stand, points: around(points, getattr(stand, edges), plane(stand))


LAID: Mapping[str, Callable[[Stand, Array], Taken]] = {
    "bust": _bust,
    "upper_chest": _round("trunk", _level("armpit", -BELOW_ARMPITS_MM)),
    "waist": _round("trunk", _level("waist")),
    "hip": _round("trunk", _level("seat")),
    "shoulder_width": _shoulder_width,
    "back_length": _back_length,
    "hip_depth": _hip_depth,
    "arm_length": lambda stand, points: _straight(stand, points, ("shoulder_point", "elbow", "wrist")),
    "neck": _neck,
    "back_width": _width("back_fold", BACK),
    "chest_width": _width("front_fold", AHEAD),
    "armhole_depth": _armhole_depth,
    "armhole_girth": _armhole,
    "shoulder_length": _shoulder_length,
    "shoulder_slope": _shoulder_slope,
    "upper_arm": _upper_arm,
    "elbow": _elbow,
    "wrist": _wrist,
    "height": _height,
    "bust_point_depth": _bust_point_depth,
    "bust_span": lambda stand, points: _straight(stand, points, ("bust_point", "right_bust_point")),
}
"""By the word of the tape; men's chest is laid as the bust is. Head girth and neck to crown have no place here."""
