"""The dropped shoulder: the shoulder line carried down the arm, and the armhole that lies there.

What is dropped is taken from the cap and from the sleeve, so that the sleeve below the armhole stays as long as it was.
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.dartless import Half
from tapeline.blocks.outline import armhole
from tapeline.draft import Draft, Drawn, Place, Sheet, part_way
from tapeline.lengths import Length, cm

__all__ = ["DroppedLines", "dropped_lines"]

FALLS_AWAY = Fraction(1, 12)
"""Below the straight line of the shoulder, for each part carried on: the arm hangs."""
HOLLOW_AT = Fraction(3, 5)
"""The armhole is hollowest this far down the straight line from its tip to the underarm."""
HOLLOW = {"back": Fraction(1, 8), "front": Fraction(1, 7)}
"""By this share of that line: a little more at the front, for the arm swings forward."""
LEAST_HOOK = cm(1)
"""From the hollow out to the side: the armhole needs so much to turn level under the arm."""
LEAST_ARMHOLE = cm(8)
"""From the dropped tip down to the chest line: less, and no arm goes through."""


@dataclass(frozen=True, slots=True)
class DroppedLines:
    """Shoulder and armhole of one half, and the armhole as it would be set in."""

    shoulder: Drawn
    armhole: Drawn
    notch: Place
    set_in: Length


def dropped_lines(
    d: Draft, sheet: Sheet, half: Half, neckline_end: Place, side: Drawn, *, drop: Length
) -> DroppedLines:
    """Straight to the shoulder point, round over it and down the arm; the armhole square to it and to the side."""
    name = sheet.name
    straight = sheet.straight(
        "set_in_shoulder", "The shoulder as far as the shoulder point", neckline_end, half.shoulder_tip
    )
    set_in = armhole(sheet, half, straight, side, "set_in_armhole")
    whole = d.measured(f"{name}_set_in_armhole", f"Where the {name} armhole would be, set in", set_in.reading())
    length = d.measured(f"{name}_set_in_shoulder", "The shoulder to the shoulder point", straight.reading())
    reach = sheet.point("dropped_reach", "Straight on along the shoulder", straight.along(length + drop))
    tip = sheet.point(
        "dropped_tip",
        "Lower by a twelfth of what was carried on: the arm falls away",
        reach.away_from((reach, half.shoulder_tip), drop * FALLS_AWAY),
    )
    d.require(
        "shoulder-dropped-too-far",
        tip.reading_down_to(half.chest_level).length,
        LEAST_ARMHOLE,
        says="the dropped shoulder ends too near the chest line for an arm to go through",
        where=name,
        hint="drop the shoulder less, or lower the armhole with garment.looseness.drop",
    )
    over = sheet.curve(
        "shoulder_over", "Bends down over the shoulder point", half.shoulder_tip, tip, leave=straight.onward
    )
    shoulder = sheet.joined("shoulder", "Sewn to the other shoulder, which is its mirror image", straight, over)
    straight_down = d.measured(
        f"{name}_armhole_chord", "Straight from the tip to the underarm", half.underarm.reading_from(tip)
    )
    hollow = sheet.point(
        "armhole_hollow",
        "Hollowed a little: the further it is from the arm, the straighter an armhole is",
        part_way(tip, half.underarm, HOLLOW_AT).away_from((half.underarm, tip), straight_down * HOLLOW[name]),
    )
    d.require(
        "shoulder-beyond-side",
        half.underarm.reading_from(half.chest_level).length,
        hollow.level_with(half.chest_level).reading_from(half.chest_level).length + LEAST_HOOK,
        says="the dropped shoulder reaches so far past the side that the armhole would have to turn back under the arm",
        where=name,
        hint="drop the shoulder less, or make the side looser with garment.looseness.side",
    )
    arm = sheet.curve(
        "armhole",
        "Square to the shoulder and square to the side, so that it runs on smoothly over both seams",
        tip,
        hollow,
        half.underarm,
        leave=shoulder.square_at_end,
        arrive=side.square_at_start,
    )
    along = d.measured(f"{name}_armhole", f"Along the {name} armhole", arm.reading())
    notch = sheet.point("armhole_notch", "Half way along the armhole", arm.along(along / 2))
    return DroppedLines(shoulder, arm, notch, whole)
