"""A mark that lies beside a piece, given again to the parts that the piece was cut into."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.sewn import with_pieces
from tapeline.geometry import Path, Point
from tapeline.pattern import Garment, Mark, Piece

__all__ = ["remarked"]


def remarked(garment: Garment, whole: Piece, mark: str, *parts: str) -> Garment:
    """An upright mark of the whole on each part, as high as the part reaches; nothing where the whole has no such mark.

    Splitting keeps what of a mark lies inside a part. The centre of a front lies outside it, where a band or a placket
    fills the middle, and its girths are measured from there all the same.

    >>> from tapeline.alter import level, split
    >>> from tapeline.blocks.button_band import BAND_CLOSURES
    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> choices = STYLES["cardigan"].choices(closure=BAND_CLOSURES["buttons"])
    >>> cardigan = STYLES["cardigan"].page(Draft(size_wearer("92"), {}), choices, surveyed=True)
    >>> cut = split(cardigan, "front", level(cardigan, "front.waist_level"), name="low", title="Low", seam="low")
    >>> [mark.name for mark in cut.piece("low").marks]
    []
    >>> [mark.name for mark in remarked(cut, cardigan.piece("front"), "centre", "low").piece("low").marks]
    ['centre']
    """
    line = next((one.path for one in whole.marks if one.name == mark), None)
    if line is None:
        return garment
    top, low = max(line.start.y, line.end.y), min(line.start.y, line.end.y)
    for name in parts:
        piece = garment.piece(name)
        heights = [knot.y for knot in piece.seam_line.knots]
        ends = (Point(line.start.x, max(low, min(heights))), Point(line.start.x, min(top, max(heights))))
        others = tuple(one for one in piece.marks if one.name != mark)
        garment = with_pieces(garment, replace(piece, marks=(*others, Mark(mark, Path.through(*ends)))))
    return garment
