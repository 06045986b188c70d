"""The neckband: a strip of rib or jersey, folded in half, sewn to the neckline and stretched a little."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neck import Neckline
from tapeline.draft import Draft, Reading, folded, halfway, notch_along, sewn
from tapeline.draft.place import needs_of
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut, Edge, Mark, NotchKind, Piece, choice

LEAST_BESIDE_MITRE = cm(2)
"""From the mitre to the shoulder, along the folded edge."""
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
    pointed: bool = False
    """Whether it is mitred at the centre front, and not on the fold there."""


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
    crease_start = middle
    if line.pointed:
        mitre = d.measured("mitre_depth", "How much shorter the band is at its folded edge", mitre_depth(line, c.width))
        d.require(
            "band-too-wide-for-v",
            shoulder,
            mitre + LEAST_BESIDE_MITRE,
            says="the band is so wide that its mitre takes up the whole of the v",
            where="garment.band.width",
            hint="make garment.band.width smaller, or widen the v with garment.neckline.widen",
        )
        crease_start = s.point("mitre_end", "Where the mitre's seam meets the fold", middle.out(mitre))
    crease = s.straight("crease", "Folded in half along this line", crease_start, middle_back)
    front_end: tuple[Edge, ...]
    if line.pointed:
        front_end = (
            sewn("mitre", s.straight("mitre", "Sewn to its mirror image, over the point", fold, crease_start)),
            sewn("mitre_turned", s.straight("mitre_turned", "The same on the other half", crease_start, fold_top)),
        )
    else:
        front_end = (folded("centre_front", s.straight("centre_front_fold", "On the fold", fold, fold_top)),)
    turned = s.straight("neckline_turned", "Folded over onto the other long edge", fold_top, back_top)
    if line.pointed:
        centre_back = folded("centre_back", s.straight("centre_back_fold", "On the fold", back_top, back_end))
    else:
        centre_back = sewn("centre_back", s.straight("centre_back_seam", "Sewn to its other half", back_top, back_end))
    piece = s.piece(
        "Neckband",
        *front_end,
        sewn("neckline_turned", turned),
        centre_back,
        sewn("neckline", s.straight("neckline", "Sewn to the neckline", back_end, fold)),
        grain=(crease_start.up(c.width / 2), crease_start.down(c.width / 2)),
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("neckline", half_length - shoulder, NotchKind.SINGLE),
            notch_along("neckline_turned", shoulder, NotchKind.SINGLE),
        ),
        marks=(Mark("crease", crease.path),),
    )
    return Neckband(piece, half_length - neckline, line.pointed)


def mitre_depth(line: Neckline, width: Length) -> Reading:
    """How far back the mitre's seam goes along the band: its width over the slope of the v at its point."""
    way = line.front.path.leaves
    return Reading(
        Length(width.mm * way.y / way.x),
        (
            f"measured at the point of the {line.front.full_name}: along the v, to below where a line ",
            width,
            " inside it meets the centre",
        ),
        (line.front.label, *needs_of(width)),
    )
