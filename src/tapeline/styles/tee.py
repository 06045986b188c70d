"""Style `tee`: a pull-on top of knitted cloth with a ribbed neckband."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.dartless import dartless
from tapeline.blocks.expectation import expectation
from tapeline.blocks.frame import frame
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neck import neckline
from tapeline.blocks.neckband import BandChoices, neckband
from tapeline.blocks.outline import shaped_side
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.body import (
    HalfShape,
    band_seams,
    body,
    body_joins,
    body_seams,
    girths,
    sleeve_joins,
    sleeve_seams,
)
from tapeline.styles.style import Style

__all__ = ["STYLE", "NecklineChoices", "TeeChoices", "tee"]


@dataclass(frozen=True, slots=True)
class NecklineChoices:
    """How much wider and lower than the neck."""

    widen: Length = choice(cm(1), 0, 8, "wider at each shoulder, along the shoulder seam")
    lower_front: Length = choice(cm(1), 0, 15, "lower at the centre front")
    lower_back: Length = choice(cm(0.5), 0, 12, "lower at the centre back")


@dataclass(frozen=True, slots=True)
class TeeChoices:
    """What a maker chooses of a tee."""

    looseness: Looseness = LOOSENESS["slight"]
    neckline: NecklineChoices = NecklineChoices()
    band: BandChoices = BandChoices()
    waist: Length = choice(cm(1.5), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), 0, 60, "hem below the hip line")
    sleeve: SleeveChoices = SleeveChoices()


def tee(d: Draft, c: TeeChoices, *, surveyed: bool) -> Garment:
    """The block with a wider neck, a shaped side, a hem below the hip, a sleeve and a band."""
    d.chosen(c)
    f = frame(d, expectation(d.wearer.figure, surveyed=surveyed))
    points = dartless(d, f, c.looseness)
    neck, back, front = points.neck, points.back, points.front

    neck.back.section("The tee's neck, back")
    back_centre = neck.back.point("neckline_centre", "Lower at the centre back", neck.nape.down(c.neckline.lower_back))
    back_end = neck.back.point(
        "neckline_shoulder", "Wider along the shoulder", neck.back_shoulder_line.at(c.neckline.widen)
    )
    neck.front.section("The tee's neck, front")
    front_centre = neck.front.point(
        "neckline_centre", "Lower at the centre front", neck.front_neck.down(c.neckline.lower_front)
    )
    front_end = neck.front.point(
        "neckline_shoulder", "Wider along the shoulder", neck.front_shoulder_line.at(c.neckline.widen)
    )
    neck_line = neckline(neck, back_centre, back_end, front_centre, front_end)

    neck.back.section("Hem and side of the back")
    hem_below = d.measured("hem_below_hip", "How far the hem lies below the hip line", c.length + c.looseness.hem)
    back_hem_centre = neck.back.point("hem_centre", "The hem, on the centre back", back.hip_level.down(hem_below))
    back_side = shaped_side(neck.back, back, c.waist, back_hem_centre)

    neck.front.section("Hem and side of the front")
    front_level = neck.front.point("hem_level", "The back's hem, on the centre front", front.hip_level.down(hem_below))
    front_hem_centre = neck.front.point("hem_centre", "Lower by the front drop", front_level.down(f.front_drop))
    front_side = shaped_side(neck.front, front, c.waist, front_level)

    made = body(
        d,
        points,
        HalfShape(neck_line.back, back_centre, back_end, back_side, back_hem_centre),
        HalfShape(neck_line.front, front_centre, front_end, front_side, front_hem_centre),
    )
    arm = sleeve(d, c.sleeve, made.back_armhole, made.front_armhole, f.arm_length)
    band = neckband(d, c.band, neck_line)
    return d.garment(
        "tee",
        pieces=(made.back, made.front, arm.piece, band.piece),
        seams=(*body_seams(), *sleeve_seams(arm), *band_seams(band)),
        joins=(*body_joins(), *sleeve_joins()),
        girths=girths(d, f, c.looseness, back_side, arm),
    )


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
