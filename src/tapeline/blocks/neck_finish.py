"""How a neck is finished, as a choice by word: with what, and which necklines it goes round.

Common practice in the trade, no published source.
"""

from __future__ import annotations

from tapeline.blocks.neck_shapes import NeckLine
from tapeline.pattern import Word
from tapeline.problems import InputError, Problem, Severity

__all__ = ["NeckFinish", "finish_fits"]


class NeckFinish(Word):
    """What is sewn to a neckline, or how it is turned."""

    BAND = "band", "a folded strip inside the neckline, shorter than it and stretched on"
    BINDING = "binding", "a narrow strip folded over the edge, stretched on a little"
    FACING = "facing", "cut as the body is, sewn on and turned inside"
    HEM = "hem", "turned inside and stitched down"
    COLLAR = "collar", "a high folded strip of rib: mock or roll"


ROUND_CORNERS = frozenset({NeckFinish.FACING, NeckFinish.HEM})
"""A strip that is stretched on lies flat round a curve only; at a corner it would stand up."""


def finish_fits(finish: NeckFinish, line: NeckLine, *, pointed: bool) -> None:
    """Raise `InputError` (`finish-not-for-neckline`) where a finish cannot be sewn round such a neckline."""
    fits = set(NeckFinish)
    if line is NeckLine.FUNNEL:
        fits -= {NeckFinish.FACING, NeckFinish.COLLAR}
    elif line is not NeckLine.SWEEP:
        fits &= ROUND_CORNERS
    elif pointed:
        fits -= {NeckFinish.COLLAR}
    if finish not in fits:
        what = "that is stretched on lies flat round a curve, not round a corner"
        says = f"a {finish} is a strip, and a strip {what}: this neckline has one"
        if line is NeckLine.FUNNEL:
            says = "a funnel is a collar that is cut on, and what turns inside is cut on too"
        words = " or ".join(f'"{one}"' for one in NeckFinish if one in fits)
        raise InputError(
            Problem(
                "finish-not-for-neckline",
                Severity.ERROR,
                says,
                "garment.neckline.finish",
                f"choose finish = {words}, or the shape round. Nothing was drafted.",
            )
        )
