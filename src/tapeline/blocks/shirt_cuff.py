"""The buttoned cuff of a long sleeve: a folded strip with a lap, above it a slit that is bound, and pleats or gathers.

Rules: common practice in the trade, no published source. The slit is slashed after its binding is stitched on; the
binding lies under the slit's back edge and is turned in along its front one, so that the hem stays as long as drawn.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.buttons import BEYOND, THICKNESS
from tapeline.blocks.sleeve_fullness import CuffFullness, SleeveEnd
from tapeline.blocks.strip import Strip, strip
from tapeline.draft import Draft, Drawn, Place, Sheet, laid, neatened, notch_along, part_from, part_to, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, Notch, NotchKind, Piece

__all__ = ["CuffedHem", "ShirtCuff", "cuffed_hem", "shirt_cuff", "slit_binding"]

SLIT_AT = Fraction(1, 4)
"""Of the hem, from the underarm seam to the slit: in the middle of the back, where the elbow bends."""
LAP = cm(2.5)
"""The cuff goes on under its other end by so much, for the button."""
BUTTON = cm(1.1)
BINDING = cm(1)
"""Finished width of the slit's binding: stitched on by half of it at either side."""
INTO_CUFF = cm(1)
"""At both ends the binding reaches into the cuff's seam."""
FROM_SLIT, BETWEEN = cm(2), cm(1)
"""From the slit to the first pleat, and from pleat to pleat."""
MOST_PLEAT = cm(3)
"""Of cloth in one pleat; more is laid in two."""
PLEAT_MARK = cm(4)
GRAIN_IN = cm(2)
LEAST_GATHERED = cm(2)
"""Less is not pleated or gathered but eased in: it makes no folds."""
LEAST_ABOVE_SLIT = cm(4)
"""Of the sleeve, between the slit and the elbow's bend in the underarm seam."""


@dataclass(frozen=True, slots=True)
class CuffedHem:
    """A sleeve's hem in two parts, from the front seam to the slit and on to the back seam, and its marks."""

    front: Drawn
    back: Drawn
    marks: tuple[Mark, ...]
    notches: tuple[Notch, ...]
    """On the front part."""


@dataclass(frozen=True, slots=True)
class ShirtCuff:
    """The cuff, and how much longer than it the sleeve's hem is."""

    piece: Piece
    fullness: Length


def cuffed_hem(d: Draft, c: SleeveEnd, hem: Drawn, fullness: Length, underarm: Length) -> CuffedHem:
    """Slit and pleats on the sleeve; `underarm` is how long its seam is."""
    s = d.sheet("sleeve")
    d.require(
        "slit-too-long",
        underarm,
        c.slit + LEAST_ABOVE_SLIT,
        says="the slit would reach up to where the sleeve bends into its cap",
        where="garment.sleeve.end.slit",
        hint="make garment.sleeve.end.slit shorter",
    )
    s.section("The slit")
    whole, behind = d.sizes["gathered_hem"].length, d.sizes["slit_from_seam"].length
    before = d.measured("slit_from_front_seam", "From the front underarm seam to the slit", whole - behind)
    foot = s.point("slit_foot", "The slit begins here, in the middle of the back", hem.along(before))
    top = s.point("slit_top", "Its upper end, straight above: the binding turns here", foot.up(c.slit))
    slit = s.straight("slit", "Slashed along here, once the binding is stitched on at both sides", foot, top)
    front = part_to(s, "hem_front", "From the front underarm seam to the slit", hem, foot)
    back = part_from(s, "hem_back", "From the slit to the back underarm seam", hem, foot)
    marks, notches = [Mark("slit", slit.path)], []
    if c.fullness is CuffFullness.PLEATS:
        for number, (near, far) in enumerate(_pleats(d, fullness, before), 1):
            for name, says, at in (
                ("fold", "Folded outside, straight up from here", far),
                ("onto", "The fold is laid here, toward the slit", near),
            ):
                place = s.point(f"pleat_{number}_{name}", says, hem.along(before - at))
                high = s.point(f"pleat_{number}_{name}_top", "As far up as the pleat is pressed", place.up(PLEAT_MARK))
                line = s.straight(f"pleat_{number}_{name}_line", says, place, high)
                marks.append(Mark(f"pleat_{number}_{name}", line.path))
            notches += [notch_along("hem", before - at) for at in (near, far)]
    return CuffedHem(front, back, tuple(marks), tuple(notches))


def _pleats(d: Draft, fullness: Length, before: Length) -> list[tuple[Length, Length]]:
    """Each pleat's ends, measured from the slit forward."""
    count = math.ceil(fullness.mm / MOST_PLEAT.mm)
    says = f"Cloth in each of {count} pleats: not more than 3" if count > 1 else "Cloth in the pleat"
    depth = d.measured("pleat", says, fullness / count)
    d.require(
        "pleats-past-seam",
        before,
        FROM_SLIT + (depth + BETWEEN) * count,
        says="so many pleats do not lie between the slit and the front underarm seam",
        where="garment.sleeve.end.fullness",
        hint='make garment.sleeve.end.fullness "gathers", or the sleeve less wide at its hem',
    )
    nearest = [FROM_SLIT + (depth + BETWEEN) * number for number in range(count)]
    return [(near, near + depth) for near in nearest]


def shirt_cuff(d: Draft, c: SleeveEnd, sleeve_hem: Length) -> ShirtCuff:
    """A whole cuff, folded along its middle, buttoned over the lap at its back end."""
    d.section("The cuff's sizes")
    wrist = d.body("wrist", "Round the wrist, over the bone")
    round_it = d.measured("cuff_round", "Round the wrist when it is buttoned", wrist + c.loose)
    fullness = d.measured("cuff_fullness", "The sleeve's hem is so much longer", sleeve_hem - round_it)
    d.require(
        "nothing-to-gather",
        sleeve_hem,
        round_it + LEAST_GATHERED,
        says="the sleeve's hem is hardly longer than the cuff it would be sewn into",
        where="garment.sleeve.end",
        hint='make garment.sleeve.wrist_ease larger, garment.sleeve.end.loose smaller, or garment.sleeve.shape "easy"',
    )
    whole = d.measured("cuff_length", "From end to end, with the lap under the button", round_it + LAP)
    s = d.sheet("shirt_cuff")
    s.section("The cuff")
    made = strip(s, whole, c.cuff, left="The end that lies over the other", right="The end of the lap, under the other")
    turn = s.point("lap_start", "The lap begins here", made.top.along(round_it))
    turn_low = s.point("lap_start_turned", "The same on the inner layer", turn.down(c.cuff * 2))
    says = "The slit, from the back underarm seam: a quarter of the hem"
    behind = d.measured("slit_from_seam", says, sleeve_hem * SLIT_AT)
    gathered = c.fullness is CuffFullness.GATHERS
    seam_at = behind * (round_it / sleeve_hem) if gathered else behind
    piece = s.piece(
        "Cuff",
        sewn("end", made.left),
        sewn("sleeve", part_to(s, "sleeve", "Sewn to the sleeve", made.top, turn)),
        sewn("lap", part_from(s, "lap", "Sewn to the inner layer", made.top, turn)),
        sewn("lap_end", made.right),
        sewn("lap_turned", part_to(s, "lap_turned", "Sewn to the lap", made.bottom, turn_low)),
        sewn("sleeve_turned", part_from(s, "sleeve_turned", "Folded in over the seam", made.bottom, turn_low)),
        grain=_round_it(made, c.cuff),
        cut=Cut(2, mirrored=True),
        notches=(
            notch_along("sleeve", round_it - seam_at, NotchKind.DOUBLE),
            notch_along("sleeve_turned", seam_at, NotchKind.DOUBLE),
        ),
        marks=(made.crease, *_button(s, c, made.left, made.right)),
    )
    return ShirtCuff(piece, fullness)


def _round_it(made: Strip, width: Length) -> tuple[Place, Place]:
    """Straight grain along the strip, which must not stretch."""
    return made.left.start.up(width / 2).out(GRAIN_IN), made.left.start.up(width / 2).out(GRAIN_IN * 3)


def _button(s: Sheet, c: SleeveEnd, left: Drawn, right: Drawn) -> tuple[Mark, ...]:
    """In the middle of the lap, and as far from the other end; half way across the outer layer."""
    high = c.cuff * Fraction(3, 2)
    button = s.point("button", "On the lap, half way across the outer layer", right.end.up(high).inward(LAP / 2))
    hole = s.point("buttonhole_place", "Where the button lies, when it is buttoned", left.start.up(high).out(LAP / 2))
    start, end = hole.inward(BEYOND), hole.out(BUTTON + THICKNESS - BEYOND)
    cross = s.cross("button_cross", "Sewn on here", button, BUTTON / 2)
    line = s.straight(
        "buttonhole",
        "Cut along the cuff",
        s.point("buttonhole_start", "A little beyond it, for the button pulls there", start),
        s.point("buttonhole_end", "As long as the button and its thickness", end),
    )
    return Mark("button", cross.path), Mark("buttonhole", line.path)


def slit_binding(d: Draft, c: SleeveEnd) -> Piece:
    """A straight strip up one side of the slit and down the other."""
    says = "Both sides of the slit, and 1 at each end for the cuff's seam"
    long = d.measured("slit_binding_length", says, c.slit * 2 + INTO_CUFF * 2)
    s = d.sheet("slit_binding")
    s.section("The binding of the slit")
    made = strip(s, long, BINDING, left="The end at the slit's front side", right="The end at its back side")
    middle = s.straight(
        "slit_turn",
        "Lies at the slit's upper end",
        s.point("turn_top", "Half way along", made.top.along(long / 2)),
        s.point("turn_low", "Half way along the other edge", made.bottom.along(long / 2)),
    )
    return s.piece(
        "Slit binding",
        neatened("front_end", made.left),
        laid("slit", made.top),
        neatened("back_end", made.right),
        laid("slit_turned", made.bottom),
        grain=_round_it(made, BINDING),
        cut=Cut(2),
        marks=(made.crease, Mark("slit_turn", middle.path)),
    )
