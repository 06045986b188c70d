"""Style `raglan`: a top whose sleeves reach up to the neckline, as sports tops are cut."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.dartless import Half
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.parts import ColourBlockChoices
from tapeline.blocks.raglan import RaglanLines, raglan_lines
from tapeline.blocks.raglan_choices import RaglanChoices, RaglanSleeveChoices
from tapeline.blocks.raglan_sleeve import raglan_sleeve
from tapeline.draft import Draft, Sheet
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.body import ArmLines, HalfShape
from tapeline.styles.girths import body_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.neck import finished_neck
from tapeline.styles.pieced import blocked
from tapeline.styles.raglan_seams import over_the_sleeves, raglan_joins, raglan_seams
from tapeline.styles.sides import LENGTH
from tapeline.styles.style import Style
from tapeline.styles.top import Banded, FinishedNeckline, neck_edge, top

__all__ = ["STYLE", "RaglanTopChoices", "raglan"]


@dataclass(frozen=True, slots=True)
class RaglanTopChoices(Banded):
    """What a maker chooses of a raglan top."""

    looseness: Looseness = LOOSENESS["slight"]
    raglan: RaglanChoices = RaglanChoices()
    neckline: FinishedNeckline = FinishedNeckline()
    band: BandChoices = BandChoices()
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    sleeve: RaglanSleeveChoices = RaglanSleeveChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()


def raglan(d: Draft, c: RaglanTopChoices, *, surveyed: bool) -> Garment:
    """A top whose shoulders go with the sleeves."""
    shares = {"back": c.raglan.back, "front": c.raglan.front}
    cut: dict[str, RaglanLines] = {}

    def arm_lines(sheet: Sheet, half: Half, shape: HalfShape) -> ArmLines:
        share, end, side = shares[sheet.name], shape.neckline_shoulder, shape.side.side
        lines = raglan_lines(d, sheet, half, shape.neckline, end, side=side, share=share)
        cut[sheet.name] = lines
        return ArmLines(lines.shoulder, lines.raglan, lines.notch, neckline=lines.neckline)

    made = top(d, c, surveyed=surveyed, arm=arm_lines, hem=c.hem)
    back, front = cut["back"], cut["front"]
    arm = raglan_sleeve(d, c.sleeve, back, front, made.frame.arm_length, neck_edge=neck_edge(c.neckline))
    crossed = replace(made, neckline=replace(made.neckline, body=(front.neckline, back.neckline)))
    neck = over_the_sleeves(finished_neck(d, c.neckline, c.band, crossed))
    garment = d.garment(
        "raglan",
        pieces=(*made.body.pieces, *arm.pieces, *neck.pieces),
        seams=(*raglan_seams(), *neck.seams),
        joins=(*raglan_joins(made.back_side, made.neckline.bends), *neck.joins),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *arm.girths),
    )
    return hem_finished(d, blocked(d, garment, c.colour_block), c.hem)


STYLE = Style(
    "raglan",
    "Raglan top",
    "A pull-on top whose sleeves reach up to the neckline, in two pieces with a seam over the shoulder",
    RaglanTopChoices,
    raglan,
    meaning={
        "chest": (cm(-4), cm(26)),
        "waist": (cm(-2), cm(60)),
        "hip": (cm(-4), cm(40)),
        "upper_arm": (cm(0), cm(28)),
        "wrist": (cm(2), cm(20)),
    },
    pull_on=True,
)
