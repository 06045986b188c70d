"""How it goes over the head, and how the sleeve hangs."""

from __future__ import annotations

import math

from tapeline.sheets.html import heading, part, table, words
from tapeline.sheets.numbers import length
from tapeline.truing import Truing
from tapeline.truing.opening import Opening
from tapeline.truing.reach import Hang
from tapeline.units import Unit

__all__ = ["wearing"]


def wearing(truing: Truing, unit: Unit) -> str:
    """Neck opening and sleeve hang; nothing for a garment with neither."""
    inside = [
        *(_opening(truing.opening, unit) if truing.opening else ()),
        *(_hang(truing.hang, unit) if truing.hang else ()),
    ]
    return part("wearing", "Putting it on", *inside) if inside else ""


def _opening(opening: Opening, unit: Unit) -> list[str]:
    spare = opening.stretched_mm - opening.head_mm
    rows = [
        ["neckline", length(opening.neckline_mm, unit)],
        ["band or facing, before it is sewn on", length(opening.band_mm, unit)],
        [f"stretched, by {opening.limit}", length(opening.stretched_mm, unit)],
        [f"head ({opening.head_is})", length(opening.head_mm, unit)],
        ["to spare", length(spare, unit)],
    ]
    return [heading("Neck opening"), table("The neck opening against the head", ["what", "length"], rows, numbers=[1])]


def _hang(hang: Hang, unit: Unit) -> list[str]:
    degrees = math.degrees(hang.angle)
    # The half sleeve as a triangle: crown on top, underarm at the foot of the slope.
    half = hang.width_mm / 2
    picture = (
        f'<svg class="hang" viewBox="-8 -8 {half + 16:.0f} {hang.cap_height_mm + 16:.0f}" role="img" '
        f'aria-label="The straight line from crown to underarm falls at {degrees:.0f} degrees">'
        f'<polygon points="0,0 0,{hang.cap_height_mm:.1f} {half:.1f},{hang.cap_height_mm:.1f}"/></svg>'
    )
    says = (
        f"The cap is {length(hang.cap_height_mm, unit)} high and the sleeve {length(hang.width_mm, unit)} wide, so it "
        f"hangs at {degrees:.0f} degrees. {hang.means.capitalize()}."
    )
    return [heading("Sleeve hang"), f'<div class="beside">{picture}<p>{words(says)}</p></div>']
