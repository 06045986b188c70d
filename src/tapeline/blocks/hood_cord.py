"""The casing along a hood's face, and the cord that an adult's may have.

No cord on a child's hood: EN 14682 allows none in hood, head and neck up to 7 years or 134 cm, and none with free ends
up to 14 years (read in an authority's summary); the tool draws none for any child.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.hood_choices import HoodChoices, HoodCord, HoodCut
from tapeline.draft import Draft, Drawn, Place, Sheet
from tapeline.lengths import cm
from tapeline.measures import Figure
from tapeline.pattern import Mark
from tapeline.problems import InputError, Problem, Severity

__all__ = ["EYELET_UP", "FaceLines", "casing"]

EYELET_UP = cm(3)
"""Above the neck seam, clear of its allowance and of the foot of the machine."""
EYELET_ARM = cm(0.4)


@dataclass(frozen=True, slots=True)
class FaceLines:
    """The face's edge, where it begins at the neck, and the crown that leaves its upper end."""

    foot: Place
    face: Drawn
    crown: Drawn


def casing(d: Draft, s: Sheet, c: HoodChoices, lines: FaceLines) -> tuple[Mark, ...]:
    """Where the casing is stitched, and for a cord where it comes out, and how long it is.

    Raises `InputError` (`cord-on-child`) for a child's cord.
    """
    low = s.point("casing_foot", "The casing's width inside the face, at the neck", lines.foot.out(c.casing))
    high = s.point("casing_top", "The same, along the crown", lines.crown.along(c.casing))
    stitched = s.straight("casing", "The turned edge is stitched down here", low, high)
    marks = (Mark("casing", stitched.path),)
    return (*marks, cord(d, s, c, lines)) if c.cord is HoodCord.CORD else marks


def cord(d: Draft, s: Sheet, c: HoodChoices, lines: FaceLines) -> Mark:
    """The eyelet, on the middle of the casing; the cord's length and the usual caution are said."""
    if d.wearer.figure is Figure.CHILD:
        raise InputError(
            Problem(
                "cord-on-child",
                Severity.ERROR,
                "a cord in a child's hood can catch and strangle: EN 14682 allows none in hood and neck up to 7 years "
                "or 134 cm, and none with free ends up to 14 years",
                "garment.hood.cord",
                'write cord = "none": the hood holds by its cut. Nothing was drafted.',
            )
        )
    place = s.point(
        "eyelet",
        "Where the cord comes out, on the middle of the casing; the cloth is reinforced behind it",
        lines.foot.out(c.casing / 2).up(EYELET_UP),
    )
    mark = s.cross("eyelet_mark", "An eyelet in the outer layer of the casing, before it is turned", place, EYELET_ARM)
    side = d.measured("hood_face", "Along the face of one side", lines.face.reading())
    rim = side * 2 + c.strip_width if c.cut is HoodCut.THREE else side * 2
    length = d.measured("cord_length", "Round the face from eyelet to eyelet, and both ends", rim + c.cord_end * 2)
    d.note(
        "cord-caution",
        f"the hood has a cord, {length.show()} long: cords can catch in doors, machines and wheels",
        where="garment.hood.cord",
        hint="stitch it down at the middle of the hood, knot or cap its ends, and do not sew this hood for a child",
    )
    return Mark("eyelet", mark.path)
