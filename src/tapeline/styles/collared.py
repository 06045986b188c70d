"""What a neckline must be for a collar to be sewn to it."""

from __future__ import annotations

from tapeline.blocks.neck_shapes import STRAIGHT, NeckLine
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.top import NecklineChoices

__all__ = ["no_point"]


def no_point(c: NecklineChoices) -> None:
    """A collar follows a round neckline; raises `InputError` (`collar-on-v`) for another."""
    if c.shape.fullness == STRAIGHT or c.shape.line is not NeckLine.SWEEP:
        raise InputError(
            Problem(
                "collar-on-v",
                Severity.ERROR,
                "a collar is drawn for a round neckline: on a v it would end askew, round a corner it would stand up",
                "garment.neckline.shape",
                "choose round or scoop in garment.neckline.shape. Nothing was drafted.",
            )
        )
