"""Both parts of a piece that was cut, and the girths that are measured across them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from tapeline.alter.outline_cut import OutlineCut
from tapeline.alter.story import Story, spoken
from tapeline.pattern import Girth, Piece, width_at

__all__ = ["Halves", "split_girths"]

ON_THE_LEVEL_MM = 0.01


@dataclass(frozen=True, slots=True)
class Halves:
    """A piece that was cut, what was cut off, and the rest, which keeps its name."""

    whole: Piece
    off: Piece
    rest: Piece
    found: OutlineCut


def split_girths(story: Story, halves: Halves) -> tuple[Girth, ...]:
    """The girths across both parts where both lie at their level; nothing is counted twice.

    The points by which they are measured are drawn on the new piece too.
    """
    points = _level_points(story, halves)
    return tuple(replace(girth, across=tuple(_across(story, halves, points, girth))) for girth in story.garment.girths)


def _level_points(story: Story, halves: Halves) -> dict[str, str]:
    """By level: the label of its point on the new piece, where that is as high or as low as the level."""
    made: dict[str, str] = {}
    for girth in story.garment.girths:
        for piece, mark, _ in girth.across:
            point = story.garment.points.get(f"{piece}.{mark}")
            if piece != halves.whole.name or mark in made or point is None:
                continue
            if width_at(halves.off, point) > ON_THE_LEVEL_MM:
                how = (f"as {spoken(piece)} {spoken(mark)}",)
                label = f"{halves.off.name}.{mark}"
                made[mark] = story.point(label, f"The level of the {girth.name}", how, point, (f"{piece}.{mark}",))
    return made


def _across(story: Story, halves: Halves, points: dict[str, str], girth: Girth) -> Iterator[tuple[str, str, float]]:
    off, rest, found = halves.off, halves.rest, halves.found
    for piece, mark, times in girth.across:
        if piece != rest.name:
            yield piece, mark, times
            continue
        level = story.garment.points.get(f"{piece}.{mark}")
        if level is None:
            # Measured along an edge.
            yield from ((off.name, part.edge.name, times) for part in found.beyond if part.was == mark)
            yield from ((rest.name, part.edge.name, times) for part in found.kept if part.was == mark)
            continue
        on_the_cut = all(abs(knot.y - level.y) < ON_THE_LEVEL_MM for knot in found.path.knots)
        wide = width_at(rest, level) > ON_THE_LEVEL_MM
        if wide or mark not in points:
            yield piece, mark, times
        if mark in points and not (on_the_cut and wide):
            yield off.name, points[mark].partition(".")[2], times
