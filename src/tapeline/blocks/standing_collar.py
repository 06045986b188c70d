"""The standing collar of a front that opens: a strip round the neck, folded along its upper edge, ending at the front.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neck import Neckline
from tapeline.blocks.strip import strip
from tapeline.draft import Draft, folded, notch_along, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, NotchKind, Piece, choice

__all__ = ["STANDING_SHARES", "StandingChoices", "StandingCollar", "standing_collar"]

STANDING_SHARES = ((0, 1.0), (20, 0.95), (50, 0.90), (80, 0.85), (120, 0.80))
"""Stretch of the collar's cloth in per cent, and the collar's length as a share of the neckline.

Common practice, no source. It stands up and does not turn a curve, so that it is shortened less than a flat neckband:
only enough to keep its upper edge from standing away.
"""


@dataclass(frozen=True, slots=True)
class StandingChoices:
    """Height and cloth of a standing collar."""

    width: Length = choice(cm(6), 2, 9, "finished height of the collar")
    stretch: float = choice(80.0, 0, 200, "how much the collar's cloth stretches, per cent")
    cloth: str = "rib"


@dataclass(frozen=True, slots=True)
class StandingCollar:
    """The collar and how much shorter than the neckline it is."""

    piece: Piece
    ease: Length


def standing_collar(d: Draft, c: StandingChoices, line: Neckline) -> StandingCollar:
    """Half a collar, on the fold at the centre back; its front end is sewn into the front edge."""
    d.section("The standing collar's sizes")
    front = d.measured("front_neckline", "Half the front neckline", line.front.reading())
    back = d.measured("back_neckline", "Half the back neckline", line.back.reading())
    neckline = d.measured("neckline", "Half the neckline", front + back)
    half_length = d.measured(
        "collar_half_length",
        "Half the collar: as long as a cloth that stretches so needs",
        neckline * d.share(c.stretch, STANDING_SHARES),
    )
    shoulder = d.measured(
        "collar_shoulder", "From the centre back to the shoulder, in proportion", half_length * (back / neckline)
    )
    s = d.sheet("collar")
    s.section("The standing collar")
    made = strip(
        s,
        half_length,
        c.width,
        left="The centre front, where it ends",
        right="The centre back, on the fold of the cloth",
    )
    piece = s.piece(
        "Standing collar",
        sewn("front_end", made.left),
        sewn("neckline_turned", made.top),
        folded("centre_back", made.right),
        sewn("neckline", made.bottom),
        grain=made.grain,
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("neckline", shoulder, NotchKind.SINGLE),
            notch_along("neckline_turned", half_length - shoulder, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return StandingCollar(piece, half_length - neckline)
