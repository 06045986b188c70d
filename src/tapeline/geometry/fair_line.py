"""The fair line: the curve a practised hand draws with a French curve through given points.

John Hobby's choice of directions and handles ("Smooth, easy to compute interpolating splines", Discrete &
Computational Geometry 1, 1986, pp. 123-140) gives a line with one direction at each knot; Newton steps on those
directions then make the curvature continuous as well, so that the eye finds no place where the bend changes at once.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from tapeline.geometry.path import Path
from tapeline.geometry.point import Point, Vector
from tapeline.geometry.segment import Cubic
from tapeline.problems import InputError, Problem, Severity

__all__ = ["fair_line"]

CURVATURE_JUMP = 1e-10
"""Curvature times span length may differ by this much at a knot: machine noise, nothing to see."""
MOST_STEPS = 40
"""Newton needs 3 to 6; more means that the knots turn back on themselves."""
LONGEST_STEP = 0.3
"""Radians; keeps a first step from wild knots inside the range where the method converges."""
PROBE = 1e-6
"""Radians; step of the numerical derivative."""
ANGLE_JUMP_HARMLESS = 1e-6
_ROOT2 = math.sqrt(2)
_A, _B = (math.sqrt(5) - 1) / 2, (3 - math.sqrt(5)) / 2
"""The constants of Hobby's formula for the length of a handle."""


def fair_line(knots: Sequence[Point], leave: Vector | None = None, arrive: Vector | None = None) -> Path:
    """A curve through the knots, with continuous curvature, in mm.

    `leave` and `arrive` are the directions at the two ends. A free end bends as its first span does (near a circle);
    two knots with both ends free are joined by a straight line.
    Raises `InputError` (`line-not-fair`) when two knots coincide or the knots turn back so that no such line exists.

    >>> quarter = fair_line([Point(100, 0), Point(0, 100)], leave=Vector(0, 1), arrive=Vector(-1, 0))
    >>> abs(quarter.length - 50 * math.pi) < 0.05
    True
    """
    z = [complex(p.x, p.y) for p in knots]
    chords = [b - a for a, b in pairwise(z)]
    if not chords or min(map(abs, chords)) < 1e-6:
        raise _not_fair("two of its points fall together")
    if len(chords) == 1 and leave is None and arrive is None:
        return Path.through(*knots)
    first = None if leave is None else _turn(complex(leave.x, leave.y) / chords[0])
    last = None if arrive is None else _turn(complex(arrive.x, arrive.y) / chords[-1])
    try:
        directions = _hobby_directions(chords, first, last)
        directions = _even_curvature(chords, directions, free_start=leave is None, free_end=arrive is None)
    except (np.linalg.LinAlgError, ZeroDivisionError):
        raise _not_fair("its points turn back on themselves") from None
    handles = [_handles(c, a, b) for c, a, b in zip(chords, directions, directions[1:], strict=False)]
    return Path(
        tuple(
            Cubic(start, start + Vector(out.real, out.imag), end + Vector(-into.real, -into.imag), end)
            for start, end, (out, into) in zip(knots, knots[1:], handles, strict=False)
        )
    )


def _turn(ratio: complex) -> float:
    return cmath.phase(ratio)


def _hobby_directions(chords: list[complex], first: float | None, last: float | None) -> list[float]:
    """Direction in radians at each knot, by Hobby's mock curvature (his equations for tension 1, curl 1)."""
    n = len(chords)
    lengths = [abs(c) for c in chords]
    turns = [0.0, *(_turn(b / a) for a, b in pairwise(chords)), 0.0]
    matrix, right = np.zeros((n + 1, n + 1)), np.zeros(n + 1)
    # Unknown k is the direction at knot k relative to the chord that leaves it (at the last knot: that arrives).
    for k in range(1, n):
        before, after = 1 / lengths[k - 1], 1 / lengths[k]
        matrix[k, k - 1 : k + 2] = before, 2 * (before + after), after
        right[k] = -2 * turns[k] * before - turns[k + 1] * after
    if first is None:
        matrix[0, 0], matrix[0, 1], right[0] = 1, 1, -turns[1]
    else:
        matrix[0, 0], right[0] = 1, first
    if last is None:
        matrix[n, n - 1], matrix[n, n] = 1, 1
    else:
        matrix[n, n], right[n] = 1, last
    theta = np.linalg.solve(matrix, right)
    heading = cmath.phase(chords[0])
    directions = []
    for k in range(n + 1):
        if 0 < k < n:
            heading += turns[k]
        directions.append(heading + float(theta[k]))
    return directions


def _handles(chord: complex, start: float, end: float) -> tuple[complex, complex]:
    """Hobby's handles for a span that leaves and arrives in two directions."""
    along = cmath.phase(chord)
    theta, phi = _wrap(start - along), _wrap(along - end)
    sin_t, cos_t, sin_f, cos_f = math.sin(theta), math.cos(theta), math.sin(phi), math.cos(phi)
    size = abs(chord) / 3
    swing = _ROOT2 * (sin_t - sin_f / 16) * (sin_f - sin_t / 16) * (cos_t - cos_f)
    out = size * (2 + swing) / (1 + _A * cos_t + _B * cos_f)
    into = size * (2 - swing) / (1 + _A * cos_f + _B * cos_t)
    return cmath.rect(out, start), cmath.rect(into, end)


def _wrap(angle: float) -> float:
    return (angle + math.pi) % (2 * math.pi) - math.pi


def _end_curvatures(chord: complex, start: float, end: float) -> tuple[float, float]:
    out, into = _handles(chord, start, end)
    between = chord - into - out
    # Curvature of a cubic at its ends: two thirds of the cross product of the first two handles over the cube.
    return (
        2 / 3 * (out.conjugate() * between).imag / abs(out) ** 3,
        2 / 3 * (between.conjugate() * into).imag / abs(into) ** 3,
    )


def _even_curvature(chords: list[complex], directions: list[float], *, free_start: bool, free_end: bool) -> list[float]:
    """Newton on the directions that are not given, until curvature runs on through every knot."""
    n = len(chords)
    scale = sum(map(abs, chords)) / n
    unknowns = [k for k in range(n + 1) if 0 < k < n or (k == 0 and free_start) or (k == n and free_end)]
    if not unknowns:
        return directions

    def jumps(ends: list[tuple[float, float]]) -> np.ndarray:
        inner = {k: ends[k - 1][1] - ends[k][0] for k in range(1, n)}
        inner |= {0: ends[0][0] - ends[0][1], n: ends[-1][0] - ends[-1][1]}
        return np.array([inner[k] * scale for k in unknowns])

    ends = [_end_curvatures(c, directions[k], directions[k + 1]) for k, c in enumerate(chords)]
    for _ in range(MOST_STEPS):
        now = jumps(ends)
        if np.abs(now).max() < CURVATURE_JUMP:
            return directions
        slope = np.empty((len(unknowns), len(unknowns)))
        for column, k in enumerate(unknowns):
            probed = list(ends)
            if k > 0:
                probed[k - 1] = _end_curvatures(chords[k - 1], directions[k - 1], directions[k] + PROBE)
            if k < n:
                probed[k] = _end_curvatures(chords[k], directions[k] + PROBE, directions[k + 1])
            slope[:, column] = (jumps(probed) - now) / PROBE
        step = np.linalg.solve(slope, -now)
        step *= min(1.0, LONGEST_STEP / max(float(np.abs(step).max()), 1e-12))
        directions = list(directions)
        for k, change in zip(unknowns, step, strict=True):
            directions[k] += float(change)
        ends = [_end_curvatures(c, directions[k], directions[k + 1]) for k, c in enumerate(chords)]
    if float(np.abs(jumps(ends)).max()) < ANGLE_JUMP_HARMLESS:
        return directions
    raise _not_fair("its points turn back on themselves")


def _not_fair(reason: str) -> InputError:
    return InputError(
        Problem(
            "line-not-fair",
            Severity.ERROR,
            f"no fair line can be drawn: {reason}",
            hint="look at the tapes and sizes that place them",
        )
    )
