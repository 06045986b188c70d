"""No alteration leaves an outline that crosses itself: it is refused instead."""

from __future__ import annotations

from tapeline.alter.story import spoken
from tapeline.geometry import area, crosses_itself
from tapeline.pattern import Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["uncrossed"]


def uncrossed(made: Piece, what: str, hint: str) -> None:
    """Raises `InputError` (`outline-would-cross`) when the piece could not be cut as it would be after `what`."""
    outline = made.seam_line
    if crosses_itself(outline) or area(outline) >= 0:
        says = f"{what}, and the outline of the {spoken(made.name)} would cross itself; nothing was altered"
        raise InputError(Problem("outline-would-cross", Severity.ERROR, says, made.name, hint))
