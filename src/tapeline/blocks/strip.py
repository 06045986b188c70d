"""A straight strip, folded in half along its length: what cuffs and hem bands are cut as."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.draft import Drawn, Place, Sheet, halfway, notch_along, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, NotchKind, Piece, choice

__all__ = ["OVER_THE_HAND", "RibChoices", "Strip", "round_sleeve", "strip"]

OVER_THE_HAND = 1.35
"""A hand is about this much wider round than its wrist (from memory, no source)."""


@dataclass(frozen=True, slots=True)
class RibChoices:
    """Width and cloth of a rib cuff or hem band."""

    width: Length = choice(cm(6), 2, 12, "finished width of the rib")
    stretch: float = choice(80.0, 0, 200, "how much the rib stretches, per cent")
    cloth: str = "rib"


@dataclass(frozen=True, slots=True)
class Strip:
    """Its four sides clockwise from the left end, its crease, and a grain line across it."""

    left: Drawn
    top: Drawn
    right: Drawn
    bottom: Drawn
    crease: Mark
    grain: tuple[Place, Place]


def strip(s: Sheet, length: Length, width: Length, *, left: str, right: str) -> Strip:
    """A strip of a length, twice as wide as it is when finished; its ends are said by words."""
    start = s.point("left", left, s.origin)
    end = s.point("right", right, start.out(length))
    start_top = s.point("left_top", "Twice the finished width: it is folded", start.up(width * 2))
    end_top = s.point("right_top", "Level with it at the other end", end.up(width * 2))
    middle = s.point("crease_left", "It is folded here", halfway(start, start_top))
    middle_right = s.point("crease_right", "It is folded here", halfway(end, end_top))
    crease = s.straight("crease", "Folded in half along this line", middle, middle_right)
    return Strip(
        s.straight("left_end", left, start, start_top),
        s.straight("top_edge", "Along the rib", start_top, end_top),
        s.straight("right_end", right, end_top, end),
        s.straight("bottom_edge", "Along the rib", end, start),
        Mark("crease", crease.path),
        (middle.up(width / 2), middle.down(width / 2)),
    )


def round_sleeve(s: Sheet, title: str, length: Length, width: Length, cloth: str = "shell") -> Piece:
    """A pair of strips whose ends are sewn to each other, for the hems of both sleeves."""
    made = strip(s, length, width, left="Sewn to the other end", right="Sewn to the other end")
    return s.piece(
        title,
        sewn("back_end", made.left),
        sewn("hem_turned", made.top),
        sewn("front_end", made.right),
        sewn("hem", made.bottom),
        grain=made.grain,
        cut=Cut(2, cloth),
        notches=(
            notch_along("hem", length / 2, NotchKind.SINGLE),
            notch_along("hem_turned", length / 2, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
