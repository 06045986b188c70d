"""The frame: the sizes that are not taped, by a rule of proportion or from what a survey expects.

Both are worked out; the docket says which one is drawn, and a tape or a size set by hand replaces either.
Rules of proportion: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.expectation import Expectation, armhole_depth_by_rule, half_back_by_rule, neck_width_by_rule
from tapeline.blocks.neck import SHOULDER_RUN, neck, neckline
from tapeline.draft import Draft
from tapeline.lengths import Length, at_least, cm

__all__ = ["Frame", "frame"]

NECK_EASE = cm(5.5)
"""How much longer the rule's neckline is than the base of the neck at the middle size; tested against the survey."""
SLOPE_EASE = cm(2.8)
"""How much further the survey's women of the middle size slope over 14 cm than the rule draws them: tested against it.

The rule leaves that room over the muscle between neck and shoulder point, which a tape from bone to bone cuts across;
taken as it is, a tape would make the usual shoulder 10 degrees steeper. For men and children it stands in.
"""
LEAST_FALL = cm(1)
"""Flatter, and the neckline waves; a flatter shoulder is corrected after a fitting."""
CHEST_NARROWER = cm(0.5)
"""The front is this much narrower than the back at the armhole, each side: the arm reaches forward."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Every size that the block is drawn from."""

    bust: Length
    waist: Length
    hip: Length
    shoulder_width: Length
    back_length: Length
    hip_depth: Length
    arm_length: Length
    armhole_depth: Length
    half_back_width: Length
    half_chest_width: Length
    neck_width: Length
    back_shoulder_fall: Length
    front_shoulder_fall: Length
    front_drop: Length


def frame(d: Draft, expected: Expectation) -> Frame:
    """The frame of one wearer; `expected` is what a survey says, or nothing where the docket asks for the rule."""
    d.section("The tapes")
    bust, upper_chest = d.tape("bust"), d.tape("upper_chest")
    waist, hip = d.tape("waist"), d.tape("hip")
    shoulder_width, arm_length = d.tape("shoulder_width"), d.tape("arm_length")
    back_length, hip_depth = d.tape("back_length"), d.tape("hip_depth")

    d.section("The frame")
    armhole_depth = d.size(
        "armhole_depth",
        "From the nape down to the chest line",
        armhole_depth_by_rule(upper_chest),
        estimate=expected.armhole_depth(d),
        taped=lambda: expected.armhole_depth_from_tape(d),
    )
    half_back_width = d.size(
        "half_back_width",
        "From the centre back to the armhole, half way down it",
        half_back_by_rule(upper_chest),
        estimate=expected.half_back_width(d),
        taped=lambda: expected.half_back_from_tape(d),
        tape="back_width",
    )
    half_chest_width = d.size(
        "half_chest_width",
        "From the centre front to the armhole: a little less than at the back",
        upper_chest / 6 + cm(2.5),
        estimate=expected.half_chest_width(half_back_width, CHEST_NARROWER),
        taped=lambda: d.tape("chest_width") / 2,
        tape="chest_width",
    )
    back_shoulder_fall = d.size(
        "back_shoulder_fall",
        "How far the back shoulder falls over a run of 14 cm",
        cm(4),
        taped=lambda: at_least(
            d.measured("taped_fall", "How far the taped slope falls", d.fall("shoulder_slope", SHOULDER_RUN))
            - SLOPE_EASE,
            LEAST_FALL,
        ),
        tape="shoulder_slope",
    )
    front_shoulder_fall = d.size(
        "front_shoulder_fall",
        "The front shoulder falls a little more: the seam lies forward of the ridge",
        back_shoulder_fall + cm(1),
    )
    neck_width = d.size(
        "neck_width",
        "From the centre to the neck point",
        neck_width_by_rule(upper_chest),
        estimate=expected.neck_width(d),
        taped=lambda: d.found(
            "neck_width",
            "so wide that the neckline, both halves, measures",
            lambda scratch, width: neckline_of_body(scratch, width, back_shoulder_fall, front_shoulder_fall),
            equals=d.tape("neck") + NECK_EASE,
            between=(upper_chest / 30, upper_chest / 5),
        ),
        tape="neck",
    )
    front_drop = d.size(
        "front_drop",
        "How much lower the front hem hangs at the centre, for the bust takes up length",
        expected.front_drop(d),
    )
    full_waist = d.correction("full_waist")
    if full_waist.mm:
        front_drop = d.measured(
            "full_front_drop",
            "The front hem's drop, and half of what the waist is out: the belly takes up length",
            front_drop + full_waist / 2,
        )
    return Frame(
        bust,
        waist,
        hip,
        shoulder_width,
        back_length,
        hip_depth,
        arm_length,
        armhole_depth,
        half_back_width,
        half_chest_width,
        neck_width,
        back_shoulder_fall,
        front_shoulder_fall,
        front_drop,
    )


def neckline_of_body(d: Draft, neck_width: Length, back_fall: Length, front_fall: Length) -> Length:
    """The whole neckline of a neck that wide, drawn on scratch paper and measured."""
    n = neck(d, neck_width, back_fall, front_fall)
    line = neckline(n, n.nape, n.back_neck_point, n.front_neck, n.front_neck_point)
    return (line.back.reading().length + line.front.reading().length) * 2
