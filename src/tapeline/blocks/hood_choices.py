"""What a maker chooses of a hood.

Eases and widths: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["HoodChoices", "HoodCord", "HoodCut"]


class HoodCut(Word):
    """Of how many panels a hood is made."""

    TWO = "two-panel", "two sides, sewn to each other over the crown and down the back"
    THREE = "three-panel", "two sides and a centre strip between them, rounder over the crown"


class HoodCord(Word):
    """What runs through the casing along the face."""

    NONE = "none", "nothing: the edge is a hem"
    CORD = "cord", "a cord through two eyelets; never for a child"


@dataclass(frozen=True, slots=True)
class HoodChoices:
    """Its cut, how roomy it is, and how its edges end."""

    cut: HoodCut = HoodCut.TWO
    height_ease: Length = choice(cm(6), 0, 20, "higher than it is from neck to crown")
    depth_ease: Length = choice(cm(6), 0, 15, "deeper from the face to the back than the head needs")
    overlap: Length = choice(cm(0), 0, 5, "each side runs on past the centre front by so much; at 0 they meet")
    strip_width: Length = choice(cm(10), 5, 14, "width of the centre strip of three panels, over the face")
    strip_neck: Length = choice(cm(7), 4, 12, "width of the same strip at the neck")
    casing: Length = choice(cm(2.5), 1.5, 5, "turned in along the face, as a hem or for a cord")
    cord: HoodCord = HoodCord.NONE
    cord_end: Length = choice(cm(15), 5, 20, "how far each end of a cord hangs out of its eyelet")

    @property
    def idle(self) -> frozenset[str]:
        """The numbers that say nothing with this cut, or without a cord."""
        strip = frozenset() if self.cut is HoodCut.THREE else frozenset({"strip_width", "strip_neck"})
        return strip if self.cord is HoodCord.CORD else strip | {"cord_end"}
