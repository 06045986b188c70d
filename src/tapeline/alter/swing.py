"""Swing ease: a piece cut from its hem upward and opened there, so that it swings out below and fits above."""

from __future__ import annotations

import math

from tapeline.alter.fan import fanned
from tapeline.alter.story import piece_named
from tapeline.alter.stretch import Stretch, cuts_between, more_than_nothing, stretch_length
from tapeline.lengths import Length
from tapeline.pattern import Garment

__all__ = ["swing"]

CUT_EVERY_MM = 60.0
"""So often the hem is cut: a swing from one place alone would hang in one fold."""


def swing(garment: Garment, piece: str, hem: Stretch, by: Length, *, hinge: Stretch) -> Garment:
    """The hem is opened evenly, hinged at an edge above: a shoulder, a yoke seam, an armhole.

    What lies above the hinge's ends stays as long as it was, sides and seams too; only the hem grows, and the girths
    between in proportion to how far below the hinge they lie. Of a piece on the fold, `by` is for the half.

    Raises `InputError`: as `spread`, and `stretch-unclear`, `fullness-not-more`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> swung = swing(tee, "back", Stretch("hem", 0.2, 0.8), cm(8), hinge=Stretch("shoulder", 0.2, 0.8))
    >>> round(swung.piece("back").edge("hem").length - tee.piece("back").edge("hem").length)
    80
    >>> abs(swung.piece("back").edge("side").length - tee.piece("back").edge("side").length) < 1e-6
    True
    """
    whole = piece_named(garment, piece)
    more_than_nothing(by, f"{piece}.{hem.edge}")
    number = max(1, math.ceil(stretch_length(whole, hem) / CUT_EVERY_MM))
    cuts = cuts_between(garment, piece, hem, hinge, [(k + 0.5) / number for k in range(number)])
    return fanned(garment, piece, cuts, by, edge=hem.edge, hinge=hinge.edge)
