"""A front that closes with buttons on two bands, as a cardigan's: the fronts are cut back, the bands lie on each other.

Each band is a folded strip along its front, from the lower edge of the hem band to the upper edge of the collar. Rules:
common practice in the trade, no published source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.blocks.buttons import LAPS, buttonhole
from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import Draft, Place, Sheet, part_from, part_to, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, Piece, choice

__all__ = ["BAND_CLOSURES", "BandClosure", "ButtonBand", "band_front", "button_band"]

FROM_END = cm(1.5)
"""The first and the last button lie so far from the ends of the band."""
LEAST_BESIDE = cm(0.4)
"""From a button's rim to the edge and to the seam of its band."""
GRAIN_IN = cm(0.5)


@dataclass(frozen=True, slots=True)
class BandClosure:
    """Buttons on bands, or a zip, which has none."""

    width: Length = choice(cm(3), 0, 6, "finished width of each button band; 0 is a zip in their place")
    button: Length = choice(cm(1.5), 0.8, 3, "diameter of the buttons")
    apart: Length = choice(cm(8), 4, 15, "from button to button at most")
    cloth: str = "rib"

    @property
    def buttoned(self) -> bool:
        """Whether it has bands."""
        return self.width.mm > 0

    @property
    def idle(self) -> frozenset[str]:
        """A zip has no bands."""
        return frozenset() if self.buttoned else frozenset({"button", "apart", "cloth"})


BAND_CLOSURES = {"zip": BandClosure(width=cm(0)), "buttons": BandClosure()}


@dataclass(frozen=True, slots=True)
class ButtonBand:
    """The band, and how much longer than the front's edge it is: it goes on over hem band and collar."""

    piece: Piece
    longer: Length


def band_front(c: BandClosure) -> CentreRule:
    """The rule that cuts a front back by half a band: on each other, both bands lie over the centre."""

    def draw(_d: Draft, s: Sheet, lines: HalfLines) -> Centre:
        s.section("The front's edge beside the band")
        out = s.point(
            "band_beside", "Half a band out: the bands lie over the centre", lines.hem_centre.out(c.width / 2)
        )
        low = s.point("band_low", "On the hem", lines.hem.crossing_plumb(out))
        top = s.point("band_top", "On the neckline", lines.neckline.crossing_plumb(out))
        hem = part_to(s, "hem_rest", "What is left of the hem", lines.hem, low)
        rest = part_from(s, "neckline_rest", "What is left of the neckline", lines.neckline, top)
        # From where the two lines were cut, to the last digit: the outline is closed there.
        ends = Place(hem.path.end, low.label), Place(rest.path.start, top.label)
        edge = s.straight("front_edge", "Sewn to the button band", *ends)
        return Centre((sewn("centre", edge),), rest, Cut(2, mirrored=True), (Mark("centre", lines.centre.path),), hem)

    return CentreRule("The centre {}: the middle of both bands, when they are buttoned", draw)


def button_band(d: Draft, c: BandClosure, edge: Length, below: Length, above: Length) -> ButtonBand:
    """One band for a front edge, with hem band below and collar above it; upright, folded along its middle."""
    d.section("The button band's sizes")
    d.require(
        "band-too-narrow-for-button",
        c.width,
        c.button + LEAST_BESIDE * 2,
        says="the band is hardly wider than its buttons",
        where="garment.closure.width",
        hint="make garment.closure.width wider, or garment.closure.button smaller",
    )
    ends = d.measured("band_past_front", "What it goes on over hem band and collar", below + above)
    long = d.measured("button_band_length", "From the hem band's lower edge to the collar's upper edge", edge + ends)
    s = d.sheet("button_band")
    s.section("The button band")
    low = s.point("low", "The lower end, at the seam", s.origin)
    top = s.point("top", "The upper end, at the seam", low.up(long))
    fold_low = s.point("fold_low", "Its width beside it: folded here", low.inward(c.width))
    fold_top = s.point("fold_top", "The same above", top.inward(c.width))
    out_low = s.point("turned_low", "As wide again: the inner layer", fold_low.inward(c.width))
    out_top = s.point("turned_top", "The same above", fold_top.inward(c.width))
    crease = s.straight("crease", "Folded along here: the front's own edge, when it is worn", fold_low, fold_top)
    piece = s.piece(
        "Button band",
        sewn("lower_end", s.straight("lower_end", "Sewn to itself, folded inside out", low, out_low)),
        sewn("front_turned", s.straight("front_turned", "Folded in over the seam", out_low, out_top)),
        sewn("upper_end", s.straight("upper_end", "Sewn to itself, folded inside out", out_top, top)),
        sewn("front", s.straight("front", "Sewn to the front, and to the ends of hem band and collar", top, low)),
        grain=(fold_low.out(GRAIN_IN).up(long / 4), fold_low.out(GRAIN_IN).up(long * 0.75)),
        cut=Cut(2, c.cloth, mirrored=True),
        marks=(Mark("crease", crease.path), *_buttons(d, s, c, top, low)),
    )
    return ButtonBand(piece, ends)


def _buttons(d: Draft, s: Sheet, c: BandClosure, top: Place, low: Place) -> tuple[Mark, ...]:
    """Evenly from near the upper end to near the lower one, along the middle of the outer layer."""
    s.section("The buttons")
    first = s.point("button_1", "The first button, in the middle of the band", top.inward(c.width / 2).down(FROM_END))
    last = s.point("button_last", "The last one lies as far from the lower end", first.level_with(low.up(FROM_END)))
    room = d.measured("band_buttoned", "From the first button to the last", first.reading_down_to(last))
    gaps = max(1, math.ceil(room.mm / c.apart.mm))
    apart = d.measured("buttons_apart", "From button to button, evenly", room / gaps)
    marks: tuple[Mark, ...] = buttonhole(s, "1", first, c.button, LAPS[d.wearer.figure])
    for number in range(2, gaps + 2):
        place = s.point(f"button_{number}", "As far again", first.down(apart * (number - 1)))
        marks += buttonhole(s, str(number), place, c.button, "As the first")
    return marks
