"""The fair line: the curve a practised hand draws with a French curve through given points.

John Hobby's choice of directions and handles ("Smooth, easy to compute interpolating splines", Discrete &
Computational Geometry 1, 1986, pp. 123-140) gives a line with one direction at each knot; Newton steps on those
directions then make the curvature continuous as well, so that the eye finds no place where the bend changes at once.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

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
    first = None if leave is None else cmath.phase(complex(leave.x, leave.y) / chords[0])
    last = None if arrive is None else cmath.phase(complex(arrive.x, arrive.y) / chords[-1])
    try:
        directions = _hobby_directions(chords, first, last)
        spans = [_Span(abs(c), cmath.phase(c)) for c in chords]
        directions = _even_curvature(spans, directions, free_start=leave is None, free_end=arrive is None)
    except ZeroDivisionError:
        raise _not_fair("its points turn back on themselves") from None
    handles = [s.handles(a, b) for s, a, b in zip(spans, directions, directions[1:], strict=False)]
    return Path(
        tuple(
            Cubic(start, start + out, end + -into, end)
            for start, end, (out, into) in zip(knots, knots[1:], handles, strict=False)
        )
    )


@dataclass(frozen=True, slots=True)
class _Span:
    """What lies between two knots: how far it is, mm, and which way, radians."""

    far: float
    along: float

    def handles(self, start: float, end: float) -> tuple[Vector, Vector]:
        """Hobby's handles for a span that leaves and arrives in two directions."""
        out, into, _ = self._hobby(start, end)
        return (
            Vector(self.far * out * math.cos(start), self.far * out * math.sin(start)),
            Vector(self.far * into * math.cos(end), self.far * into * math.sin(end)),
        )

    def end_curvatures(self, start: float, end: float) -> tuple[float, float]:
        """Curvature at both ends, 1/mm: two thirds of the cross product of the first two handles over the cube."""
        out, into, (sin_t, sin_f, sin_both) = self._hobby(start, end)
        return (
            2 / 3 * (into * sin_both - sin_t) / (out * out * self.far),
            2 / 3 * (out * sin_both - sin_f) / (into * into * self.far),
        )

    def _hobby(self, start: float, end: float) -> tuple[float, float, tuple[float, float, float]]:
        """Lengths of both handles as shares of the span; sines of the angles to it, and of their sum."""
        theta, phi = start - self.along, self.along - end
        sin_t, cos_t, sin_f, cos_f = math.sin(theta), math.cos(theta), math.sin(phi), math.cos(phi)
        swing = _ROOT2 * (sin_t - sin_f / 16) * (sin_f - sin_t / 16) * (cos_t - cos_f)
        out = (2 + swing) / (3 * (1 + _A * cos_t + _B * cos_f))
        into = (2 - swing) / (3 * (1 + _A * cos_f + _B * cos_t))
        return out, into, (sin_t, sin_f, sin_t * cos_f + cos_t * sin_f)


def _hobby_directions(chords: list[complex], first: float | None, last: float | None) -> list[float]:
    """Direction in radians at each knot, by Hobby's mock curvature (his equations for tension 1, curl 1)."""
    n = len(chords)
    lengths = [abs(c) for c in chords]
    turns = [0.0, *(cmath.phase(b / a) for a, b in pairwise(chords)), 0.0]
    # Unknown k is the direction at knot k relative to the chord that leaves it (at the last knot: that arrives).
    rows = [(0.0, 1.0, 0.0, first) if first is not None else (0.0, 1.0, 1.0, -turns[1])]
    for k in range(1, n):
        before, after = 1 / lengths[k - 1], 1 / lengths[k]
        rows.append((before, 2 * (before + after), after, -2 * turns[k] * before - turns[k + 1] * after))
    rows.append((0.0, 1.0, 0.0, last) if last is not None else (1.0, 1.0, 0.0, 0.0))
    heading = cmath.phase(chords[0])
    directions = []
    for k, theta in enumerate(_banded(rows)):
        if 0 < k < n:
            heading += turns[k]
        directions.append(heading + theta)
    return directions


def _banded(rows: Sequence[tuple[float, float, float, float]]) -> list[float]:
    """Solves equations that each hold one unknown and its two neighbours: (before, own, after, right side).

    Raises `ZeroDivisionError` where they do not settle it.
    """
    kept: list[tuple[float, float]] = []
    for before, own, after, right in rows:
        share, value = kept[-1] if kept else (0.0, 0.0)
        pivot = own - before * share
        kept.append((after / pivot, (right - before * value) / pivot))
    found = [0.0]
    for share, value in reversed(kept):
        found.append(value - share * found[-1])
    return found[:0:-1]


def _even_curvature(
    spans: Sequence[_Span], directions: list[float], *, free_start: bool, free_end: bool
) -> list[float]:
    """Newton on the directions that are not given, until curvature runs on through every knot."""
    n = len(spans)
    scale = sum(span.far for span in spans) / n
    unknowns = range(0 if free_start else 1, n + 1 if free_end else n)
    if not unknowns:
        return directions
    for _ in range(MOST_STEPS):
        now = [span.end_curvatures(directions[k], directions[k + 1]) for k, span in enumerate(spans)]
        jumps = [_jump(now, k) * scale for k in unknowns]
        if max(map(abs, jumps)) < CURVATURE_JUMP:
            return directions
        # Every direction moves the curvatures of the spans at its two sides only.
        left = [span.end_curvatures(directions[k] + PROBE, directions[k + 1]) for k, span in enumerate(spans)]
        right = [span.end_curvatures(directions[k], directions[k + 1] + PROBE) for k, span in enumerate(spans)]
        rows = []
        for k, jump in zip(unknowns, jumps, strict=True):
            before, own, after = _slopes(now, left, right, k)
            rows.append((before * scale / PROBE, own * scale / PROBE, after * scale / PROBE, -jump))
        step = _banded(rows)
        damping = min(1.0, LONGEST_STEP / max(*map(abs, step), 1e-12))
        directions = list(directions)
        for k, change in zip(unknowns, step, strict=True):
            directions[k] += damping * change
    now = [span.end_curvatures(directions[k], directions[k + 1]) for k, span in enumerate(spans)]
    if max(abs(_jump(now, k) * scale) for k in unknowns) < ANGLE_JUMP_HARMLESS:
        return directions
    raise _not_fair("its points turn back on themselves")


_Ends = list[tuple[float, float]]


def _jump(ends: _Ends, knot: int) -> float:
    """How much curvature changes at a knot; at a free end: from one end of its span to the other."""
    if knot == 0:
        return ends[0][0] - ends[0][1]
    return ends[knot - 1][1] - (ends[knot][0] if knot < len(ends) else ends[knot - 1][0])


def _slopes(now: _Ends, left: _Ends, right: _Ends, knot: int) -> tuple[float, float, float]:
    """How the jump at a knot answers to a probe of the direction before it, its own, and the one after it."""
    before = own = after = 0.0
    at = _jump(now, knot)
    if knot > 0:
        before = _jump([*now[: knot - 1], left[knot - 1], *now[knot:]], knot) - at
        own += _jump([*now[: knot - 1], right[knot - 1], *now[knot:]], knot) - at
    if knot < len(now):
        own += _jump([*now[:knot], left[knot], *now[knot + 1 :]], knot) - at
        after = _jump([*now[:knot], right[knot], *now[knot + 1 :]], knot) - at
    return before, own, after


def _not_fair(reason: str) -> InputError:
    return InputError(
        Problem(
            "line-not-fair",
            Severity.ERROR,
            f"no fair line can be drawn: {reason}",
            hint="look at the tapes and sizes that place them",
        )
    )
