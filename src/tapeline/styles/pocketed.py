"""A top with a pocket on its front."""

from __future__ import annotations

from dataclasses import replace

from tapeline.blocks.pocket import pocket
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.pocket_place import OnFront
from tapeline.draft import Draft, Place
from tapeline.pattern import Piece
from tapeline.styles.top import Top

__all__ = ["pocketed"]


def pocketed(d: Draft, c: PocketChoices, made: Top) -> tuple[Top, tuple[Piece, ...]]:
    """The same top, its front marked for the pocket, and the pocket; no piece where none was chosen."""
    front, half = made.body.front, made.points.front
    on = OnFront(
        half.chest_level,
        Place(front.hem.path.end, "front.hem_centre"),
        front.hem,
        made.frame.arm_length,
        front.armhole,
        d.sizes["front_line"].length,
    )
    sewn_on = pocket(d, c, on)
    if sewn_on is None:
        return made, ()
    marked = replace(front, piece=front.piece.marked(marks=(sewn_on.mark,)))
    return replace(made, body=replace(made.body, front=marked)), (sewn_on.piece,)
