"""Style `block`: the bare dartless block and its sleeve, as close as the looseness says."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.dartless import dartless
from tapeline.blocks.expectation import expectation
from tapeline.blocks.frame import frame
from tapeline.blocks.front_side import hem_centre_of_back, straight_front_side
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neck import neckline
from tapeline.blocks.outline import straight_side
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import cm
from tapeline.pattern import Garment
from tapeline.styles.body import HalfShape, body
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.seams import body_joins, body_seams, sleeve_joins, sleeve_seams
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style

__all__ = ["STYLE", "BlockChoices", "block"]


@dataclass(frozen=True, slots=True)
class BlockChoices:
    """What a maker chooses of a bare block."""

    looseness: Looseness = LOOSENESS["close"]
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"])


def block(d: Draft, c: BlockChoices, *, surveyed: bool) -> Garment:
    """Back and front to the hip line, and a long sleeve."""
    d.chosen(c)
    f = frame(d, expectation(d.wearer.figure, surveyed=surveyed))
    points = dartless(d, f, c.looseness)
    neck, back, front = points.neck, points.back, points.front
    neck_line = neckline(neck, neck.nape, neck.back_neck_point, neck.front_neck, neck.front_neck_point)

    neck.back.section("Hem and side of the back")
    back_hem_centre = neck.back.point("hem_centre", "The hem, on the centre back", back.hip_level.down(c.looseness.hem))
    back_side = straight_side(neck.back, back, back_hem_centre)
    back_hem = hem_centre_of_back(d, neck.back, back_hem_centre)

    neck.front.section("Hem and side of the front")
    front_level = neck.front.point(
        "hem_level", "The back's hem, on the centre front", front.hip_level.down(c.looseness.hem)
    )
    front_hem_centre = neck.front.point("hem_centre", "Lower by the front drop", front_level.down(f.front_drop))
    made_sides = straight_front_side(d, neck.front, front, front_level, back=back_side, hem=front_hem_centre)
    back_side = made_sides.back

    made = body(
        d,
        points,
        HalfShape(
            neck_line.back,
            neck.nape,
            neck.back_neck_point,
            back_side,
            back_hem,
        ),
        HalfShape(
            neck_line.front,
            neck.front_neck,
            neck.front_neck_point,
            made_sides.front,
            made_sides.front_hem,
        ),
    )
    arm = sleeve(d, c.sleeve, made.back.notch, made.front.notch, f.arm_length)
    garment = d.garment(
        "block",
        pieces=(*made.pieces, arm.piece),
        seams=(*body_seams(), *sleeve_seams(arm)),
        joins=(*body_joins(), *sleeve_joins()),
        girths=(*body_girths(d, f, c.looseness, back_side), *sleeve_girths(d, arm)),
    )
    return sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)


STYLE = Style(
    "block",
    "Dartless block",
    "The bare block and its sleeve: to try on, and to draw styles from",
    BlockChoices,
    block,
    meaning={"chest": (cm(0), cm(8)), "upper_arm": (cm(0), cm(20))},
)
