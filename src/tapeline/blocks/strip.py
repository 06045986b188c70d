"""A straight strip, folded in half along its length: what cuffs and hem bands are cut as."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.draft import Drawn, Place, Sheet, halfway
from tapeline.lengths import Length, cm
from tapeline.pattern import Mark, choice

__all__ = ["RibChoices", "Strip", "strip"]


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
