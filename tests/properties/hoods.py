"""What holds of hoods and pockets, measured without `tapeline.truing`; each check yields what is wrong."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import accumulate

from shapely import Polygon

from tapeline.pattern import EdgeKind, EdgeRef, Garment, Piece
from tests.properties.measuring import bends, ends, length, outline, turnings

__all__ = ["hood_holds", "pocket_holds"]

SEWN_MM = 0.1
UNSEEN = math.radians(1)
"""As much as a line may bend where it crosses a seam."""
LEVEL = math.radians(0.1)


def hood_holds(garment: Garment) -> Iterator[str]:
    """The hood's marks answer the neckline's, its crown is one round, and its strip fits."""
    if all(piece.name != "hood" for piece in garment.pieces):
        return
    seam = next(seam for seam in garment.seams if seam.name == "neckline")
    hood, body = marks(garment, seam.a), marks(garment, seam.b)
    if len(hood) != len(body) or any(abs(a - b) > SEWN_MM for a, b in zip(hood, body, strict=False)):
        yield f"the hood is marked at {hood}, the neckline at {body}"
    crown = garment.piece("hood").edge("crown").path
    back = crown.length_to(garment.points["hood.back_of_head"])
    over = crown.part(0, back - 0.5)
    if min(turnings(over)) > UNSEEN:
        yield f"the crown turns back by {math.degrees(min(turnings(over))):.2f} degrees before the back of the head"
    if max(abs(bends(crown)).ravel()) > 1 / 15:
        yield f"the crown bends as tight as a circle of {1 / max(abs(bends(crown)).ravel()):.0f} mm"
    neck = garment.lines["hood.neck_edge"]
    for way in ends(neck):
        if abs(math.atan2(way[1], way[0])) > LEVEL:
            yield "the hood's neck edge is not level at its ends"
    if not 0.6 < neck.length / garment.points["hood.neck_back"].distance_to(garment.points["hood.centre_front"]) < 1.2:
        yield "the hood's neck edge wanders"


def marks(garment: Garment, side: tuple[EdgeRef, ...]) -> list[float]:
    """Lengths along a side of a seam to its notches and to where its edges meet, without its ends."""
    lengths = [length(garment.path(ref)) for ref in side]
    starts = [0.0, *accumulate(lengths)]
    found = starts[1:-1]
    for ref, start, long in zip(side, starts, lengths, strict=False):
        found += [
            start + (long - notch.at_mm if ref.backwards else notch.at_mm)
            for notch in garment.piece(ref.piece).notches_on(ref.edge)
        ]
    return sorted(at for at in found if 1 < at < starts[-1] - 1)


def pocket_holds(garment: Garment) -> Iterator[str]:
    """A pocket is as large as its mark, which lies on the front, clear of its edges; its edges are stitched down."""
    pocket = next((piece for piece in garment.pieces if piece.name == "pocket"), None)
    if pocket is None:
        return
    front = garment.piece("front")
    (mark,) = (mark for mark in front.marks if mark.name == "pocket")
    place = Polygon(outline(mark.path)) if mark.path.start == mark.path.end else Polygon([*outline(mark.path)])
    size = Polygon(outline(pocket.seam_line)).area
    if abs(place.area - size) > 1:
        yield f"the pocket has {size:.0f} mm2, its place {place.area:.0f}"
    whole = Polygon(outline(front.seam_line))
    if place.difference(whole.buffer(0.01)).area > 0.01:
        yield "the pocket's place is not all on the front"
    yield from stitched(pocket)


def stitched(pocket: Piece) -> Iterator[str]:
    """One opening, turned in; every other edge is stitched down or on the fold."""
    kinds = [edge.kind for edge in pocket.edges]
    if kinds.count(EdgeKind.HEM) != 1 or EdgeKind.SEAM in kinds:
        yield f"the pocket's edges are {', '.join(kinds)}"
