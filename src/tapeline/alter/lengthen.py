"""Lengthening and shortening a piece at a line across it: everything beyond the line moves."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.cut_line import CutLine
from tapeline.alter.opened import Words, bad_line, opened
from tapeline.alter.opening import Edges
from tapeline.alter.story import piece_named, spoken
from tapeline.geometry import Rigid, Vector
from tapeline.lengths import Length
from tapeline.pattern import Garment

__all__ = ["beside", "lengthen"]


def lengthen(garment: Garment, piece: str, cut: CutLine, by: Length, *, edges: Edges = Edges.FAIR) -> Garment:
    """Everything beyond a straight line moves away from it, square to it; less than nothing shortens.

    What is shortened is folded away beyond the line. Names, seams, joins and notches stay; a notch moves with the
    paper. Lengthened straight, the piece grows by exactly the length of the cut times the amount. Seams stay true when
    all pieces that are sewn together beyond the line are lengthened alike; truing says whether they are.

    Raises `InputError`: `piece-unknown`, `line-not-straight`, `line-misses-piece` and what else is wrong with the line,
    `overlap-too-wide` when it is shortened by more than there is, `fold-left`, `outline-would-cross`.

    >>> from tapeline.alter import level
    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> longer = lengthen(tee, "back", level(tee, "back.waist_level", down=cm(4)), cm(3))
    >>> round(longer.piece("back").edge("centre").length - tee.piece("back").edge("centre").length, 6)
    30.0
    >>> longer.step("back.hip_level_2").how_text()
    'from hip level, 3 cm away from the line'
    """
    whole = piece_named(garment, piece)
    if not cut.straight:
        raise bad_line("line-not-straight", whole, cut, "is curved", "lengthen at a straight line")
    verb = "lengthened" if by.mm >= 0 else "shortened"
    amount = by if by.mm >= 0 else by * -1
    far = cut if by.mm >= 0 else beside(cut, cut.beyond * amount.mm)
    words = Words(
        verb,
        f"The {spoken(piece)} is {verb} by {amount.show()}",
        (amount, " away from the line" if by.mm >= 0 else " towards the line"),
        (amount,),
    )
    return opened(garment, piece, (cut, far), Rigid.shift(cut.beyond * by.mm), words=words, edges=edges)


def beside(cut: CutLine, by: Vector) -> CutLine:
    """The same line a move away."""
    move = Rigid.shift(by)
    return replace(cut, path=cut.path.moved(move), at=move.point(cut.at))
