"""Small loops cut off a closed line: where an edge turns tighter than its allowance, the line beside it turns back."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from tapeline.geometry import Path, Segment
from tapeline.geometry.crossing import crossings

__all__ = ["without_loops"]

SHARED_MM = 1e-4
"""Two stretches that follow each other meet where one ends: that is no crossing."""
MOST_LOOPS = 12
"""A line with more loops than it has corners is beyond mending."""


def without_loops(outline: Path, longest_mm: float) -> Path:
    """The closed line with every loop up to a length in mm cut off where it begins; longer loops are left.

    A hand does the same: it draws both parallels until they cross, and rubs out what lies beyond.

    >>> from tapeline.geometry import Point
    >>> corners = [Point(0, 0), Point(0, 50), Point(30, 50), Point(30, 49), Point(29, 51), Point(60, 51), Point(60, 0)]
    >>> without_loops(Path.through(*corners, Point(0, 0)), 10).svg()
    'M0,0 L0,50 L29.5,50 L29,51 L60,51 L60,0 L0,0'
    """
    outline = Path(tuple(half for segment in outline.segments for half in _halves(segment)))
    for _ in range(MOST_LOOPS):
        whole = outline.length
        loops = [loop for loop in _loops(outline) if min(loop[1] - loop[0], whole - loop[1] + loop[0]) <= longest_mm]
        if not loops:
            break
        start, end = max(loops, key=lambda loop: min(loop[1] - loop[0], whole - loop[1] + loop[0]))
        if end - start <= whole / 2:
            outline = outline.part(0, start).joined(outline.part(end, whole))
        else:
            outline = outline.part(start, end)
    return outline


def _halves(segment: Segment) -> tuple[Segment, ...]:
    """A cubic can cross itself; its halves seldom do."""
    if len(segment.control_points) == 2 or segment.length < SHARED_MM:
        return (segment,)
    return segment.part(0, 0.5), segment.part(0.5, 1)


def _loops(outline: Path) -> Iterator[tuple[float, float]]:
    """From where to where along the line it comes back to itself."""
    starts = [0.0]
    for segment in outline.segments:
        starts.append(starts[-1] + segment.length)
    whole = starts[-1]
    for (i, one), (j, other) in combinations(enumerate(outline.segments), 2):
        for s, t in crossings(Path((one,)), Path((other,))):
            along, back = starts[i] + s, starts[j] + t
            if SHARED_MM < back - along < whole - SHARED_MM:
                yield along, back
