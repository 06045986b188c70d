"""Style `tee`: a pull-on top of knitted cloth with a ribbed neckband."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.neck import finished_neck
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.seams import body_joins, body_seams, sleeve_joins, sleeve_seams
from tapeline.styles.sides import LENGTH
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import Banded, FinishedNeckline, top

__all__ = ["STYLE", "TeeChoices", "tee"]


@dataclass(frozen=True, slots=True)
class TeeChoices(Banded):
    """What a maker chooses of a tee."""

    looseness: Looseness = LOOSENESS["slight"]
    neckline: FinishedNeckline = FinishedNeckline()
    band: BandChoices = BandChoices()
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(1.5), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    sleeve: SleeveChoices = SleeveChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def tee(d: Draft, c: TeeChoices, *, surveyed: bool) -> Garment:
    """A top with a sleeve and a band."""
    made = top(d, c, surveyed=surveyed, hem=c.hem)
    made, pocket = pocketed(d, c.pocket, made)
    arm = sleeve(d, c.sleeve, made.body.back.notch, made.body.front.notch, made.frame.arm_length)
    neck = finished_neck(d, c.neckline, c.band, made)
    garment = d.garment(
        "tee",
        pieces=(*made.body.pieces, arm.piece, *neck.pieces, *pocket),
        seams=(*body_seams(), *sleeve_seams(arm), *neck.seams),
        joins=(*body_joins(made.back_side, made.neckline.bends), *sleeve_joins(), *neck.joins),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
    full = sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)
    return hem_finished(d, pieced(d, full, c.yoke, c.colour_block, c.panel), c.hem)


STYLE = Style(
    "tee",
    "Tee",
    "A pull-on top of knitted cloth with a ribbed neckband",
    TeeChoices,
    tee,
    meaning={
        "chest": (cm(-4), cm(26)),
        "waist": (cm(-2), cm(60)),
        "hip": (cm(-4), cm(40)),
        "upper_arm": (cm(0), cm(24)),
        "wrist": (cm(2), cm(20)),
    },
    pull_on=True,
)
