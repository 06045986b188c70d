"""The cap of a sleeve: one line over the crown, hollow, round and hollow.

Rules: common practice, no published source; how far its guide points lie off the straight line is our own choice of
what a French curve gives (docs/explanation).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.draft import LEVEL, Draft, Drawn, Place, part_way
from tapeline.lengths import Length

__all__ = ["Cap", "CapSizes", "cap"]

LOW, HIGH = Fraction(1, 4), Fraction(3, 4)
"""The guide points lie beside these places of the straight line from underarm to crown."""
FRONT_HOLLOW, BACK_HOLLOW = Fraction(1, 48), Fraction(1, 90)
"""How far the cap lies below the straight line at the low guide, as a share of the armhole."""
FRONT_RISE, BACK_RISE = Fraction(11, 250), Fraction(1, 25)
"""How far the cap rises over the straight line at the high guide, as a share of the armhole."""


@dataclass(frozen=True, slots=True)
class CapSizes:
    """What a cap is drawn from, besides its widths."""

    fullness: Length
    """What hollows and rises are shares of: the armhole; less where a cap is too flat to take them."""
    height: Length
    length: Length
    """Of the whole sleeve."""


@dataclass(frozen=True, slots=True)
class Cap:
    """The upper part of a sleeve: cap line in two parts, from underarm to crown to underarm."""

    crown: Place
    hem_level: Place
    back_underarm: Place
    front_underarm: Place
    back: Drawn
    front: Drawn


def cap(d: Draft, sizes: CapSizes, front_width: Length, back_width: Length) -> Cap:
    """The cap for two given widths; on scratch paper while the widths are being found."""
    s = d.sheet("sleeve")
    s.section("The cap's frame")
    crown = s.point("crown", "The top of the sleeve: meets the shoulder seam", s.origin)
    foot = s.point("cap_foot", "The level of the underarm: the widest part of the sleeve", crown.down(sizes.height))
    front_underarm = s.point("front_underarm", "The front end of the cap line", foot.out(front_width))
    back_underarm = s.point("back_underarm", "The back end of the cap line", foot.inward(back_width))
    hem_level = s.point("hem_level", "The hem, straight below the crown", crown.down(sizes.length))

    s.section("The cap line")
    back_low = s.point(
        "back_cap_low",
        "A little hollow near the underarm",
        part_way(back_underarm, crown, LOW).away_from((crown, back_underarm), sizes.fullness * BACK_HOLLOW),
    )
    back_high = s.point(
        "back_cap_high",
        "Round where the arm is round",
        part_way(back_underarm, crown, HIGH).away_from((back_underarm, crown), sizes.fullness * BACK_RISE),
    )
    front_high = s.point(
        "front_cap_high",
        "Rounder than the back: the arm sits forward",
        part_way(front_underarm, crown, HIGH).away_from((crown, front_underarm), sizes.fullness * FRONT_RISE),
    )
    front_low = s.point(
        "front_cap_low",
        "Hollower than the back: the arm swings forward",
        part_way(front_underarm, crown, LOW).away_from((front_underarm, crown), sizes.fullness * FRONT_HOLLOW),
    )
    back, front = s.curve_in_two(
        ("cap_back", "cap_front"),
        "One line over the crown, level at both ends: the underarm seams leave it straight down",
        (back_underarm, back_low, back_high, crown),
        (crown, front_high, front_low, front_underarm),
        leave=LEVEL,
        arrive=LEVEL,
    )
    return Cap(crown, hem_level, back_underarm, front_underarm, back, front)
