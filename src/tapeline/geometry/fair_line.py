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
from functools import lru_cache
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
ANGLE_JUMP_HARMLESS = 1e-6
MOST_KEPT = 256
"""Lines that are remembered: those of a few drafts, with what was tried for them."""
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
    return _fair_line(tuple(knots), leave, arrive)


@lru_cache(maxsize=MOST_KEPT)
def _fair_line(knots: tuple[Point, ...], leave: Vector | None, arrive: Vector | None) -> Path:
    """From values alone: a line that a change did not touch is not looked for again."""
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
        out, into = self._hobby(start, end)
        return (
            Vector(self.far * out * math.cos(start), self.far * out * math.sin(start)),
            Vector(self.far * into * math.cos(end), self.far * into * math.sin(end)),
        )

    def end_curvatures(self, start: float, end: float) -> _Ends:
        """Curvature at both ends, 1/mm: two thirds of the cross product of the first two handles over the cube.

        And how fast each grows with the direction at the start, and with that at the end: this is most of the work of a
        draft, and measuring the slopes by trying would be twice as much again.
        """
        theta, phi = start - self.along, self.along - end
        sin_t, cos_t, sin_f, cos_f = math.sin(theta), math.cos(theta), math.sin(phi), math.cos(phi)
        sin_both, cos_both = sin_t * cos_f + cos_t * sin_f, cos_t * cos_f - sin_t * sin_f
        p, q, r = sin_t - sin_f / 16, sin_f - sin_t / 16, cos_t - cos_f
        swing = _ROOT2 * p * q * r
        swing_t = _ROOT2 * (cos_t * q * r - cos_t / 16 * p * r - sin_t * p * q)
        swing_f = _ROOT2 * (cos_f * p * r - cos_f / 16 * q * r + sin_f * p * q)
        below_out, below_into = 3 * (1 + _A * cos_t + _B * cos_f), 3 * (1 + _A * cos_f + _B * cos_t)
        out, into = (2 + swing) / below_out, (2 - swing) / below_into
        out_t, out_f = (swing_t + 3 * _A * sin_t * out) / below_out, (swing_f + 3 * _B * sin_f * out) / below_out
        into_t, into_f = (3 * _B * sin_t * into - swing_t) / below_into, (3 * _A * sin_f * into - swing_f) / below_into
        first, last = into * sin_both - sin_t, out * sin_both - sin_f
        at_first, at_last = 2 / (3 * self.far * out * out), 2 / (3 * self.far * into * into)
        return (
            at_first * first,
            at_last * last,
            at_first * (into_t * sin_both + into * cos_both - cos_t - 2 * first * out_t / out),
            -at_first * (into_f * sin_both + into * cos_both - 2 * first * out_f / out),
            at_last * (out_t * sin_both + out * cos_both - 2 * last * into_t / into),
            -at_last * (out_f * sin_both + out * cos_both - cos_f - 2 * last * into_f / into),
        )

    def _hobby(self, start: float, end: float) -> tuple[float, float]:
        """Lengths of both handles as shares of the span."""
        theta, phi = start - self.along, self.along - end
        sin_t, cos_t, sin_f, cos_f = math.sin(theta), math.cos(theta), math.sin(phi), math.cos(phi)
        swing = _ROOT2 * (sin_t - sin_f / 16) * (sin_f - sin_t / 16) * (cos_t - cos_f)
        return (2 + swing) / (3 * (1 + _A * cos_t + _B * cos_f)), (2 - swing) / (3 * (1 + _A * cos_f + _B * cos_t))


_Ends = tuple[float, float, float, float, float, float]
"""Curvature at the first end of a span and at its last; slopes of the one, by both directions, and of the other."""


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
        rows = [(*_slopes(now, k), -jump / scale) for k, jump in zip(unknowns, jumps, strict=True)]
        step = _banded(rows)
        damping = min(1.0, LONGEST_STEP / max(*map(abs, step), 1e-12))
        directions = list(directions)
        for k, change in zip(unknowns, step, strict=True):
            directions[k] += damping * change
    now = [span.end_curvatures(directions[k], directions[k + 1]) for k, span in enumerate(spans)]
    if max(abs(_jump(now, k) * scale) for k in unknowns) < ANGLE_JUMP_HARMLESS:
        return directions
    raise _not_fair("its points turn back on themselves")


def _jump(ends: Sequence[_Ends], knot: int) -> float:
    """How much curvature changes at a knot; at a free end: from one end of its span to the other."""
    if knot == 0:
        return ends[0][0] - ends[0][1]
    return ends[knot - 1][1] - (ends[knot][0] if knot < len(ends) else ends[knot - 1][0])


def _slopes(ends: Sequence[_Ends], knot: int) -> tuple[float, float, float]:
    """How the jump at a knot grows with the direction at the knot before it, its own, and that at the one after it."""
    if knot == 0:
        _, _, first_own, first_after, last_own, last_after = ends[0]
        return 0.0, first_own - last_own, first_after - last_after
    _, _, first_before, first_own, last_before, last_own = ends[knot - 1]
    if knot == len(ends):
        return last_before - first_before, last_own - first_own, 0.0
    _, _, own, after, _, _ = ends[knot]
    return last_before, last_own - own, -after


def _not_fair(reason: str) -> InputError:
    return InputError(
        Problem(
            "line-not-fair",
            Severity.ERROR,
            f"no fair line can be drawn: {reason}",
            hint="look at the tapes and sizes that place them",
        )
    )
