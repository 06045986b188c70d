"""A hem: an edge that is turned up, by a width of its own."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.extend import free_edge
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, edge_named, piece_named, spoken
from tapeline.alter.stretch import more_than_nothing
from tapeline.lengths import Length
from tapeline.pattern import EdgeKind, Garment

__all__ = ["hem"]


def hem(garment: Garment, piece: str, edge: str, width: Length) -> Garment:
    """An edge that is sewn to nothing is turned up by a width, whatever the docket says of hems.

    Outline, seams and names stay; the allowance is cut so that it lies flat when it is turned up, mitred at slits, as
    finishing does with every hem.

    Raises `InputError`: `piece-unknown`, `edge-unknown`, `edge-sewn` (what is sewn or on the fold is not turned up),
    `fullness-not-more`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> hem(tee, "back", "hem", cm(4)).piece("back").edge("hem").allowance_mm
    40.0
    """
    whole = piece_named(garment, piece)
    old = edge_named(whole, edge)
    more_than_nothing(width, f"{piece}.{edge}")
    free_edge(garment, whole, old, (EdgeKind.HEM, EdgeKind.NEATENED))
    new = replace(old, kind=EdgeKind.HEM, allowance_mm=width.mm)
    made = replace(whole, edges=tuple(new if one is old else one for one in whole.edges))
    story = Story(garment)
    story.section(piece, f"The {spoken(edge)} of the {spoken(piece)} is turned up by {width.show()}")
    label = f"{piece}.{edge}"
    how = ("the line stays; ", width, " are cut on beyond it")
    story.edge(label, label, old.path, says="Turned up along this line", how=how, needs=())
    return replace(with_pieces(garment, made), steps=story.steps)
