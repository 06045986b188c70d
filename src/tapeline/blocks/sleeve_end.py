"""That a sleeve ends in one way only, and what of its length that end makes up."""

from __future__ import annotations

from tapeline.blocks.sleeve_fullness import SleeveEnd, SleeveHead
from tapeline.lengths import Length
from tapeline.problems import InputError, Problem, Severity

__all__ = ["made_up"]


def made_up(c: SleeveEnd, head: SleeveHead, ribbed: Length | None) -> Length | None:
    """The width of what the hem is sewn to: the style's rib, a band or a buttoned cuff; None for a sleeve of one piece.

    Raises `InputError`: `sleeve-ends-twice`; `rolled-under-puff` where spreading the head would bend the cuff's fold.
    """
    own = [
        *(["a band"] if c.band.mm > 0 else []),
        *(["a buttoned cuff"] if c.cuff.mm > 0 else []),
        *(["a rolled cuff"] if c.rolled.mm > 0 else []),
    ]
    # A bell is cut on: its hem may be gathered into a rib or a band, but not slit or rolled.
    ends = [*(["a rib cuff"] if ribbed is not None else []), *own]
    ends += ["a bell"] if c.bell.mm > 0 and (c.cuff.mm > 0 or c.rolled.mm > 0) else []
    if len(ends) > 1:
        raise InputError(
            Problem(
                "sleeve-ends-twice",
                Severity.ERROR,
                f"the sleeve would end in {' and in '.join(ends)}: one of them is all that it can have",
                "garment.sleeve.end",
                'make garment.sleeve.end "hem", or leave one of its numbers. Nothing was drafted.',
            )
        )
    if c.rolled.mm > 0 and head.spread.mm > 0:
        raise InputError(
            Problem(
                "rolled-under-puff",
                Severity.ERROR,
                "a head that is spread turns the sleeve about its hem, and a rolled cuff needs a straight fold there",
                "garment.sleeve.end",
                "set garment.sleeve.head.spread to 0, or gather the hem into a band. Nothing was drafted.",
            )
        )
    if ribbed is not None:
        return ribbed
    return c.made_up if c.made_up.mm > 0 else None
