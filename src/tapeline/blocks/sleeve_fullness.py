"""How a sleeve begins and ends: a puffed head; a bell, a hem gathered into a band, a buttoned or a rolled cuff.

Rules: common practice in the trade, no published source; how much each word means is our own choice.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["SLEEVE_ENDS", "SLEEVE_HEADS", "CuffFullness", "SleeveEnd", "SleeveHead"]


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


class CuffFullness(Word):
    """What becomes of what the sleeve is wider than its buttoned cuff."""

    PLEATS = "pleats", "laid in pleats in front of the slit, toward it"
    GATHERS = "gathers", "gathered all round, from one side of the slit to the other"


@dataclass(frozen=True, slots=True)
class SleeveEnd:
    """How a sleeve ends; with none of these it is hemmed, or has the style's own cuff."""

    band: Length = choice(cm(0), 0, 10, "finished width of the band that the hem is gathered into; 0 is none")
    loose: Length = choice(
        cm(2), 0, 15, "band or cuff is so much longer than the arm; a band always goes over the hand"
    )
    bell: Length = choice(cm(0), 0, 60, "cut off at the elbow, the lower part spread by so much at its hem; 0 is none")
    cuff: Length = choice(cm(0), 0, 10, "finished width of a buttoned cuff, with a slit above it; 0 is none")
    slit: Length = choice(cm(11), 5, 18, "how far the slit above a buttoned cuff goes up")
    fullness: CuffFullness = CuffFullness.PLEATS
    rolled: Length = choice(cm(0), 0, 8, "width of a cuff that is turned back over the sleeve; 0 is none")

    @property
    def idle(self) -> frozenset[str]:
        """What says nothing without a band or a cuff."""
        without = set() if self.cuff.mm > 0 else {"slit", "fullness"}
        return frozenset(without if self.cuff.mm > 0 or self.band.mm > 0 else without | {"loose"})

    @property
    def made_up(self) -> Length:
        """What of the sleeve's length a band or a buttoned cuff makes up."""
        return self.cuff if self.cuff.mm > 0 else self.band


SLEEVE_ENDS = {
    "hem": SleeveEnd(),
    "band": SleeveEnd(band=cm(3)),
    "bell": SleeveEnd(bell=cm(24)),
    "cuff": SleeveEnd(cuff=cm(6), loose=cm(5)),
    "rolled": SleeveEnd(rolled=cm(3)),
}
