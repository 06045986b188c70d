"""The band that a full sleeve is gathered into: a folded strip that goes over the hand without an opening.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.sleeve_fullness import SleeveEnd
from tapeline.blocks.strip import strip
from tapeline.draft import Draft, notch_along, sewn
from tapeline.lengths import Length, at_least, cm
from tapeline.pattern import Cut, NotchKind, Piece

__all__ = ["SleeveBand", "sleeve_band"]

OVER_THE_HAND = 1.35
"""A hand is about this much wider round than its wrist (from memory, no source)."""
LEAST_GATHERED = cm(2)
"""Less is not gathered but eased in: it makes no folds."""


@dataclass(frozen=True, slots=True)
class SleeveBand:
    """The band, and how much longer than it the sleeve's hem is."""

    piece: Piece
    gathers: Length


def sleeve_band(d: Draft, c: SleeveEnd, sleeve_hem: Length, *, at_wrist: bool) -> SleeveBand:
    """A whole band, its two ends sewn to each other.

    At the wrist it is as long as the wrist and what is loose, and goes over the hand; higher up it goes round the upper
    arm, for that is the widest place that it has to pass.
    """
    d.section("The sleeve band's sizes")
    wrist = d.body("wrist", "Round the wrist, over the bone")
    if at_wrist:
        says = "Round the wrist, loose; never so short that no hand goes through"
        length = d.measured("sleeve_band_length", says, at_least(wrist + c.loose, wrist * OVER_THE_HAND))
    else:
        upper_arm = d.body("upper_arm", "Round the upper arm, relaxed")
        length = d.measured("sleeve_band_length", "Round the upper arm, loose", upper_arm + c.loose)
    d.require(
        "nothing-to-gather",
        sleeve_hem,
        length + LEAST_GATHERED,
        says="the sleeve's hem is hardly longer than the band it would be gathered into",
        where="garment.sleeve.end",
        hint='make garment.sleeve.shape straight or flared, or garment.sleeve.end "hem"',
    )
    s = d.sheet("sleeve_band")
    s.section("The sleeve band")
    made = strip(s, length, c.band, left="Sewn to the other end", right="Sewn to the other end")
    piece = s.piece(
        "Sleeve band",
        sewn("back_end", made.left),
        sewn("hem_turned", made.top),
        sewn("front_end", made.right),
        sewn("hem", made.bottom),
        grain=made.grain,
        cut=Cut(2),
        notches=(
            notch_along("hem", length / 2, NotchKind.SINGLE),
            notch_along("hem_turned", length / 2, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return SleeveBand(piece, sleeve_hem - length)
