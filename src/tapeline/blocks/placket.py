"""The placket of a polo: a slit down the centre front, closed by two strips that lie on each other.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.blocks.buttons import LAPS, buttonhole
from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import Draft, Drawn, Place, Sheet, folded, opposite, part_from, part_to, sewn, traced, turned
from tapeline.lengths import Length, at_least, cm
from tapeline.measures import large_head
from tapeline.pattern import Cut, Mark, Piece, choice

__all__ = ["PlacketChoices", "placket", "slit_front"]

LEAST_BELOW = cm(8)
"""From the lower end of the slit down to the hem."""
FIRST_BUTTON = cm(1.5)
"""Below the neckline."""
GRAIN_IN = cm(0.5)
"""The grain line is drawn this far from the centre."""


@dataclass(frozen=True, slots=True)
class PlacketChoices:
    """Of the finished placket."""

    width: Length = choice(cm(3), 2, 5, "finished width of each strip")
    length: Length = choice(cm(13), 8, 30, "from the neckline to the lower end; longer where the head needs it")
    button: Length = choice(cm(1.1), 0.6, 2, "diameter of the buttons")
    apart: Length = choice(cm(6), 3, 10, "from button to button at most")


def slit_front(c: PlacketChoices) -> CentreRule:
    """The rule that cuts the place of the strips out of a front on the fold."""

    def draw(d: Draft, s: Sheet, lines: HalfLines) -> Centre:
        neck = lines.neckline_centre
        long = slit_length(d, c, lines)
        d.require(
            "placket-too-long",
            lines.centre.reading().length,
            long + LEAST_BELOW,
            says="the placket would end at the hem or below it",
            where="garment.placket.length",
            hint="make garment.placket.length shorter, or lower the front with garment.neckline.lower_front",
        )
        s.section("The slit")
        foot = s.point("placket_end", "The lower end of the placket, on the centre", neck.down(long))
        corner = s.point("placket_corner", "Half a strip out: the strips lie over the centre", foot.out(c.width / 2))
        top = s.point("placket_top", "Straight above it on the neckline", lines.neckline.crossing_plumb(corner))
        allowance = c.width / 4
        edges = (
            folded("centre", s.straight("centre_fold", "What is left of the fold", lines.hem_centre, foot)),
            sewn(
                "placket_foot",
                s.straight("placket_foot", "The strips' lower ends are sewn here", foot, corner),
                allowance,
            ),
            sewn("placket", s.straight("placket", "Each strip is sewn to its side", corner, top), allowance),
        )
        rest = part_from(s, "neckline_rest", "What is left of the neckline", lines.neckline, top)
        return Centre(edges, rest, Cut(1), (Mark("centre", lines.centre.path),))

    return CentreRule("The centre {}", draw)


def slit_length(d: Draft, c: PlacketChoices, lines: HalfLines) -> Length:
    """As long as chosen, or as long as the head needs where the neckline does not stretch."""
    large = large_head(d.wearer.figure)
    if d.taped("head_girth"):
        head = d.tape("head_girth")
    elif large is not None:
        head = d.measured("large_head", "Not taped; as large as 99 of 100 heads", Length(large.mm))
    else:
        return d.measured("placket_length", "From the neckline down", c.length)
    half = d.measured("neckline", "Half the neckline", lines.round_the_neck)
    return d.measured(
        "placket_length",
        "From the neckline down: so long that the head passes, were the neckline not to stretch",
        at_least(c.length, head / 2 - half),
    )


def placket(d: Draft, c: PlacketChoices, front: Drawn) -> Piece:
    """One strip: as it lies on the front, and folded out along its edge beyond the centre.

    Args:
        d: Where it is drawn.
        c: What was chosen.
        front: The front neckline.
    """
    s = d.sheet("placket")
    half, long = c.width / 2, d.sizes["placket_length"].length
    s.section("The strip, as it lies on the front")
    whole = traced(s, "front_neckline", "The neckline, traced from the front", front)
    neck = s.point("centre_top", "The beginning of the neckline, on the centre", whole.start)
    centre_low = s.point("centre_foot", "The lower end, on the centre", neck.down(long))
    low = s.point("corner", "Half the width out", centre_low.out(half))
    top = s.point("corner_top", "Its upper corner, on the neckline", whole.crossing_plumb(low))
    neckline = part_to(s, "neckline", "Sewn to the collar, with the rest of the neckline", whole, top)
    lap_top = s.point("edge_top", "As far beyond the centre", neck.inward(half))
    lap_low = s.point("edge_foot", "The same below", centre_low.inward(half))
    edge = s.straight("edge", "Folded back along this edge", lap_low, lap_top)

    s.section("The strip, folded out along its edge")
    low_out = s.point("corner_out", "The lower corner, on the inner layer", opposite(low, edge))
    top_out = s.point("corner_top_out", "The upper corner, on the inner layer", opposite(top, edge))
    neck_out = s.point("centre_top_out", "The neckline's beginning, on the inner layer", opposite(neck, edge))
    return s.piece(
        "Placket strip",
        sewn(
            "placket_turned",
            s.straight("placket_turned", "Folded in and stitched over the seam", low_out, top_out),
            c.width / 4,
        ),
        sewn(
            "facing_neckline",
            turned(s, "facing_neckline", "Sewn to the neckline with the collar between", neckline.reversed, edge),
        ),
        sewn("facing_lap", s.straight("facing_lap", "Sewn to the lap's upper edge", neck_out, lap_top)),
        sewn("lap", s.straight("lap", "The upper edge beyond the centre, level", lap_top, neck)),
        sewn("neckline", neckline),
        sewn("placket", s.straight("placket", "Sewn to its side of the slit", top, low), c.width / 4),
        sewn("foot", s.straight("foot", "Sewn to the foot of the slit", low, centre_low), c.width / 4),
        sewn("foot_lap", s.straight("foot_lap", "The same, on the other half", centre_low, lap_low), c.width / 4),
        sewn("foot_turned", s.straight("foot_turned", "Folded onto both", lap_low, low_out), c.width / 4),
        grain=(centre_low.out(GRAIN_IN).up(long / 4), centre_low.out(GRAIN_IN).up(long * 0.75)),
        cut=Cut(2, mirrored=True),
        marks=(
            Mark("centre", s.straight("centre_line", "The centre front", centre_low, neck).path),
            Mark("edge", edge.path),
            *_buttons(d, s, c, neck, centre_low),
        ),
    )


def _buttons(d: Draft, s: Sheet, c: PlacketChoices, neck: Place, low: Place) -> tuple[Mark, ...]:
    """Evenly from below the neckline to as far above the foot as the strip is wide."""
    s.section("The buttons")
    top = s.point("button_1", "The first button, on the centre", neck.down(FIRST_BUTTON))
    room = d.measured("placket_buttoned", "From the first button to the last", top.reading_down_to(low.up(c.width)))
    gaps = max(1, math.ceil(room.mm / c.apart.mm))
    apart = d.measured("placket_buttons_apart", "From button to button, evenly", room / gaps)
    marks: tuple[Mark, ...] = buttonhole(s, "1", top, c.button, LAPS[d.wearer.figure])
    for number in range(2, gaps + 2):
        place = s.point(f"button_{number}", "On the centre, as far again", top.down(apart * (number - 1)))
        marks += buttonhole(s, str(number), place, c.button, "As the first")
    return marks
