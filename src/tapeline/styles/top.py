"""What the styles drawn from the block share: a neck opened for the head, a side that follows the body, a longer hem.

A style's page calls `top` for back and front, and adds what makes it this style: sleeve, band, closure.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Protocol

from tapeline.blocks.centre import ON_THE_FOLD, CentreRule
from tapeline.blocks.dartless import Dartless, dartless
from tapeline.blocks.expectation import expectation
from tapeline.blocks.frame import Frame, frame
from tapeline.blocks.funnel import funnel_neckline
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.keyhole import KeyholePlace, keyhole_at
from tapeline.blocks.looseness import Looseness
from tapeline.blocks.neck import Neck, Neckline, deeper, shaped_neckline
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NeckLine
from tapeline.blocks.neckline_choices import Banded, FinishedNeckline, NecklineChoices
from tapeline.blocks.outline import SideLines
from tapeline.draft import Draft, Drawn, Place, hemmed, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Edge
from tapeline.styles.body import ArmRule, Body, HalfShape, body, set_in
from tapeline.styles.sides import SideChoices, sides

__all__ = ["Banded", "FinishedNeckline", "NecklineChoices", "Top", "TopChoices", "top"]

LEAST_ABOVE_CHEST = cm(1)
"""From the neckline down to the chest line: less, and no girth is left to be proved there."""
LEAST_SHOULDER = cm(1)
"""From the neckline to the shoulder tip: less is no seam."""


class TopChoices(Protocol):
    """What a style must let a maker choose, for `top` to draw it."""

    @property
    def looseness(self) -> Looseness:
        """How much looser than the body."""
        ...

    @property
    def neckline(self) -> NecklineChoices:
        """How the neck is opened."""
        ...

    @property
    def waist(self) -> Length:
        """Taken in at each side seam, at the waist."""
        ...

    @property
    def length(self) -> Length:
        """Hem below the hip line."""
        ...

    @property
    def flare(self) -> Length:
        """Out at each side seam, level with the hem."""
        ...


@dataclass(frozen=True, slots=True)
class Top:
    """Back and front of a top, and what the parts that are sewn to them are drawn from."""

    frame: Frame
    points: Dartless
    neckline: Neckline
    body: Body
    back_side: SideLines
    front_centre: Place
    """Where the neckline begins."""
    back_centre: Place


def top(
    d: Draft,
    c: TopChoices,
    *,
    surveyed: bool,
    arm: ArmRule = set_in,
    looseness: Looseness | None = None,
    hem_band: Length | None = None,
    front_edge: CentreRule = ON_THE_FOLD,
    hem: HemChoices = PLAIN_HEM,
) -> Top:
    """The block with a wider neck, a shaped side and a hem below the hip.

    Args:
        d: Where it is drawn.
        c: What was chosen.
        surveyed: Whether sizes that are not taped are as the survey expects them.
        arm: Draws shoulder and armhole.
        looseness: In place of the one chosen, where a style makes one from it.
        hem_band: The finished width of a band; the hem is higher by as much.
        front_edge: Draws the centre of the front.
        hem: How a hem that is turned up is shaped, and how far it is slit at the sides.
    """
    d.chosen(c)
    f = frame(d, expectation(d.wearer.figure, surveyed=surveyed))
    used = looseness or c.looseness
    points = dartless(d, f, used)
    neck = points.neck
    shape = c.neckline.shape
    widen = c.neckline.widen + shape.wider if shape.wider.mm else c.neckline.widen

    d.require(
        "neckline-too-wide",
        d.sizes["shoulder_length"].length + used.shoulder - widen,
        LEAST_SHOULDER,
        says="the neckline is so wide that hardly any shoulder is left",
        where="garment.neckline.widen",
        hint="make garment.neckline.widen smaller",
    )
    neck_line, (back_centre, back_end, front_centre, front_end) = opened_neck(neck, f, c.neckline, widen)
    d.require(
        "neckline-past-chest",
        Length(front_centre.point.y - points.front.chest_level.point.y, "from_the_neckline_to_the_chest_line"),
        LEAST_ABOVE_CHEST,
        says="the neckline comes down to the chest line, where the width round the body is kept",
        where="garment.neckline.lower_front",
        hint="make garment.neckline.lower_front smaller",
    )
    tops = neck_line.tops
    edge = neck_edge(c.neckline)

    finished = c.length + c.looseness.hem
    chosen = SideChoices(c.waist, c.flare, hem)
    made_sides = sides(d, points, chosen, finished - hem_band if hem_band else finished, f.front_drop)

    made = body(
        d,
        points,
        HalfShape(
            neck_line.back,
            back_centre,
            back_end,
            made_sides.back,
            made_sides.back_hem,
            hem_band is not None,
            centre=slit(c.neckline, KeyholePlace.BACK, ON_THE_FOLD),
            edge=edge,
            funnel=(tops[0], shape.rise) if tops else None,
        ),
        HalfShape(
            neck_line.front,
            front_centre,
            front_end,
            made_sides.front,
            made_sides.front_hem,
            hem_band is not None,
            neck_line.pointed,
            slit(c.neckline, KeyholePlace.FRONT, front_edge),
            edge,
            (tops[1], shape.rise) if tops else None,
        ),
        arm,
    )
    return Top(f, points, neck_line, made, made_sides.back, front_centre, back_centre)


def opened_neck(
    neck: Neck, f: Frame, c: NecklineChoices, widen: Length
) -> tuple[Neckline, tuple[Place, Place, Place, Place]]:
    """The neckline, and its ends at centre and shoulder of the back, then of the front."""
    shape = c.shape
    funnel = shape.line is NeckLine.FUNNEL
    back_centre = front_centre = neck.nape
    neck.back.section("The neckline's ends, back")
    if not funnel:
        back_centre = neck.back.point("neckline_centre", "Lower at the centre back", neck.nape.down(c.lower_back))
    back_end = neck.back.point("neckline_shoulder", "Wider along the shoulder", neck.back_shoulder_line.at(widen))
    neck.front.section("The neckline's ends, front")
    if not funnel:
        front_centre = neck.front.point(
            "neckline_centre",
            "Lower at the centre front",
            deeper(neck, f.neck_width, shape.depth).down(c.lower_front),
        )
    front_end = neck.front.point("neckline_shoulder", "Wider along the shoulder", neck.front_shoulder_line.at(widen))
    if funnel:
        line = funnel_neckline(neck, back_end, front_end, shape.rise)
        back_centre, front_centre = line.centres or (back_centre, front_centre)
        return line, (back_centre, back_end, front_centre, front_end)
    ends = back_centre, back_end, front_centre, front_end
    return shaped_neckline(neck, shape, ends), ends


def slit(c: NecklineChoices, place: KeyholePlace, otherwise: CentreRule) -> CentreRule:
    """The centre of a half: with its keyhole, where that is its place."""
    here = isinstance(c, FinishedNeckline) and c.keyhole.place is place
    return keyhole_at(c.keyhole) if isinstance(c, FinishedNeckline) and here else otherwise


def neck_edge(c: NecklineChoices) -> Callable[[str, Drawn], Edge]:
    """What becomes of the neckline: turned up, sewn with an allowance as wide as its binding, or just sewn."""
    if not isinstance(c, FinishedNeckline):
        return sewn
    if c.finish is NeckFinish.HEM:
        return partial(hemmed, depth=c.hem)
    if c.finish is NeckFinish.BINDING:
        return partial(sewn, allowance=c.binding.width)
    return sewn
