"""A top with a pocket on its front."""

from __future__ import annotations

from dataclasses import replace

from tapeline.blocks.pocket import pocket
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.pocket_place import OnFront
from tapeline.draft import Draft, Place
from tapeline.pattern import Piece
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.top import Top

__all__ = ["pocketed"]


def pocketed(d: Draft, c: PocketChoices, made: Top, *, opened: bool = False) -> tuple[Top, tuple[Piece, ...]]:
    """The same top, its front marked for the pocket, and the pocket; no piece where none was chosen.

    Raises `InputError` (`kangaroo-on-opening`) for a pocket across a front that is `opened`.
    """
    if opened and c.kind is PocketKind.KANGAROO:
        raise InputError(
            Problem(
                "kangaroo-on-opening",
                Severity.ERROR,
                "a kangaroo pocket lies across the front, and this front opens",
                "garment.pocket.kind",
                "choose hips or breast in garment.pocket.kind. Nothing was drafted.",
            )
        )
    front, half = made.body.front, made.points.front
    on = OnFront(
        half.chest_level,
        Place(front.centre.path.start, "front.hem_centre"),
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
