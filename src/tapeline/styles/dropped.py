"""Style `dropped`: a tee whose shoulder is carried down the arm, as oversized tops are cut."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.dartless import Half
from tapeline.blocks.dropped import dropped_lines
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.sleeve_sizes import Dropped
from tapeline.draft import Draft, Sheet
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.body import ArmLines, HalfShape
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

__all__ = ["STYLE", "DroppedChoices", "dropped"]


@dataclass(frozen=True, slots=True)
class DroppedChoices(Banded):
    """What a maker chooses of a tee with a dropped shoulder."""

    looseness: Looseness = LOOSENESS["loose"]
    shoulder_drop: Length = choice(cm(6), 2, 15, "shoulder carried down the arm; the cap is lowered by as much")
    neckline: FinishedNeckline = FinishedNeckline()
    band: BandChoices = BandChoices()
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(5), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    sleeve: SleeveChoices = SleeveChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def dropped(d: Draft, c: DroppedChoices, *, surveyed: bool) -> Garment:
    """A top whose sleeve begins on the arm."""
    set_in: list[Length] = []

    def arm_lines(sheet: Sheet, half: Half, shape: HalfShape) -> ArmLines:
        lines = dropped_lines(d, sheet, half, shape.neckline_shoulder, shape.side.side, drop=c.shoulder_drop)
        set_in.append(lines.set_in)
        return ArmLines(lines.shoulder, lines.armhole, lines.notch)

    made = top(d, c, surveyed=surveyed, hem=c.hem, arm=arm_lines)
    made, pocket = pocketed(d, c.pocket, made)
    back, front = set_in
    both = d.measured("set_in_armhole", "Both armholes of one side as they would be, set in", back + front)
    arm = sleeve(
        d,
        c.sleeve,
        made.body.back.notch,
        made.body.front.notch,
        made.frame.arm_length,
        dropped=Dropped(c.shoulder_drop, both),
    )
    neck = finished_neck(d, c.neckline, c.band, made)
    garment = d.garment(
        "dropped",
        pieces=(*made.body.pieces, arm.piece, *neck.pieces, *pocket),
        seams=(*body_seams(), *sleeve_seams(arm), *neck.seams),
        joins=(*body_joins(made.back_side, made.neckline.bends), *sleeve_joins(), *neck.joins),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
    full = sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)
    return hem_finished(d, pieced(d, full, c.yoke, c.colour_block, c.panel), c.hem)


STYLE = Style(
    "dropped",
    "Dropped-shoulder tee",
    "A wide tee whose shoulder is carried down the arm, with a flat cap",
    DroppedChoices,
    dropped,
    meaning={
        "chest": (cm(4), cm(48)),
        "waist": (cm(-2), cm(80)),
        "hip": (cm(-4), cm(48)),
        "upper_arm": (cm(0), cm(40)),
        "wrist": (cm(2), cm(40)),
    },
    pull_on=True,
)
