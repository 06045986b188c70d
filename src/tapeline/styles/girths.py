"""The girths of a plain top: round the body at chest, waist and hip, round the upper arm and the wrist."""

from __future__ import annotations

from tapeline.blocks.frame import Frame
from tapeline.blocks.looseness import Looseness
from tapeline.blocks.outline import SideLines
from tapeline.blocks.sleeve import Sleeve
from tapeline.draft import Draft
from tapeline.pattern import Girth

__all__ = ["body_girths", "sleeve_girths"]


def body_girths(d: Draft, f: Frame, c: Looseness, side: SideLines) -> tuple[Girth, ...]:
    """Round the body at chest, waist and hip, as far down as the side is sewn: the tape, and the ease that is meant."""
    girths = [Girth("chest", f.bust, c.side * 4, round_body("chest_level"))]
    if "waist" in side.reaches:
        waist_quarter = d.measured("waist_quarter", "From the centre to the side at the waist", side.waist_out)
        girths.append(Girth("waist", f.waist, waist_quarter * 4 - f.waist, round_body("waist_level")))
    if "hip" in side.reaches:
        girths.append(Girth("hip", f.hip, c.side * 4, round_body("hip_level")))
    return tuple(girths)


def sleeve_girths(d: Draft, arm: Sleeve) -> tuple[Girth, ...]:
    """Round the upper arm, and the wrist where the sleeve reaches it."""
    upper_arm = d.body("upper_arm", "Round the upper arm, relaxed")
    return (Girth("upper_arm", upper_arm, arm.width - upper_arm, round_sleeve("cap_foot")), *arm.wrist)


def round_body(level: str) -> tuple[tuple[str, str, float], ...]:
    """Twice across the half back and twice across the half front."""
    return (("back", level, 2), ("front", level, 2))


def round_sleeve(level: str) -> tuple[tuple[str, str, float], ...]:
    """Once across the sleeve."""
    return (("sleeve", level, 1),)
