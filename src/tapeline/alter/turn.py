"""Turning a piece on the paper, so that its grain line is upright again after it was spread."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.opened import girth_kept, newest_points
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.geometry import Path, Rigid, Vector
from tapeline.pattern import Garment, Girth, Mark

__all__ = ["grain_upright"]

STILL = 1e-9
"""Radians; nothing is turned by less."""


def grain_upright(garment: Garment, piece: str) -> Garment:
    """The piece turned about the lower end of its grain line until that runs straight up and down.

    It is the same piece: every length, angle and notch is kept. Points of the construction are turned with it.

    Raises `InputError` (`piece-unknown`).

    >>> from tapeline.alter import Spread, spread, upright
    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> wide = spread(tee, "sleeve", [Spread(upright(tee, "sleeve.crown", out=cm(-3)), cm(3), hinge="hem")])
    >>> grain = grain_upright(wide, "sleeve").piece("sleeve").grain
    >>> abs(grain.start.x - grain.end.x) < 1e-9
    True
    """
    old = piece_named(garment, piece)
    low, high = sorted((old.grain.start, old.grain.end), key=lambda place: place.y)
    angle = (high - low).turn_to(Vector(0, 1))
    if abs(angle) < STILL:
        return garment
    move = Rigid.turn(angle, low)
    made = replace(
        old,
        edges=tuple(replace(edge, path=edge.path.moved(move)) for edge in old.edges),
        grain=old.grain.moved(move),
        marks=tuple(Mark(mark.name, mark.path.moved(move)) for mark in old.marks),
    )
    story = Story(garment)
    story.section(piece, f"The {spoken(piece)} is turned so that its grain is upright")
    upright = Path.through(made.grain.start, made.grain.end)
    line = story.line(f"{piece}.grain", "Upright again", ("turned about its lower end",), upright, ())
    went = {}
    for base, (label, point) in newest_points(garment, piece).items():
        how = (f"{spoken(label.rpartition('.')[2])}, turned with the piece",)
        went[label] = story.point(base, "Turned with the piece", how, move.point(point), (label, line))
    for before, after in zip(old.edges, made.edges, strict=True):
        label = f"{piece}.{before.name}"
        story.edge(label, label, after.path, says="Turned with the piece", how=("turned",), needs=(line,))
    turned = replace(with_pieces(garment, made), steps=story.steps)

    def girth(one: Girth) -> Girth:
        across = tuple(
            (name, went.get(f"{name}.{mark}", f"{name}.{mark}").rpartition(".")[2], times)
            for name, mark, times in one.across
        )
        return girth_kept(garment, turned, one, replace(one, across=across))

    return replace(turned, girths=tuple(map(girth, garment.girths)))
