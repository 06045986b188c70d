"""Truing a line again: an edge drawn anew as a fair line, square to its neighbours where it should be."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Vector, fair_line
from tapeline.pattern import Garment, Notch
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["true_line"]


def true_line(
    garment: Garment, piece: str, edge: str, *, square_at_start: bool = True, square_at_end: bool = True
) -> Garment:
    """An edge drawn anew through its own knots, square to the edge before it and to the edge after it.

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
    names = [one.name for one in whole.edges]
    if edge not in names:
        raise InputError(
            Problem(
                "edge-unknown",
                Severity.ERROR,
                f"the {spoken(piece)} has no edge {edge}",
                f"{piece}.{edge}",
                closest(edge, names),
            )
        )
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
    how = (f"a fair line through its own knots, {' and '.join(square) or 'leaving and arriving as before'}",)
    label = f"{piece}.{edge}"
    beside = tuple(filter(None, (story.label_of(f"{piece}.{one.name}") for one in (before, after))))
    story.edge(label, label, new.path, says="Drawn again, so that it runs on over its seams", how=how, needs=beside)
    return replace(with_pieces(garment, made), steps=story.steps)


def _nearest(neighbour: Vector, way: Vector) -> Vector:
    """Square to a neighbour, to the side to which the line runs anyway."""
    return neighbour.left if neighbour.left.dot(way) > 0 else neighbour.right
