"""The front's side seam where a fitting changes it, made to fit the back's again.

Common practice in the trade, no published source: a front whose side is drawn another way than the back's is as long as
the back's, or longer by what is eased in.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from tapeline.blocks.dartless import Half
from tapeline.blocks.outline import SideLines, straight_side
from tapeline.draft import Draft, Place, Reading, Sheet, corrected, part_way, set_lower
from tapeline.lengths import Length

__all__ = ["FittedSides", "as_drawn", "fitted", "hem_centre_of_back", "straight_front_side"]

STRAIGHT_FROM = Fraction(3, 4)
"""Of the way from waist to hip; our own choice."""
CORRECTIONS = ("full_bust.width", "full_bust.length", "full_waist")


@dataclass(frozen=True, slots=True)
class FittedSides:
    """Both sides, and the front's hem at the centre, moved as the end of its side was."""

    back: SideLines
    front: SideLines
    front_hem: Place


def as_drawn(d: Draft, name: str = "side") -> str:
    """What the front's side is called before it is fitted; its own name where nothing has to be."""
    return f"{name}_as_drawn" if _changed(d) else name


def fitted(
    d: Draft, sheet: Sheet, sides: FittedSides, *, straight_from: Place | None = None, name: str = "side"
) -> FittedSides:
    """The front's side cut to the back's length, or longer by what is eased in; its notch meets the back's.

    Raises `InputError`: `side-too-short` where its end is still shaped, not straight as from `straight_from` on.
    """
    if not _changed(d):
        return sides
    back, front, longer = sides.back, sides.front, d.correction("full_bust.length")
    whole = d.measured("back_side", "The back's side, to which the front's is sewn", back.side.reading())
    meant = d.measured("front_side", "The front's side", corrected(whole, more=(longer,)))
    if straight_from is not None:
        d.require(
            "side-too-short",
            meant,
            front.side.reading_to(straight_from).length,
            says="the front's side is still shaped at its hem, so that it cannot be cut to the back's length",
            where="garment.length",
            hint="make the garment longer, or the correction smaller",
        )
    says = "As long as the back's, and what is eased in over the bust" if longer.mm else "As long as the back's"
    side = sheet.as_long(name, says, front.side, meant)
    end = sheet.point("side_hem_fitted", "Where the side ends now", side.end)
    to_notch = Reading(
        Length(back.side.path.length_to(back.notch.point)),
        (f"measured along the {back.side.full_name} to its notch",),
        (back.side.label,),
    )
    along = d.measured("back_side_to_notch", "The back's side to its notch", to_notch)
    notch = sheet.point("side_notch", "Meets the back's notch", side.along(corrected(along, more=(longer,))))
    moved = d.measured("side_hem_moved", "How much lower the side's end came", front.hem.reading_down_to(end))
    hem = sheet.point(
        "trued_hem_centre", "Moved as the side's end was, so that the hem stays true", sides.front_hem.down(moved)
    )
    both = Reading(
        Length((back.waist_out.length.mm + front.waist_out.length.mm) / 2),
        ("half of what is measured level at the waist, back and front together",),
        tuple(dict.fromkeys((*back.waist_out.needs, *front.waist_out.needs))),
    )
    return FittedSides(replace(back, waist_out=both), replace(front, side=side, waist=notch, hem=end, notch=notch), hem)


def straight_front_side(
    d: Draft, sheet: Sheet, half: Half, level: Place, *, back: SideLines, hem: Place
) -> FittedSides:
    """A side that is straight but for a full waist, fitted; `level` is the level of the hem, `hem` its front centre."""
    full = d.correction("full_waist")
    name = as_drawn(d)
    if not full.mm:
        return fitted(d, sheet, FittedSides(back, straight_side(sheet, half, level, name), hem))
    line = sheet.straight("side_line", "Underarm to hip, straight", half.underarm, half.side_hip)
    at_waist = sheet.point("side_line_waist", "The straight line at the waist", line.crossing_level(half.waist_level))
    waist = sheet.point("side_waist", "Out at the waist", at_waist.out(full))
    low = sheet.point("side_low", "Here the side is straight again", part_way(at_waist, half.side_hip, STRAIGHT_FROM))
    end = sheet.point("side_hem", "Where one arc can leave the centre level and meet it square", line.arc_end(level))
    over = sheet.curve("side_over_waist", "Out over the waist", half.underarm, waist, low, arrive=line.onward)
    below = sheet.straight("side_below_waist", "Straight on to the hem", low, end)
    side = sheet.joined(name, "Underarm to hem", over, below)
    drawn = SideLines(side, waist, waist.reading_from(half.waist_level), end, waist)
    return fitted(d, sheet, FittedSides(back, drawn, hem), straight_from=low)


def hem_centre_of_back(d: Draft, sheet: Sheet, centre: Place) -> Place:
    """The centre back at the hem: higher where a wedge is folded away at the waist, which ends at the side.

    The centre back is drawn straight again, so that it still lies on the fold.
    """
    higher = set_lower(centre, higher=(d.correction("sway_back"),))
    if higher is centre:
        return centre
    says = "Higher by the wedge that is folded away at the waist, none of it at the side"
    return sheet.point("swayed_hem_centre", says, higher)


def _changed(d: Draft) -> bool:
    # All of them are asked for: a correction that is not is refused as one that the style has nothing for.
    return sum(d.correction(key).mm for key in CORRECTIONS) > 0
