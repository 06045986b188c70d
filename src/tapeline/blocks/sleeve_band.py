"""The band that a full sleeve is gathered into: a folded strip that goes over the hand without an opening.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.sleeve_fullness import SleeveEnd
from tapeline.blocks.strip import OVER_THE_HAND, round_sleeve
from tapeline.draft import Draft
from tapeline.lengths import Length, at_least, cm
from tapeline.pattern import Piece

__all__ = ["SleeveBand", "sleeve_band"]

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
    piece = round_sleeve(s, "Sleeve band", length, c.band)
    return SleeveBand(piece, sleeve_hem - length)
