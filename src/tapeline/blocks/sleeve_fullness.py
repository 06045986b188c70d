"""What makes a sleeve fuller than its armhole and its arm: a puffed head, a bell, a hem gathered into a band.

Rules: common practice in the trade, no published source; how much each word means is our own choice.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["SLEEVE_ENDS", "SLEEVE_HEADS", "SleeveEnd", "SleeveHead"]


@dataclass(frozen=True, slots=True)
class SleeveHead:
    """What is added over the shoulder and gathered into the armhole between the notches."""

    spread: Length = choice(cm(0), 0, 20, "head: spread by so much between the notches, hinged at the hem; 0 is none")
    raised: Length = choice(cm(0), 0, 6, "head: the cap is raised by so much above the notches; 0 is none")

    @property
    def gathered(self) -> bool:
        """Whether there is anything to gather."""
        return self.spread.mm > 0 or self.raised.mm > 0


SLEEVE_HEADS = {
    "smooth": SleeveHead(),
    "gathered": SleeveHead(spread=cm(5), raised=cm(1)),
    "puffed": SleeveHead(spread=cm(9), raised=cm(2.5)),
}


@dataclass(frozen=True, slots=True)
class SleeveEnd:
    """How a sleeve ends: hemmed (or with the style's own cuff), gathered into a band, or in a bell from the elbow."""

    band: Length = choice(cm(0), 0, 10, "finished width of the band that the hem is gathered into; 0 is none")
    loose: Length = choice(cm(2), 0, 15, "the band is so much longer than the arm; it always goes over the hand")
    bell: Length = choice(cm(0), 0, 60, "cut off at the elbow, the lower part spread by so much at its hem; 0 is none")


SLEEVE_ENDS = {"hem": SleeveEnd(), "band": SleeveEnd(band=cm(3)), "bell": SleeveEnd(bell=cm(24))}
