"""The gusset: a diamond set into two slits under the arm, so that a steep sleeve cut in one lets the arm be lifted.

The slit is not a bare cut: its mouth is opened along sleeve and side, so that its sides have an allowance and its end a
corner that can be sewn. What the diamond gives is what opens on the paper when the sleeve is turned up.
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from fractions import Fraction

from tapeline.blocks.cut_in_one_choices import ArmChoices
from tapeline.blocks.neck import SHOULDER_RUN
from tapeline.draft import Draft, Drawn, Place, Sheet, fall_at, halfway, lifted, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Piece

__all__ = ["MOUTH", "SLIT_ALLOWANCE", "gusset", "slit_lines", "slit_opens"]

MOUTH = Fraction(1, 2)
"""The slit opens so far down the side and along the sleeve, as a share of its sides: sharper, it cannot be sewn."""
FLAT = Fraction(19, 20)
"""The gusset's corners at sleeve and side may be this share of two of its sides apart, or it is flat."""
GRAIN = Fraction(1, 4)
SLIT_ALLOWANCE = cm(0.5)
"""Of the slit's sides and the gusset's: more does not fit between the sides of the slit near its end."""


def gusset(d: Draft, side: Length, front: Length, back: Length) -> Piece:
    """A diamond with four equal sides, as high as both slits open on average."""
    d.section("The gusset's sizes")
    high = d.measured(
        "gusset_height", "From sleeve to side: as far as front and back open, on average", (front + back) / 2
    )
    half_width = d.measured("gusset_half_width", "The other way: what its sides leave", side.leg(high / 2, cm(1)))
    s = d.sheet("gusset")
    s.section("The gusset")
    top = s.point("sleeve_corner", "Meets the sleeve's underarm seam", s.origin)
    bottom = s.point("side_corner", "Meets the side seam", top.down(high))
    middle = halfway(top, bottom)
    front_end = s.point("front_end", "Goes into the end of the front's slit", middle.out(half_width))
    back_end = s.point("back_end", "Goes into the end of the back's slit", middle.inward(half_width))

    def edge(name: str, one: Place, other: Place) -> Drawn:
        return s.straight(name, "As long as the side of the slit that it is sewn to", one, other)

    return s.piece(
        "Gusset",
        sewn("front_sleeve", edge("front_sleeve", top, front_end), SLIT_ALLOWANCE),
        sewn("front_side", edge("front_side", front_end, bottom), SLIT_ALLOWANCE),
        sewn("back_side", edge("back_side", bottom, back_end), SLIT_ALLOWANCE),
        sewn("back_sleeve", edge("back_sleeve", back_end, top), SLIT_ALLOWANCE),
        grain=(middle.down(high * GRAIN), middle.up(high * GRAIN)),
        cut=Cut(2),
    )


def slit_lines(d: Draft, s: Sheet, side: Length, on_sleeve: Place, on_side: Place) -> tuple[Drawn, Drawn]:
    """A slit with two equal sides, its end inside the body, above the middle of its mouth."""
    mouth = d.measured(f"{s.name}_slit_mouth", "Across the slit's mouth", on_side.reading_from(on_sleeve))
    end = s.point(
        "slit_end",
        "As far from both: the end of the slit",
        halfway(on_side, on_sleeve).away_from((on_side, on_sleeve), side.leg(mouth / 2, cm(1))),
    )
    return (
        s.straight("slit_sleeve", "Sewn to the gusset, on the sleeve", on_sleeve, end),
        s.straight("slit_side", "Sewn to the gusset, on the body", end, on_side),
    )


def slit_opens(d: Draft, s: Sheet, tip: Place, on_sleeve: Place, on_side: Place, *, arm: ArmChoices) -> Length:
    """How far the slit's mouth is open when the arm is lifted as far as was chosen."""
    up = s.point("underarm_lifted", "The arm lifted as far as it is meant to go", lifted(on_sleeve, tip, arm.lift))
    opens = d.measured(f"{s.name}_slit_opens", "How far the slit opens", up.reading_from(on_side))
    d.require(
        "gusset-flat",
        arm.slit * 2 * FLAT,
        opens,
        says="lifted so far, the slit opens wider than both its sides can span",
        where="garment.arm.slit",
        hint="make garment.arm.slit longer, or garment.arm.lift smaller",
    )
    d.measured(
        "arm_reach_fall",
        "How far the arm falls over 14 when the gusset pulls",
        fall_at(arm.hang - arm.lift, SHOULDER_RUN),
    )
    return opens
