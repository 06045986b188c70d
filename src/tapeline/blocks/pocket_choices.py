"""What a maker chooses of a pocket on the front.

Widths and places: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["PocketChoices", "PocketKind"]


class PocketKind(Word):
    """What is sewn on the front for hands and handkerchiefs."""

    NONE = "none", "no pocket"
    KANGAROO = "kangaroo", "one across the front, above the hem, with a slanted opening at each side"
    BREAST = "breast", "one patch on the wearer's left, its mouth above the chest line"
    HIPS = "hips", "two patches above the hem"


@dataclass(frozen=True, slots=True)
class PocketChoices:
    """Its kind, its size, and how high it lies."""

    kind: PocketKind = PocketKind.NONE
    roomier: Length = choice(cm(0), -2, 5, "wider and deeper than the hand asks for")
    above_hem: Length = choice(cm(1.5), 0, 25, "lower edge above the hem or the hem band, where that is highest")
    above_chest: Length = choice(cm(2), -5, 8, "mouth of a breast pocket above the chest line")

    @property
    def idle(self) -> frozenset[str]:
        """The numbers that say nothing of this kind."""
        if self.kind is PocketKind.NONE:
            return frozenset({"roomier", "above_hem", "above_chest"})
        return frozenset({"above_hem"}) if self.kind is PocketKind.BREAST else frozenset({"above_chest"})
