"""Arcs, bulges, ellipses and splines as chords."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable, Sequence
from itertools import pairwise

__all__ = ["arc", "bulged", "ellipse", "spline"]

Place = tuple[float, float]
DEEPEST = 10
"""How often a stretch is halved."""
MOST_CHORDS = 3_000
"""Of one curve."""


def arc(centre: Place, radius: float, start: float, end: float, within: float) -> list[Place]:
    """Counter-clockwise from one angle in radians to another; chords leave it by no more than `within`."""

    def at(angle: float) -> Place:
        return centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle)

    turn = (end - start) % math.tau or math.tau
    # The sagitta of a chord is r (1 - cos(half its angle)).
    step = 2 * math.acos(max(-1.0, 1 - min(within / radius, 1.0))) if radius > 0 else math.tau
    count = min(2000, max(2, math.ceil(turn / max(step, 1e-4))))
    return [at(start + turn * i / count) for i in range(count + 1)]


def bulged(a: Place, b: Place, bulge: float, within: float) -> list[Place]:
    """From a to b by an arc; its bulge is the tangent of a quarter of its angle, to the right of the way when positive.

    >>> [round(y, 6) for _, y in bulged((0.0, 0.0), (2.0, 0.0), 1, 10)]
    [0.0, -1.0, 0.0]
    """
    chord = math.dist(a, b)
    if bulge == 0 or chord == 0:
        return [a, b]
    radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
    # From the middle of the chord to the centre, to the left of the way.
    up = chord * (1 - bulge * bulge) / (4 * bulge)
    left = (-(b[1] - a[1]) / chord, (b[0] - a[0]) / chord)
    centre = ((a[0] + b[0]) / 2 + left[0] * up, (a[1] + b[1]) / 2 + left[1] * up)
    from_, to = (math.atan2(p[1] - centre[1], p[0] - centre[0]) for p in (a, b))
    points = arc(centre, radius, from_, to, within) if bulge > 0 else arc(centre, radius, to, from_, within)[::-1]
    return [a, *points[1:-1], b]


def ellipse(centre: Place, major: Place, ratio: float, span: tuple[float, float], within: float) -> list[Place]:
    """Part of an ellipse between two parameters."""

    def at(t: float) -> Place:
        along, aside = math.cos(t), ratio * math.sin(t)
        return centre[0] + major[0] * along - major[1] * aside, centre[1] + major[1] * along + major[0] * aside

    turn = (span[1] - span[0]) % math.tau or math.tau
    return _halved(at, [span[0] + turn * i / 8 for i in range(9)], within)


def spline(
    degree: int, knots: Sequence[float], controls: Sequence[Place], weights: Sequence[float], within: float
) -> list[Place]:
    """A spline by de Boor's rule; its numbers must fit together, or it raises `ValueError`."""
    count = len(controls)
    if count > MOST_CHORDS:
        raise ValueError(f"it has more than {MOST_CHORDS} control points")
    if not 1 <= degree <= 11 or count <= degree or len(knots) != count + degree + 1:
        raise ValueError("its knots and control points do not fit together")
    if any(b < a for a, b in pairwise(knots)) or any(weight <= 0 for weight in weights):
        raise ValueError("its knots run backward, or a weight is not positive")
    if len(weights) not in (0, count):
        raise ValueError("it has weights for some of its control points only")
    heavy = weights or [1.0] * count
    lifted = [(x * w, y * w, w) for (x, y), w in zip(controls, heavy, strict=True)]

    def at(t: float) -> Place:
        span = min(max(bisect_right(knots, t) - 1, degree), count - 1)
        near = lifted[span - degree : span + 1]
        for level in range(1, degree + 1):
            for j in range(degree, level - 1, -1):
                low, high = knots[span - degree + j], knots[span + 1 + j - level]
                share = (t - low) / (high - low) if high > low else 0.0
                near[j] = _mixed(near[j - 1], near[j], share)
        x, y, w = near[degree]
        return x / w, y / w

    stops = sorted({*knots[degree : count + 1]})
    if len(stops) < 2:
        raise ValueError("its knots are all one")
    return _halved(at, stops, within)


def _mixed(a: tuple[float, float, float], b: tuple[float, float, float], t: float) -> tuple[float, float, float]:
    return a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t


def _halved(at: Callable[[float], Place], stops: Sequence[float], within: float) -> list[Place]:
    """Chords between the stops, halved until a quarter, the half and three quarters lie near enough."""
    found = [at(stops[0])]

    def walk(t0: float, p0: Place, t1: float, p1: Place, depth: int) -> None:
        middle = (t0 + t1) / 2
        half = at(middle)
        looked = (at((t0 + middle) / 2), half, at((middle + t1) / 2))
        if depth < DEEPEST and any(_off(p, p0, p1) > within for p in looked):
            walk(t0, p0, middle, half, depth + 1)
            walk(middle, half, t1, p1, depth + 1)
        elif len(found) > MOST_CHORDS:
            raise ValueError(f"it takes more than {MOST_CHORDS} chords")
        else:
            found.append(p1)

    for a, b in pairwise(stops):
        walk(a, found[-1], b, at(b), 0)
    return found


def _off(p: Place, a: Place, b: Place) -> float:
    """From a point to a chord."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    t = min(max(((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square, 0.0), 1.0) if square > 0 else 0.0
    return math.dist(p, (a[0] + dx * t, a[1] + dy * t))
