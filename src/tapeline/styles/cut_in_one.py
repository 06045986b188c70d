"""Style `cut-in-one`: a top whose sleeves are cut in one with back and front."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cut_in_one import CutInOne, cut_in_one_lines
from tapeline.blocks.cut_in_one_arm import CutInOneSizes
from tapeline.blocks.cut_in_one_choices import ArmChoices, CutInOneSleeveChoices
from tapeline.blocks.dartless import Half
from tapeline.blocks.gusset import SLIT_ALLOWANCE, gusset
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.sleeve_choices import reaches_the_wrist
from tapeline.draft import Draft, Sheet, hemmed, notch_along, only_if, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, Girth, Mark, NotchKind, choice
from tapeline.styles.body import ArmLines, HalfShape, OwnEdges
from tapeline.styles.cut_in_one_seams import cut_in_one_joins, cut_in_one_seams, gusset_seams
from tapeline.styles.girths import body_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.neck import finished_neck
from tapeline.styles.sides import LENGTH
from tapeline.styles.style import Style
from tapeline.styles.top import Banded, FinishedNeckline, Top, top

__all__ = ["STYLE", "CutInOneChoices", "cut_in_one"]

KINDS = {"front": NotchKind.SINGLE, "back": NotchKind.DOUBLE}

LEAST_EASE = cm(1)
"""Round the upper arm; common practice, no source."""


@dataclass(frozen=True, slots=True)
class CutInOneChoices(Banded):
    """What a maker chooses of a top that is cut in one with its sleeves."""

    looseness: Looseness = LOOSENESS["easy"]
    arm: ArmChoices = ArmChoices()
    neckline: FinishedNeckline = FinishedNeckline()
    band: BandChoices = BandChoices()
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    sleeve: CutInOneSleeveChoices = CutInOneSleeveChoices()


def cut_in_one(d: Draft, c: CutInOneChoices, *, surveyed: bool) -> Garment:
    """A top of back and front, and a gusset where one was chosen."""
    drawn: dict[str, CutInOne] = {}

    def arm_lines(sheet: Sheet, half: Half, shape: HalfShape) -> ArmLines:
        sizes = CutInOneSizes(
            d.tape("arm_length"), d.body("wrist", "Round the wrist, over the bone") + c.sleeve.wrist_ease
        )
        lines = cut_in_one_lines(
            d,
            sheet,
            half,
            shape.neckline_shoulder,
            shape.side,
            arm=c.arm,
            sleeve=c.sleeve,
            sizes=sizes,
            other=drawn.get("back"),
        )
        drawn[sheet.name] = lines
        return ArmLines(lines.overarm, lines.underarm, lines.on_sleeve, cut_in_one=own_edges(sheet.name, lines))

    made = top(d, c, surveyed=surveyed, arm=arm_lines, hem=c.hem)
    back, front = drawn["back"], drawn["front"]
    neck = finished_neck(d, c.neckline, c.band, made)
    diamond = () if front.opens is None or back.opens is None else (gusset(d, c.arm.slit, front.opens, back.opens),)
    garment = d.garment(
        "cut-in-one",
        pieces=(*made.body.pieces, *diamond, *neck.pieces),
        seams=(*cut_in_one_seams(), *(gusset_seams() if diamond else ()), *neck.seams),
        joins=(*cut_in_one_joins(made.back_side, made.neckline.bends), *neck.joins),
        girths=girths(d, c, made, back, front),
    )
    return hem_finished(d, garment, c.hem)


def own_edges(name: str, lines: CutInOne) -> OwnEdges:
    """From the neck over the arm, round its hem, and under it to the side; notched at the shoulder point."""
    slit = lines.slit
    return OwnEdges(
        (
            hemmed("sleeve_hem", lines.hem),
            sewn("underarm", lines.underarm),
            *(
                (sewn("slit_sleeve", slit[0], SLIT_ALLOWANCE), sewn("slit_side", slit[1], SLIT_ALLOWANCE))
                if slit
                else ()
            ),
            sewn("side", lines.side),
        ),
        (*only_if(slit is None, notch_along("underarm", lines.straight, KINDS[name])),),
        lines.side,
        "overarm",
        lines.shoulder_point,
        (Mark("arm_across", lines.across.path),),
    )


def girths(d: Draft, c: CutInOneChoices, made: Top, back: CutInOne, front: CutInOne) -> tuple[Girth, ...]:
    """Chest where the side begins; waist and hip; upper arm square across the sleeve; the wrist of a long sleeve."""
    quarter = d.measured("side_quarter", "From the centre to the side where it begins", back.side_out)
    bust = made.frame.bust
    chest = Girth("chest", bust, quarter * 4 - bust, (("back", "underarm_side", 2), ("front", "underarm_side", 2)))
    lower = tuple(g for g in body_girths(d, made.frame, c.looseness, made.back_side) if g.name != "chest")
    upper_arm = d.body("upper_arm", "Round the upper arm, relaxed")
    round_arm = d.measured(
        "sleeve_width", "Across the sleeve, front and back", front.across.reading() + back.across.reading()
    )
    d.require(
        "cut-in-one-tight",
        round_arm,
        upper_arm + LEAST_EASE,
        says="the steeper a sleeve is cut in one, the nearer the underarm lies to the arm: the sleeve is too narrow",
        where="garment.arm.hang",
        hint="make garment.arm.hang smaller, or garment.looseness.drop larger",
    )
    wrist = d.body("wrist", "Round the wrist, over the bone")
    round_hem = d.measured("sleeve_hem_width", "Along the sleeve's hem", front.hem.reading() + back.hem.reading())
    return (
        chest,
        *lower,
        Girth("upper_arm", upper_arm, round_arm - upper_arm, across("arm_across")),
        *only_if(
            reaches_the_wrist(back.length, made.frame.arm_length),
            Girth("wrist", wrist, round_hem - wrist, across("sleeve_hem")),
        ),
    )


def across(line: str) -> tuple[tuple[str, str, float], ...]:
    """Once on each half."""
    return (("front", line, 1), ("back", line, 1))


STYLE = Style(
    "cut-in-one",
    "Cut-in-one top",
    "A pull-on top of two pieces: the sleeves are cut in one with back and front, with a gusset or without",
    CutInOneChoices,
    cut_in_one,
    meaning={
        "chest": (cm(-4), cm(40)),
        "waist": (cm(-2), cm(80)),
        "hip": (cm(-4), cm(48)),
        "upper_arm": (cm(0), cm(40)),
        "wrist": (cm(2), cm(30)),
    },
    pull_on=True,
    uncorrected=frozenset(
        {"full_bust.width", "full_bust.length", "full_waist", "forward_shoulders", "shoulder_blades"}
    ),
)
