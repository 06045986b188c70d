"""The centre strip of a hood of three panels: its long edges are as long as the crown of the side panels."""

from __future__ import annotations

from fractions import Fraction

from tapeline.blocks.hood_choices import HoodChoices
from tapeline.draft import STRAIGHT_DOWN, Draft, Drawn, Place, Sheet, folded, hemmed, notch_along, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Piece

__all__ = ["hood_strip"]

GRAIN_IN = cm(1.5)


def hood_strip(d: Draft, c: HoodChoices, crown: Drawn, back_of_head: Place) -> Piece:
    """Half a strip, on the fold along its middle, from the face over the crown down to the neck."""
    d.section("The centre strip")
    seam = d.measured("hood_crown", "Along the crown of a side panel", crown.reading())
    notched = d.measured("hood_crown_notch", "From the face to its notch", crown.reading_to(back_of_head))
    length = d.measured(
        "hood_strip_length",
        "From end to end of the strip",
        d.found(
            "hood_strip_length",
            "so that its long edge measures",
            lambda scratch, long: long_edge(scratch.sheet("hood_strip"), c, long)[2].reading().length,
            equals=seam,
            between=(seam * Fraction(4, 5), seam),
        ),
    )
    s = d.sheet("hood_strip")
    s.section("The strip")
    face_side, neck_side, side = long_edge(s, c, length)
    face_middle = s.point("face_middle", "The middle, at the face", s.origin)
    neck_middle = s.point("neck_middle", "The middle, at the neck", face_middle.down(length))
    return s.piece(
        "Hood centre strip",
        folded("middle", s.straight("middle", "On the fold of the cloth", neck_middle, face_middle)),
        hemmed("face", s.straight("face", "Turned in with the sides", face_middle, face_side), c.casing),
        sewn("side", side),
        sewn("neckline", s.straight("neckline", "Sewn to the back neckline", neck_side, neck_middle)),
        grain=(face_middle.down(length / 2).out(GRAIN_IN), face_middle.down(length / 4).out(GRAIN_IN)),
        cut=Cut(1),
        notches=(notch_along("side", notched),),
    )


def long_edge(s: Sheet, c: HoodChoices, length: Length) -> tuple[Place, Place, Drawn]:
    """Its ends at the face and at the neck, and the edge: square to both ends, narrowing evenly between."""
    face = s.point("face_side", "Half the width at the face", s.origin.out(c.strip_width / 2))
    neck = s.point("neck_side", "Half the width at the neck", s.origin.down(length).out(c.strip_neck / 2))
    says = "Sewn to the crown of a side panel: square to both ends, and as long"
    return face, neck, s.curve("side", says, face, neck, leave=STRAIGHT_DOWN, arrive=STRAIGHT_DOWN)
