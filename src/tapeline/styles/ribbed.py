"""A long-sleeved top whose hem and sleeves end in ribs: what the sweatshirts share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from tapeline.blocks.centre import ON_THE_FOLD, CentreRule
from tapeline.blocks.cuff import cuff
from tapeline.blocks.hem_band import hem_band
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.strip import RibChoices
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.pattern import Girth, Join, Piece, Seam
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.seams import (
    body_joins,
    body_seams,
    cuff_seams,
    hem_band_seams,
    sleeve_joins,
    sleeve_seams,
    zip_joins,
    zip_seams,
)
from tapeline.styles.top import Top, TopChoices, top

__all__ = ["MEANING", "Ribbed", "RibbedChoices", "ribbed"]

MEANING = {
    "chest": (cm(4), cm(40)),
    "waist": (cm(-2), cm(80)),
    "hip": (cm(-4), cm(48)),
    "upper_arm": (cm(0), cm(30)),
    "wrist": (cm(2), cm(30)),
}
"""Between which eases a ribbed top is what it is called."""


class RibbedChoices(TopChoices, Protocol):
    """What a style must let a maker choose, for `ribbed` to draw it."""

    @property
    def sleeve(self) -> SleeveChoices:
        """Its length, cap and width."""
        ...

    @property
    def cuff(self) -> RibChoices:
        """Of the sleeves."""
        ...

    @property
    def hem_band(self) -> RibChoices:
        """Of the body."""
        ...


@dataclass(frozen=True, slots=True)
class Ribbed:
    """The top, and all of it but its neck."""

    top: Top
    parts: tuple[Piece, ...]
    """Sleeve, cuff and hem band."""
    seams: tuple[Seam, ...]
    joins: tuple[Join, ...]
    girths: tuple[Girth, ...]


def ribbed(d: Draft, c: RibbedChoices, *, surveyed: bool, front_edge: CentreRule = ON_THE_FOLD) -> Ribbed:
    """Body and sleeves end higher by the width of their rib, so that the finished length is what was chosen.

    Where the front has an edge of its own it opens, and the hem band ends there.
    """
    opened, zipped = front_edge is not ON_THE_FOLD, front_edge is ZIP_FRONT
    made = top(d, c, surveyed=surveyed, hem_band=c.hem_band.width, front_edge=front_edge)
    back, front = made.body.back, made.body.front
    arm = sleeve(d, c.sleeve, back.notch, front.notch, made.frame.arm_length, cuff=c.cuff.width)
    wrist = cuff(d, c.cuff, arm.hem_width, at_wrist=arm.reaches_the_wrist)
    hem = hem_band(
        d,
        c.hem_band,
        d.measured("front_hem", "Half the front hem", front.hem.reading()),
        d.measured("back_hem", "Half the back hem", back.hem.reading()),
        opened=opened,
    )
    return Ribbed(
        made,
        (arm.piece, wrist.piece, hem.piece),
        (*body_seams(), *(zip_seams() if zipped else ()), *sleeve_seams(arm), *cuff_seams(wrist), *hem_band_seams(hem)),
        (*body_joins(made.back_side, made.neckline.bends), *(zip_joins() if zipped else ()), *sleeve_joins()),
        (*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
