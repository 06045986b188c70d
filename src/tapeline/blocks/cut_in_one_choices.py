"""What a maker chooses of a sleeve that is cut in one with the body."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveLength
from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["ArmChoices", "CutInOneSleeveChoices", "Underarm"]


class Underarm(Word):
    """How sleeve and side meet."""

    CURVE = "curve", "in one rounded line"
    GUSSET = "gusset", "in a corner that is slit, with a diamond set in so that the arm can be lifted"


@dataclass(frozen=True, slots=True)
class ArmChoices:
    """How the sleeve hangs, and what lets the arm be lifted."""

    hang: float = choice(25.0, 10, 50, "degrees by which the sleeve falls from the level; past 40 it wants a gusset")
    underarm: Underarm = Underarm.CURVE
    curve: Length = choice(cm(9), 4, 16, "how far down the side and along the sleeve the underarm curve reaches")
    slit: Length = choice(cm(9), 5, 14, "side of the gusset, and of the slit that it is sewn to")
    lift: float = choice(20.0, 5, 35, "degrees by which the arm is lifted before the gusset pulls")

    @property
    def idle(self) -> frozenset[str]:
        """The choices that say nothing with this underarm."""
        return frozenset({"curve"} if self.underarm is Underarm.GUSSET else {"slit", "lift"})


@dataclass(frozen=True, slots=True)
class CutInOneSleeveChoices:
    """Length, and width at the wrist."""

    length: SleeveLength = choice(
        SLEEVE_LENGTHS["short"], 8, 90, "short, elbow, three-quarter, long, or a length from the shoulder point"
    )
    wrist_ease: Length = choice(
        cm(8), 2, 40, "hem of a long sleeve wider than the wrist; shorter sleeves follow the same line"
    )
