"""Where buttons and buttonholes lie on a front: evenly, and for a woman one of them level with the bust.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

import math

from tapeline.blocks.centre import HalfLines
from tapeline.draft import Draft, Place, Sheet
from tapeline.lengths import Length, cm
from tapeline.measures import Figure
from tapeline.pattern import Mark

__all__ = ["BEYOND", "LAPS", "THICKNESS", "buttonhole", "buttons"]

THICKNESS = cm(0.3)
"""A buttonhole is longer than its button by the button's thickness."""
BEYOND = cm(0.3)
"""A button pulls to the end of its buttonhole: that end lies so far beyond the button's place."""
LEAST_APART = cm(4)
"""Nearer together, buttons crowd."""
LAPS = {
    Figure.WOMAN: "buttonhole on the right front, button on the left: a woman's front closes right over left",
    Figure.MAN: "buttonhole on the left front, button on the right: a man's front closes left over right",
    Figure.CHILD: "buttonhole on one front, button on the other: girls close right over left, boys left over right",
}


def buttons(
    d: Draft, s: Sheet, lines: HalfLines, *, button: Length, first: Length, most_apart: Length, above_hem: Length
) -> tuple[Mark, ...]:
    """Marks for all buttons of a front, from its neckline down."""
    s.section("The buttons")
    top = s.point("button_1", "The first button, on the centre", lines.neckline_centre.down(first))
    apart, count = _spaced(d, s, lines, top, most_apart=most_apart, above_hem=above_hem)
    marks: tuple[Mark, ...] = buttonhole(s, "1", top, button, LAPS[d.wearer.figure])
    for number in range(2, count + 1):
        place = s.point(f"button_{number}", "On the centre, as far again", top.down(apart * (number - 1)))
        marks += buttonhole(s, str(number), place, button, "As the first")
    return marks


def _spaced(
    d: Draft, s: Sheet, lines: HalfLines, top: Place, *, most_apart: Length, above_hem: Length
) -> tuple[Length, int]:
    """From button to button, and how many there are."""
    room = d.measured("buttoned", "From the first button down to the hem", top.reading_down_to(lines.hem_centre))
    d.require(
        "no-room-for-buttons",
        room - above_hem,
        LEAST_APART,
        says="there is no room for a second button above the hem",
        where="garment.front.above_hem",
        hint="lower garment.front.above_hem or garment.first_button, or make garment.length longer",
    )
    down = room - above_hem
    if d.wearer.figure is Figure.WOMAN:
        depth = d.body("bust_point_depth", "From the neck point straight down to the bust point")
        bust = s.point("bust_point_level", "The bust point's level", lines.neck_point.down(depth))
        to_bust = top.reading_down_to(bust)
        d.remark(
            "no-button-at-bust",
            LEAST_APART,
            above=to_bust.length,
            says="the first button lies too near the bust for another one level with it, so the front may gape",
            where="garment.first_button",
            hint="make garment.first_button smaller, or raise the neckline",
        )
        if LEAST_APART.mm < to_bust.length.mm < down.mm:
            reach = d.measured("first_to_bust", "From the first button down to the bust point's level", to_bust)
            gaps = math.ceil(reach.mm / most_apart.mm)
            apart = d.measured("buttons_apart", "One lies at the bust, the others as far from each other", reach / gaps)
            return apart, 1 + math.floor(down.mm / apart.mm)
    gaps = math.ceil(down.mm / most_apart.mm)
    return d.measured("buttons_apart", "From button to button, evenly", down / gaps), 1 + gaps


def buttonhole(s: Sheet, number: str, place: Place, button: Length, says: str) -> tuple[Mark, Mark]:
    """A cross for the button, and the line of its buttonhole, along the centre."""
    cross = s.cross(f"button_{number}_cross", "Sewn on here", place, button / 2)
    line = s.upright(
        f"buttonhole_{number}", says[:1].upper() + says[1:], place, above=BEYOND, length=button + THICKNESS
    )
    return Mark(f"button_{number}", cross.path), Mark(f"buttonhole_{number}", line.path)
