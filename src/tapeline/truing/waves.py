"""Waves: a neckline bends one way from its centre to the shoulder, a raglan seam out and then in; else that is said."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from tapeline.geometry import Path
from tapeline.pattern import Garment, Piece
from tapeline.problems import Problem, Severity

__all__ = ["wave_problems"]

UNSEEN = math.radians(1)
"""As much as a line may bend where it crosses a seam; less, nobody sees."""


RUNS_IN = math.radians(5)
"""A raglan seam turns from round to hollow near its notch, not at it: so much is drawn on every body."""


def turned(path: Path) -> tuple[float, float]:
    """How far a line turns to the left, and how far to the right, in radians.

    >>> from tapeline.geometry import Point, fair_line
    >>> wave = fair_line([Point(0, 0), Point(10, 5), Point(20, -5), Point(30, 0)])
    >>> all(way > 0.5 for way in turned(wave))
    True
    """
    # Between two inflections a curve turns one way only: what it turns is told by the ways it runs there; the way
    # halfway between them tells more than half a turn from less.
    ways = [segment.direction(t) for segment in path.segments for t in _halved([0.0, *segment.inflections(), 1.0])]
    turns = [a.turn_to(b) for a, b in pairwise(ways)]
    return sum(t for t in turns if t > 0), -sum(t for t in turns if t < 0)


def _halved(marks: list[float]) -> list[float]:
    return sorted([*marks, *((a + b) / 2 for a, b in pairwise(marks))])


def wave_problems(garment: Garment) -> Iterator[Problem]:
    """Necklines with a wave, and raglan seams that turn back."""
    for piece in garment.pieces:
        yield from _raglan(piece)
        for edge in piece.edges:
            if edge.name == "neckline" and piece.on_fold and (back := min(turned(edge.path))) > UNSEEN:
                yield Problem(
                    "neckline-wave",
                    Severity.DOUBT,
                    f"the neckline of the {piece.name} turns back by {math.degrees(back):.0f} "
                    "degrees: a wave, where one sweep is meant",
                    f"{piece.name}.neckline",
                    "widen it less, or lower it more where it waves: a neckline is wide and deep together",
                )


def _raglan(piece: Piece) -> Iterator[Problem]:
    """The seam as it runs on the body: round above its notch, hollow below."""
    for edge in piece.edges:
        notches = piece.notches_on(edge.name)
        if edge.name != "raglan" or piece.name not in ("front", "back") or len(notches) != 1:
            continue
        upper, lower = edge.path.part(0, notches[0].at_mm), edge.path.part(notches[0].at_mm, edge.length)
        back = max(turned(upper)[0], turned(lower)[1])
        if back > RUNS_IN:
            yield Problem(
                "raglan-wave",
                Severity.DOUBT,
                f"the raglan seam of the {piece.name} turns back by {math.degrees(back):.1f} degrees near its notch, "
                "where one bend out and one in are meant",
                f"{piece.name}.raglan",
                "baste it and look at it on the body; where shoulders are corrected, by less",
            )
