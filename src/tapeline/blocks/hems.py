"""Shapes of a hem, how far it is slit at the side, and how it is finished.

Common practice in the trade, no published source; how much each word means is our own choice within what shops sell.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neckband import BindingChoices
from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["HEM_SHAPES", "PLAIN_HEM", "HemChoices", "HemFinish", "HemShape"]


@dataclass(frozen=True, slots=True)
class HemShape:
    """How a hem leaves the straight line; the length of the garment is that of its centre front."""

    rise: Length = choice(cm(0), 0, 15, "higher at the side than at the centre, as a shirt with tails")
    back_lower: Length = choice(cm(0), 0, 40, "centre back lower than the side, in one sweep")
    back_longer: Length = choice(cm(0), 0, 20, "back longer than the front all along: both hems end at a vent")


HEM_SHAPES = {
    "straight": HemShape(),
    "curved": HemShape(rise=cm(6)),
    "high-low": HemShape(back_lower=cm(8)),
    "stepped": HemShape(back_longer=cm(4)),
}
"""A straight one runs round level; a curved one rises to the side; a high-low one sinks to the back."""


class HemFinish(Word):
    """What becomes of the edge of a hem."""

    HEM = "hem", "turned up and stitched down"
    FACING = "facing", "cut as the body is, sewn on and turned inside: for a hem that is curved"
    BINDING = "binding", "a narrow strip folded over the edge"


@dataclass(frozen=True, slots=True)
class HemChoices:
    """What a maker chooses of a hem that has no band."""

    shape: HemShape = HEM_SHAPES["straight"]
    vent: Length = choice(cm(0), 0, 40, "slit from the hem up, at each side seam; measured on the front")
    finish: HemFinish = HemFinish.HEM
    facing: Length = choice(cm(4), 2, 12, "width of the hem's facing")
    binding: BindingChoices = BindingChoices()

    @property
    def idle(self) -> frozenset[str]:
        """The numbers of the finishes that were not chosen."""
        return frozenset({"facing", "binding"} - {str(self.finish)})


PLAIN_HEM = HemChoices()
"""Straight, without a vent, turned up."""
