"""What a top is pieced from: a yoke over the shoulders, a block of another colour round the hem, panels at the sides.

Common practice in the trade, no published source; how deep each word means is our own choice.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["YOKES", "ColourBlockChoices", "PanelChoices", "YokeChoices", "YokeShape"]


@dataclass(frozen=True, slots=True)
class YokeShape:
    """How far it comes down on both sides of the shoulder; nothing is none."""

    back: Length = choice(cm(0), 0, 25, "back yoke: its level lower edge below the nape; 0 is none")
    front: Length = choice(cm(0), 0, 8, "front yoke: as wide as this beside the shoulder; 0 is none")


YOKES = {
    "none": YokeShape(),
    "back": YokeShape(back=cm(11)),
    "shirt": YokeShape(back=cm(10), front=cm(3)),
}
"""A shirt's yoke is carried over the shoulder and cut in one."""


@dataclass(frozen=True, slots=True)
class YokeChoices:
    """What a maker chooses of a yoke."""

    shape: YokeShape = YOKES["none"]
    cloth: str = "shell"


@dataclass(frozen=True, slots=True)
class ColourBlockChoices:
    """What a maker chooses of a block round the lower body."""

    below: Length = choice(cm(0), 0, 60, "the block begins so far below the underarm, level all round; 0 is none")
    cloth: str = "contrast"


@dataclass(frozen=True, slots=True)
class PanelChoices:
    """What a maker chooses of panels at the sides, cut off by an upright seam in front and behind."""

    from_neck: Length = choice(
        cm(0), 0, 15, "upright seams from the shoulder to the hem, so far along it from the neckline; 0 is none"
    )
    cloth: str = "contrast"
