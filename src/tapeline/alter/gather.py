"""Gathers: fullness added between two places of an edge, held by a partner that stays as long as it was."""

from __future__ import annotations

import math
from dataclasses import replace

from tapeline.alter.fan import fanned
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.alter.stretch import (
    Stretch,
    cuts_between,
    fuller_seams,
    is_sewn,
    marked_on_both,
    more_than_nothing,
    stretch_length,
)
from tapeline.geometry.beside import beside
from tapeline.lengths import Length
from tapeline.pattern import Garment, Mark

__all__ = ["gather"]

CUT_EVERY_MM = 25.0
"""So often the paper is cut: opened at many lines by little each, the edge keeps its character."""
STITCHED_MM = 3.0
"""The mark runs this far inside the seam line, as a row of gathering stitches does (common practice, no source)."""


def gather(
    garment: Garment, piece: str, along: Stretch, by: Length, *, toward: Stretch, hinged: bool = True
) -> Garment:
    """Fullness is added to a stretch of an edge and gathered into its partner, which stays as it is.

    The paper is cut from the stretch to another across from it, and opened evenly. Hinged there, only the gathered edge
    grows; not hinged, the piece is as much wider all the way. Both ends of the stretch are notched on the edge and on
    its partner, the gathers are marked inside the edge, and the seam says how much longer it is meant to be, and the
    ratio. Of a piece on the fold, `by` is what is added to the half.

    Args:
        garment: What is altered.
        piece: The piece that gets fuller.
        along: Where it is gathered: an edge that is sewn.
        by: How much longer it gets.
        toward: Where the cuts run to.
        hinged: Whether that stays as long as it is.

    Raises `InputError`: as `spread`, and `stretch-unclear`, `edge-not-sewn`, `fullness-against-ease`,
    `fullness-not-more` (less than nothing).

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> full = gather(tee, "front", Stretch("shoulder", 0.2, 0.8), cm(6), toward=Stretch("hem", 0.3, 0.9))
    >>> seam = next(seam for seam in full.seams if seam.name == "shoulder")
    >>> round(abs(seam.ease.mm)), seam.reason
    (60, 'the shoulder of the front is gathered, 1.8 to 1')
    """
    whole = piece_named(garment, piece)
    long = stretch_length(whole, along)
    is_sewn(garment, piece, along.edge)
    more_than_nothing(by, f"{piece}.{along.edge}")
    number = max(1, math.ceil(long / CUT_EVERY_MM))
    whole_edge = whole.edge(along.edge).length
    garment = marked_on_both(garment, piece, along.edge, (along.start * whole_edge, along.end * whole_edge))
    cuts = cuts_between(garment, piece, along, toward, [(k + 0.5) / number for k in range(number)])
    made = fanned(garment, piece, cuts, by, edge=along.edge, hinge=toward.edge if hinged else "")
    wider = made.piece(piece)
    edge = wider.edge(along.edge)
    more = edge.length - whole_edge
    reason = f"the {spoken(along.edge)} of the {spoken(piece)} is gathered, {(long + more) / long:.1f} to 1"
    seams = fuller_seams(made, piece, along.edge, more, reason)
    start = along.start * whole_edge
    path = beside(edge.path.part(start, start + long + more), -STITCHED_MM)
    story = Story(made)
    title = f"The {spoken(along.edge)} of the {spoken(piece)} is gathered"
    story.section(piece, title)
    label = story.line(
        f"{piece}.gathers",
        "Gathered from one end of this line to the other, until the notches meet",
        (Length(long + more, "gathered"), " drawn up to ", Length(long, "drawn_up")),
        path,
        tuple(filter(None, (story.label_of(f"{piece}.{along.edge}"),))),
    )
    marked = replace(wider, marks=(*wider.marks, Mark(label.rpartition(".")[2], path)))
    return replace(with_pieces(made, marked), seams=seams, steps=story.steps)
