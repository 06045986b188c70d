"""Truing a line again: an edge drawn anew as a fair line, square to its neighbours where it should be."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.opened import girth_kept
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, edge_named, piece_named, spoken
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Vector, fair_line
from tapeline.pattern import Garment, Notch

__all__ = ["true_line"]


def true_line(
    garment: Garment,
    piece: str,
    edge: str,
    *,
    square_at_start: bool = True,
    square_at_end: bool = True,
    by_its_middle: bool = False,
) -> Garment:
    """An edge drawn anew through its own knots, square to the edge before it and to the edge after it.

    By its middle alone it is one round without the small waves that many cuts leave.

    Where it need not be square it leaves or arrives as it did. Its ends stay, and so does every other edge; a notch
    stays at its share of the length. Two pieces whose lines are square to the seam between them run on over it.

    Raises `InputError`: `piece-unknown`, `edge-unknown`, `line-not-fair` where there is no such line, and
    `outline-would-cross`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> again = true_line(tee, "back", "hem")
    >>> abs(again.piece("back").edge("hem").length - tee.piece("back").edge("hem").length) < 1e-6
    True
    """
    whole = piece_named(garment, piece)
    edge_named(whole, edge)
    names = [one.name for one in whole.edges]
    at = names.index(edge)
    before, old, after = whole.edges[at - 1], whole.edges[at], whole.edges[(at + 1) % len(names)]
    leave = _nearest(before.path.arrives, old.path.leaves) if square_at_start else old.path.leaves
    arrive = _nearest(after.path.leaves, old.path.arrives) if square_at_end else old.path.arrives
    new = replace(old, path=fair_line(old.path.knots, leave, arrive))
    scale = new.length / old.length

    def moved(notch: Notch) -> Notch:
        return replace(notch, at_mm=notch.at_mm * scale) if notch.edge == edge else notch

    made = replace(
        whole,
        edges=tuple(new if one is old else one for one in whole.edges),
        notches=tuple(moved(notch) for notch in whole.notches),
    )
    title = f"The {spoken(edge)} of the {spoken(piece)} is trued"
    uncrossed(made, title, "let it leave or arrive as it did, or true its neighbours first")
    story = Story(garment)
    story.section(piece, title)
    square = [
        f"square to the {spoken(one.name)}"
        for one, wanted in ((before, square_at_start), (after, square_at_end))
        if wanted
    ]
    knots_said = "its ends and its middle" if by_its_middle else "its own knots"
    how = (f"a fair line through {knots_said}, {' and '.join(square) or 'leaving and arriving as before'}",)
    label = f"{piece}.{edge}"
    beside = tuple(filter(None, (story.label_of(f"{piece}.{one.name}") for one in (before, after))))
    story.edge(label, label, new.path, says="Drawn again, so that it runs on over its seams", how=how, needs=beside)
    trued = replace(with_pieces(garment, made), steps=story.steps)
    return replace(trued, girths=tuple(girth_kept(garment, trued, girth) for girth in garment.girths))


def _nearest(neighbour: Vector, way: Vector) -> Vector:
    """Square to a neighbour, to the side to which the line runs anyway."""
    return neighbour.left if neighbour.left.dot(way) > 0 else neighbour.right
