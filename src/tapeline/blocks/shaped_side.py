"""The side of a top: it follows the body to the hip, runs straight on from there, and ends where the hem comes in.

A hem above the hip ends it on its way; a hem that rises to the side ends it sooner; a vent leaves its end unsewn.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.dartless import Half
from tapeline.blocks.outline import GIRTHS, SideLines
from tapeline.draft import STRAIGHT_DOWN, Drawn, Place, Sheet
from tapeline.lengths import Length, cm

__all__ = ["SideShape", "shaped_side", "vented"]

NOTHING = cm(0)
NEAR_THE_END = cm(1)
"""A waist this near to the end of the seam is no place for a notch."""
SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class SideShape:
    """What is taken in at the waist, let out at the hem, and left off below it at the side."""

    waist: Length
    flare: Length = NOTHING
    rise: Length = NOTHING


def shaped_side(sheet: Sheet, half: Half, c: SideShape, hem: Place, name: str = "side") -> SideLines:
    """From the underarm to the hem; `hem` is a level hem's place on the centre line, `name` what the line is called."""
    straight = sheet.straight("side_line", "Underarm to hip, straight", half.underarm, half.side_hip)
    waist = sheet.point(
        "side_waist",
        "Taken in at the waist, from the straight line",
        straight.crossing_level(half.waist_level).inward(c.waist),
    )
    arrive, flared = STRAIGHT_DOWN, None
    if c.flare.mm:
        out = sheet.point(
            "side_flare", "Out by the flare, level with the hem", half.side_hip.level_with(hem).out(c.flare)
        )
        flared = sheet.straight("side_flare_line", "From the hip to the flare, straight", half.side_hip, out)
        arrive = flared.onward
    to_hip = sheet.curve(
        "side_to_hip",
        "Follows the body from underarm to hip",
        half.underarm,
        waist,
        half.side_hip,
        leave=STRAIGHT_DOWN,
        arrive=arrive,
    )
    names = ("side_level", "side_to_level") if c.rise.mm else ("side_hem", name)
    at, says = half.side_hip.level_with(hem), "The side at the hem, straight below the hip"
    if flared:
        at, says = flared.arc_end(hem), "Where one arc from the centre meets it square"
    whole, end = _level_end(sheet, half, (*names, says), to_hip, (at, hem))
    if c.rise.mm:
        end = sheet.point("side_hem", "Higher at the side, where the hem rises to it", whole.back_from_end(c.rise))
        whole = sheet.part(name, "Underarm to hem", whole, whole.path.length - c.rise.mm, end)
    return _ended(sheet, half, SideLines(whole, waist, waist.reading_from(half.waist_level), end, waist))


def _level_end(
    sheet: Sheet, half: Half, names: tuple[str, str, str], to_hip: Drawn, ends: tuple[Place, Place]
) -> tuple[Drawn, Place]:
    """The side down to a level hem, and its end: where it is below the hip, or, with the hem's centre, above it."""
    label, name, says = names
    below, hem = ends
    if below.point.y < half.side_hip.point.y - SAME_MM:
        end = sheet.point(label, says, below)
        straight = sheet.straight("side_below_hip", "Straight on from the hip", half.side_hip, end)
        return sheet.joined(name, "Underarm to hem", to_hip, straight), end
    at, along = to_hip.arc_within(hem)
    end = sheet.point(label, "Where one arc from the centre meets the side square", at)
    return sheet.part(name, "Underarm to hem: the garment ends above the hip", to_hip, along, end), end


def vented(sheet: Sheet, half: Half, side: SideLines, sewn: Length) -> SideLines:
    """The side is sewn so far from the underarm; below, it is the edge of a vent."""
    whole = side.side
    top = sheet.point("vent_top", "The seam ends here; the vent is open below", whole.along(sewn))
    seam = sheet.part("side", "Underarm to the top of the vent", whole, sewn.mm, top)
    vent = sheet.part("vent", "One edge of the vent, turned back", whole, (sewn.mm, whole.path.length), top, side.hem)
    return _ended(sheet, half, replace(side, side=seam, vent=vent))


def _ended(sheet: Sheet, half: Half, side: SideLines) -> SideLines:
    """Where it is notched, and what it comes down to."""
    low = side.side.path.end.y
    levels = zip(GIRTHS, (half.chest_level, half.waist_level, half.hip_level), strict=True)
    reaches = tuple(name for name, level in levels if low <= level.point.y + SAME_MM)
    notch = side.waist
    if low > side.waist.point.y - NEAR_THE_END.mm:
        middle = side.side.along(Length(side.side.path.length / 2))
        notch = replace(middle, label=f"{sheet.name}.side_middle")
    return replace(side, notch=notch, reaches=reaches)
