"""What closes a front that opens from hem to neck, and how far it laps over the centre for that.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.button_front import button_front, lap
from tapeline.blocks.centre import CentreRule
from tapeline.blocks.stand import ButtonedLap
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["FRONT_EDGES", "FrontEdge", "front_edge", "laps_over"]

ZIP = cm(0)


@dataclass(frozen=True, slots=True)
class FrontEdge:
    """Buttons on a front that laps over, with a facing cut in one with it; or a zip, which has neither."""

    button: Length = choice(cm(1.2), 0, 4, "diameter of the buttons; without one, a zip closes the front")
    apart: Length = choice(cm(9), 4, 15, "from button to button at most")
    above_hem: Length = choice(cm(10), 2, 40, "the lowest button is at least so far above the hem")
    facing: Length = choice(cm(7), 4, 12, "width of the facing at the chest line, from the front edge")

    @property
    def buttoned(self) -> bool:
        """Whether it has buttons."""
        return self.button.mm > 0


FRONT_EDGES = {"buttons": FrontEdge(), "zip": FrontEdge(button=ZIP)}


def front_edge(c: FrontEdge, first_button: Length) -> CentreRule:
    """The rule that draws it; the first button lies so far below the neckline."""
    if not c.buttoned:
        return ZIP_FRONT
    return button_front(c.button, c.apart, c.above_hem, c.facing, first_button)


def laps_over(d: Draft, c: FrontEdge) -> ButtonedLap | None:
    """How far each front reaches beyond the centre; None where both meet there."""
    return ButtonedLap(lap(d, c.button), c.button) if c.buttoned else None
