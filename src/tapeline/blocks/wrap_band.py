"""The band along the edges of a wrap front and round the back of the neck: a folded strip, a little shorter than they.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.strip import strip
from tapeline.draft import Draft, Drawn, folded, notch_along, sewn
from tapeline.lengths import Length
from tapeline.pattern import Cut, NotchKind, Piece

__all__ = ["WRAP_SHARES", "WrapBand", "wrap_band"]

WRAP_SHARES = ((0, 1.0), (20, 0.97), (50, 0.95), (80, 0.93), (120, 0.90))
"""Stretch of the band's cloth in per cent, and the band's length as a share of the edge.

Common practice, no source: the edge is long and nearly straight, so that it is only held to the body; as tight as round
a neck it would draw the front up.
"""


@dataclass(frozen=True, slots=True)
class WrapBand:
    """The band, how much shorter than the edge it is, and how far its cloth stretches."""

    piece: Piece
    ease: Length
    stretch: float


def wrap_band(d: Draft, c: BandChoices, back: Drawn, front: Drawn) -> WrapBand:
    """Half a band, on the fold at the centre back; its front end is caught in the side seam."""
    d.section("The band's sizes")
    behind = d.measured("back_neckline", "Half the back neckline", back.reading())
    before = d.measured("front_wrap_edge", "The front's edge, from the shoulder to the other side", front.reading())
    whole = d.measured("wrap_edge_whole", "From the centre back to the side seam", behind + before)
    long = d.measured(
        "band_half_length", "Half the band: as a cloth that stretches so needs", whole * d.share(c.stretch, WRAP_SHARES)
    )
    shoulder = d.measured(
        "band_shoulder", "From the centre back to the shoulder, in proportion", long * (behind / whole)
    )
    s = d.sheet("wrap_band")
    s.section("The band")
    made = strip(s, long, c.width, left="Caught in the side seam", right="The centre back, on the fold of the cloth")
    piece = s.piece(
        "Wrap band",
        sewn("front_end", made.left),
        sewn("neckline_turned", made.top),
        folded("centre_back", made.right),
        sewn("neckline", made.bottom),
        grain=made.grain,
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("neckline", shoulder, NotchKind.SINGLE),
            notch_along("neckline_turned", long - shoulder, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return WrapBand(piece, long - whole, c.stretch)
