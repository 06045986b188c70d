"""Style `vest`: a pull-on top without sleeves."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.armhole_finish import ArmholeFinish, ArmholeFinishChoices
from tapeline.blocks.dartless import Half
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeveless import HIGHEST, sleeveless_lines
from tapeline.draft import Draft, Sheet
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.armhole import armhole_edge, finished_armhole, inside_armhole
from tapeline.styles.body import ArmLines, HalfShape
from tapeline.styles.girths import body_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.neck import finished_neck
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.seams import body_joins, body_seams
from tapeline.styles.sides import LENGTH
from tapeline.styles.style import Style
from tapeline.styles.top import Banded, FinishedNeckline, top

__all__ = ["STYLE", "VestChoices", "vest"]


@dataclass(frozen=True, slots=True)
class VestChoices(Banded):
    """What a maker chooses of a vest top."""

    looseness: Looseness = LOOSENESS["slight"]
    underarm_raised: Length = choice(cm(2), 0, 3, "finished armhole higher than for a sleeve, which would cover a gap")
    shoulder_narrower: Length = choice(cm(3), 0, 8, "finished shoulder ends this much nearer to the neck")
    neckline: FinishedNeckline = FinishedNeckline(widen=cm(2.5), lower_front=cm(4), lower_back=cm(2))
    band: BandChoices = BandChoices(width=cm(1.5))
    armhole: ArmholeFinishChoices = ArmholeFinishChoices()
    armhole_band: BandChoices = BandChoices(width=cm(1.5))
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(1.5), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()

    @property
    def idle(self) -> frozenset[str]:
        """Bands say nothing where neck or armhole is finished in another way."""
        used = {
            "band": self.neckline.finish is NeckFinish.BAND,
            "armhole_band": self.armhole.finish is ArmholeFinish.BAND,
        }
        return frozenset(name for name, says in used.items() if not says)


def vest(d: Draft, c: VestChoices, *, surveyed: bool) -> Garment:
    """A top with a higher underarm, a narrower shoulder, and bands."""
    inside = inside_armhole(c.armhole, c.armhole_band)
    looseness = replace(c.looseness, drop=c.looseness.drop - c.underarm_raised + inside)

    def arm_lines(sheet: Sheet, half: Half, shape: HalfShape) -> ArmLines:
        end, side = shape.neckline_shoulder, shape.side.side
        lines = sleeveless_lines(d, sheet, half, end, side, narrower=c.shoulder_narrower, band=inside)
        return ArmLines(lines.shoulder, lines.armhole, lines.notch, armhole_edge(c.armhole))

    d.remark(
        "underarm-high",
        c.underarm_raised - c.looseness.drop,
        above=HIGHEST,
        says="the finished underarm lies so much higher than the block's that it may cut into the armpit",
        where="garment.underarm_raised",
        hint="lower garment.underarm_raised: 1 to 2 cm above the block is usual",
    )
    made = top(d, c, surveyed=surveyed, hem=c.hem, looseness=looseness, arm=arm_lines)
    made, pocket = pocketed(d, c.pocket, made)
    neck = finished_neck(d, c.neckline, c.band, made)
    arm = finished_armhole(d, c.armhole, c.armhole_band, made.body, neck=c.neckline)
    garment = d.garment(
        "vest",
        pieces=(*made.body.pieces, *neck.pieces, *arm.pieces, *pocket),
        seams=(*body_seams(), *neck.seams, *arm.seams),
        joins=(*body_joins(made.back_side, made.neckline.bends), *neck.joins, *arm.joins),
        girths=body_girths(d, made.frame, c.looseness, made.back_side),
    )
    return hem_finished(d, pieced(d, garment, c.yoke, c.colour_block, c.panel), c.hem)


STYLE = Style(
    "vest",
    "Vest top",
    "A pull-on top without sleeves",
    VestChoices,
    vest,
    meaning={"chest": (cm(-6), cm(26)), "waist": (cm(-4), cm(60)), "hip": (cm(-6), cm(40))},
    pull_on=True,
)
