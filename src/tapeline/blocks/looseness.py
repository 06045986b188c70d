"""How much looser than the body: out at the side, down at the armhole, out at the shoulder, down at the hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["LOOSENESS", "Looseness"]


@dataclass(frozen=True, slots=True)
class Looseness:
    """Common practice, no source: 2 slightly loose, 3 to 4 as a sweatshirt, 5 and more oversize."""

    side: Length = choice(cm(2), 0, 12, "out at each side seam, at chest, waist and hip")
    drop: Length = choice(cm(2), 0, 12, "armhole lower")
    shoulder: Length = choice(cm(1), 0, 8, "shoulder wider, each side; past 2 it wants a dropped shoulder")
    hem: Length = choice(cm(0), 0, 30, "hem lower")
    scoop: Length = choice(cm(0), 0, 2, "front stays this much closer in at the armhole than the back")


LOOSENESS = {
    "close": Looseness(cm(0), cm(0), cm(0), cm(0), cm(0)),
    "slight": Looseness(cm(2), cm(2), cm(1), cm(0), cm(0)),
    "easy": Looseness(cm(3), cm(3), cm(1), cm(0), cm(0)),
    "loose": Looseness(cm(5), cm(5), cm(2), cm(0), cm(0)),
}
