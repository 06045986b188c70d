"""The rib cuff: a folded strip, shorter than the sleeve's hem, that still goes over the hand.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neckband import BAND_SHARES
from tapeline.blocks.strip import OVER_THE_HAND, RibChoices, round_sleeve
from tapeline.draft import Draft
from tapeline.lengths import Length, at_least, at_most, cm
from tapeline.pattern import Piece

__all__ = ["Cuff", "cuff"]

ROUND_THE_WRIST = cm(1)
"""No cuff is shorter than the wrist and this: it would leave marks."""


@dataclass(frozen=True, slots=True)
class Cuff:
    """The cuff and how much shorter than the sleeve's hem it is."""

    piece: Piece
    ease: Length


def cuff(d: Draft, c: RibChoices, sleeve_hem: Length, *, at_wrist: bool) -> Cuff:
    """A whole cuff, its two ends sewn to each other; at the wrist it is said when it would not hold there."""
    d.section("The cuff's sizes")
    wrist = d.body("wrist", "Round the wrist, over the bone")
    by_stretch = d.measured(
        "cuff_by_stretch", "What a rib that stretches so needs", sleeve_hem * d.share(c.stretch, BAND_SHARES)
    )
    length = d.measured(
        "cuff_length",
        "Never tighter than the wrist, never longer than the sleeve's hem",
        at_most(at_least(by_stretch, wrist + ROUND_THE_WRIST), sleeve_hem),
    )
    d.remark(
        "cuff-tight",
        wrist * OVER_THE_HAND,
        above=length * (1 + c.stretch / 100),
        says="the cuff, stretched, may not go over the hand",
        where="garment.cuff",
        hint="take a rib that stretches more, or widen the sleeve with garment.sleeve.wrist_ease",
    )
    if at_wrist:
        d.remark(
            "cuff-loose",
            length,
            above=wrist * OVER_THE_HAND,
            says="the cuff slips over the hand without being stretched, so it does not hold at the wrist",
            where="garment.cuff",
            hint="make garment.sleeve.shape tapered, or garment.sleeve.wrist_ease smaller",
        )
    s = d.sheet("cuff")
    s.section("The cuff")
    piece = round_sleeve(s, "Cuff", length, c.width, cloth=c.cloth)
    return Cuff(piece, length - sleeve_hem)
