"""What a maker chooses of a neckline: its shape and size, and how the neck is finished."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.keyhole import KeyholeChoices
from tapeline.blocks.neck_facing import FacingChoices
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES, NeckLine, NeckShape
from tapeline.blocks.neckband import RIB_COLLARS, BindingChoices, RibCollar
from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["Banded", "FinishedNeckline", "NecklineChoices"]


@dataclass(frozen=True, slots=True)
class NecklineChoices:
    """Its shape, and how much wider and lower than the neck."""

    shape: NeckShape = NECK_SHAPES["round"]
    widen: Length = choice(cm(1), 0, 8, "wider at each shoulder, along the shoulder seam")
    lower_front: Length = choice(cm(1), 0, 15, "lower at the centre front")
    lower_back: Length = choice(cm(0.5), 0, 12, "lower at the centre back")

    @property
    def idle(self) -> frozenset[str]:
        """A funnel's upper edge is level: there is nothing to lower."""
        return frozenset({"lower_front", "lower_back"} if self.shape.line is NeckLine.FUNNEL else ())


@dataclass(frozen=True, slots=True)
class FinishedNeckline(NecklineChoices):
    """The same, and how it is finished; a style with a collar of its own leaves that out."""

    finish: NeckFinish = NeckFinish.BAND
    binding: BindingChoices = BindingChoices()
    facing: FacingChoices = FacingChoices()
    hem: Length = choice(cm(1), 0.5, 6, "depth of a neckline that is turned up; of a funnel, what is turned inside")
    collar: RibCollar = RIB_COLLARS["mock"]
    keyhole: KeyholeChoices = KeyholeChoices()

    @property
    def idle(self) -> frozenset[str]:
        """The choices that say nothing with this finish."""
        unused: frozenset[str] = frozenset(word for word in FINISHES if word != self.finish)
        if self.shape.line is NeckLine.FUNNEL:
            unused |= {"lower_front", "lower_back"}
        return unused if self.finish is NeckFinish.FACING else unused | {"keyhole"}


FINISHES = (NeckFinish.BINDING, NeckFinish.FACING, NeckFinish.HEM, NeckFinish.COLLAR)
"""Those whose numbers stand under the neckline, each under its own word; the band's stand beside it."""


class Banded:
    """Choices of a style whose neck may have a band, under `band`."""

    __slots__ = ()
    neckline: FinishedNeckline

    @property
    def idle(self) -> frozenset[str]:
        """The band says nothing where the neck is finished in another way."""
        return frozenset() if self.neckline.finish is NeckFinish.BAND else frozenset({"band"})
