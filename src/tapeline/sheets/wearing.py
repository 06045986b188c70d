"""How it goes over the head, how a hood fits it, and how the sleeve hangs."""

from __future__ import annotations

import math

from tapeline.sheets.html import heading, part, table, words
from tapeline.sheets.numbers import length
from tapeline.truing import Truing
from tapeline.truing.hood import HoodFit
from tapeline.truing.opening import Opening
from tapeline.truing.reach import Hang
from tapeline.units import Unit

__all__ = ["wearing"]


def wearing(truing: Truing, unit: Unit) -> str:
    """Neck opening, hood and sleeve hang; nothing for a garment with none of them."""
    inside = [
        *(_opening(truing.opening, unit) if truing.opening else ()),
        *(_hood(truing.hood, unit) if truing.hood else ()),
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


def _hood(hood: HoodFit, unit: Unit) -> list[str]:
    rows = [
        ["round the head, from the face to the face", length(hood.round_mm, unit), length(hood.to_cover_mm, unit)],
        ["over the crown, from shoulder to shoulder", length(hood.over_mm, unit), length(hood.over_head_mm, unit)],
        ["along the edge round the face", length(hood.rim_mm, unit), length(hood.head_mm, unit)],
    ]
    head = ["where", "hood", "head"]
    return [heading("Hood"), table("The hood against the head", head, rows, numbers=[1, 2])]


def _hang(hang: Hang, unit: Unit) -> list[str]:
    degrees = math.degrees(hang.angle)
    if hang.lifts_to:
        lifts = (
            f"The sleeve is cut in one with the body and hangs at {degrees:.0f} degrees; the arm lifts to "
            f"{hang.lifts_to} before the underarm pulls. {hang.means.capitalize()}."
        )
        return [heading("Sleeve hang"), f"<p>{words(lifts)}</p>"]
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
