"""The neckband: a strip of rib or jersey, folded in half, sewn to the neckline and stretched a little."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neck import Neckline
from tapeline.draft import Draft, folded, halfway, notch_along, sewn
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut, Mark, NotchKind, Piece, choice

__all__ = ["BAND_SHARES", "BandChoices", "Neckband", "neckband"]

BAND_SHARES = ((0, 1.0), (20, 0.90), (35, 0.87), (50, 0.80), (80, 0.75), (120, 0.67))
"""Stretch of the band's cloth in per cent, and the band's length as a share of the neckline.

Rib two thirds to three quarters, stiff rib or jersey 0.8: trade handbooks, read second hand; self-cloth jersey 0.85 to
0.90 and bindings 0.90 to 0.95: from memory of the same. A cloth that does not stretch cannot be shorter at all.
"""


@dataclass(frozen=True, slots=True)
class BandChoices:
    """Width and cloth of the band."""

    width: Length = choice(cm(2), 0.8, 3.5, "finished width of the band")
    stretch: float = choice(80.0, 0, 200, "how much the band's cloth stretches, per cent")
    cloth: str = "rib"


@dataclass(frozen=True, slots=True)
class Neckband:
    """The band and how much shorter than the neckline it is."""

    piece: Piece
    ease: Length


def neckband(d: Draft, c: BandChoices, line: Neckline) -> Neckband:
    """Half a band, on the fold at the centre front, its seam at the centre back."""
    d.section("The neckband's sizes")
    front = d.measured("front_neckline", "Half the front neckline", line.front.reading())
    back = d.measured("back_neckline", "Half the back neckline", line.back.reading())
    neckline = d.measured("neckline", "Half the neckline", front + back)
    by_stretch = d.measured(
        "band_by_stretch", "What a cloth that stretches so needs", neckline * d.share(c.stretch, BAND_SHARES)
    )
    by_shape = d.measured(
        "band_by_shape",
        "How long the neckline is a band's width further in: a longer band would stand away",
        line.front.beside(c.width) + line.back.beside(c.width),
    )
    half_length = d.measured("band_half_length", "Half the band: the shorter of the two", at_most(by_stretch, by_shape))
    shoulder = d.measured(
        "band_shoulder", "From the centre front to the shoulder, in proportion", half_length * (front / neckline)
    )

    s = d.sheet("neckband")
    s.section("The neckband")
    fold = s.point("centre_front", "The centre front, on the fold of the cloth", s.origin)
    back_end = s.point("centre_back", "The seam at the centre back", fold.out(half_length))
    fold_top = s.point("centre_front_top", "Twice the finished width: the band is folded", fold.up(c.width * 2))
    back_top = s.point("centre_back_top", "Level with it at the centre back", back_end.up(c.width * 2))
    middle, middle_back = (
        s.point("band_fold", "The band is folded here", halfway(fold, fold_top)),
        s.point("band_fold_back", "The band is folded here", halfway(back_end, back_top)),
    )
    crease = s.straight("crease", "Folded in half along this line", middle, middle_back)
    piece = s.piece(
        "Neckband",
        folded("centre_front", s.straight("centre_front_fold", "On the fold", fold, fold_top)),
        sewn(
            "neckline_turned", s.straight("neckline_turned", "Folded over onto the other long edge", fold_top, back_top)
        ),
        sewn("centre_back", s.straight("centre_back_seam", "Sewn to its other half", back_top, back_end)),
        sewn("neckline", s.straight("neckline", "Sewn to the neckline", back_end, fold)),
        grain=(middle.up(c.width / 2), middle.down(c.width / 2)),
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("neckline", half_length - shoulder, NotchKind.SINGLE),
            notch_along("neckline_turned", shoulder, NotchKind.SINGLE),
        ),
        marks=(Mark("crease", crease.path),),
    )
    return Neckband(piece, half_length - neckline)
