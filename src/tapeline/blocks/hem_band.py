"""The rib hem band: a folded strip round the hem, a little shorter than it."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.strip import RibChoices, strip
from tapeline.draft import Draft, folded, notch_along, sewn
from tapeline.lengths import Length
from tapeline.pattern import Cut, NotchKind, Piece

__all__ = ["HEM_BAND_SHARES", "HemBand", "hem_band"]

HEM_BAND_SHARES = ((0, 1.0), (20, 0.95), (50, 0.90), (80, 0.85), (120, 0.80))
"""Stretch of the rib in per cent, and the band's length as a share of the hem: common practice, no source."""


@dataclass(frozen=True, slots=True)
class HemBand:
    """The band and how much shorter than the hem it is."""

    piece: Piece
    ease: Length
    seamed: str = "centre_back"
    """Which of its ends is sewn: to the other half at the centre back, or into a front edge that opens."""


def hem_band(d: Draft, c: RibChoices, front_hem: Length, back_hem: Length, *, opened: bool = False) -> HemBand:
    """Half a band: its seam at the centre back, or on the fold there where the front opens."""
    d.section("The hem band's sizes")
    hem = d.measured("half_hem", "Half the hem", front_hem + back_hem)
    half_length = d.measured(
        "hem_band_half_length",
        "Half the band: as long as a rib that stretches so needs",
        hem * d.share(c.stretch, HEM_BAND_SHARES),
    )
    side = d.measured(
        "hem_band_side", "From the centre front to the side seam, in proportion", half_length * (front_hem / hem)
    )
    s = d.sheet("hem_band")
    s.section("The hem band")
    left = "The centre front, where it ends" if opened else "The centre front, on the fold of the cloth"
    right = "The centre back, on the fold of the cloth" if opened else "The seam at the centre back"
    made = strip(s, half_length, c.width, left=left, right=right)
    front_end, back_end = (sewn, folded) if opened else (folded, sewn)
    piece = s.piece(
        "Hem band",
        front_end("centre_front", made.left),
        sewn("hem", made.top),
        back_end("centre_back", made.right),
        sewn("hem_turned", made.bottom),
        grain=made.grain,
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("hem", side, NotchKind.SINGLE),
            notch_along("hem_turned", half_length - side, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return HemBand(piece, half_length - hem, "centre_front" if opened else "centre_back")
