"""A keyhole: a slit at the centre back or front, rounded below and closed at the neck, that lets the head through.

The facing is sewn on along the line first; then both are slashed down the centre between the stitches, and the facing
is turned inside. So the line is marked on both, and cut on neither. Rules: common practice in the trade, no published
source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import LEVEL, STRAIGHT_UP, Draft, Drawn, Sheet, folded, part_way
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, Word, choice

__all__ = ["KeyholeChoices", "KeyholePlace", "keyhole_at"]

BESIDE_SLASH = cm(0.3)
"""At the neckline the stitches keep so far from the slash, on either side."""
WIDEST_AT = Fraction(3, 4)
"""How far down it is widest."""


class KeyholePlace(Word):
    """Where the keyhole is."""

    NONE = "none", "no keyhole"
    BACK = "back", "at the centre back"
    FRONT = "front", "at the centre front"


@dataclass(frozen=True, slots=True)
class KeyholeChoices:
    """Where it is, how deep and how wide."""

    place: KeyholePlace = KeyholePlace.NONE
    depth: Length = choice(cm(10), 4, 18, "how far the keyhole goes down from the neckline")
    width: Length = choice(cm(2), 0.8, 6, "how wide it is where it is widest, three quarters of the way down")

    @property
    def idle(self) -> frozenset[str]:
        """Without a keyhole its numbers say nothing."""
        return frozenset({"depth", "width"}) if self.place is KeyholePlace.NONE else frozenset()


def keyhole_at(c: KeyholeChoices) -> CentreRule:
    """The centre of a half on the fold, with a keyhole marked at it."""

    def draw(_d: Draft, s: Sheet, lines: HalfLines) -> Centre:
        line = drawn_keyhole(s, lines, c)
        return Centre((folded("centre", lines.centre),), lines.neckline, Cut(1), (Mark("keyhole", line.path),))

    return CentreRule("The centre {} lies on the fold of the cloth", draw)


def drawn_keyhole(s: Sheet, lines: HalfLines, c: KeyholeChoices) -> Drawn:
    """One side of it, from its lower end up to the neckline."""
    centre = lines.neckline_centre
    top = s.point("keyhole_top", "On the neckline, beside the slash as far as stitches need", centre.out(BESIDE_SLASH))
    end = s.point("keyhole_end", "The lower end of the keyhole, on the centre", centre.down(c.depth))
    side = s.point(
        "keyhole_side",
        "Half its width out, where it is widest: three quarters of the way down",
        part_way(centre, end, WIDEST_AT).out(c.width / 2),
    )
    return s.curve(
        "keyhole",
        "Stitched along here, facing on body, then slashed down the centre: round below, closed at the neckline",
        end,
        side,
        top,
        leave=LEVEL,
        arrive=STRAIGHT_UP,
    )
