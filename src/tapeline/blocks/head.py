"""The sizes of the head that a hood is made for: taped, expected by the survey, or typical.

Where a size is only typical its step says so; whoever knows better takes the tape.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.measures import Figure

__all__ = ["TYPICAL_MAN", "Head", "head"]

TYPICAL_MAN = cm(57)
"""From memory: about the mean head girth of the men who were measured with the women of the survey, in 1988."""
BESIDE_HALF = Fraction(1, 5)
"""A neck to crown within so much of half the head raises no doubt; our own choice, no source."""


@dataclass(frozen=True, slots=True)
class Head:
    """How far it is round the head, and from the neck point up to its top."""

    girth: Length
    neck_to_crown: Length


def head(d: Draft) -> Head:
    """Both sizes; a child's head has to be taped, for it grows by its own rule (`no-estimate`)."""
    if d.taped("head_girth") or d.wearer.figure is not Figure.MAN:
        girth = d.body("head_girth", "Round the head, above the brows")
    else:
        girth = d.measured(
            "head_girth", "Round the head: not taped, and no survey of men here knows it; typical of men", TYPICAL_MAN
        )
    up = d.size(
        "hood_neck_to_crown",
        "From the neck point up to the top of the head, along the head; typical when it is not taped: half the "
        "girth of the head",
        girth / 2,
        taped=lambda: d.tape("neck_to_crown"),
        tape="neck_to_crown",
    )
    where, hint = "tapes.neck_to_crown", "take neck to crown and head girth again; when both are right, leave them"
    says = f"neck to crown, {up.show()}, goes badly with the head, half of whose girth it is for most"
    d.remark("crown-unlikely", up, above=girth / 2 * (1 + BESIDE_HALF), says=says, where=where, hint=hint)
    d.remark("crown-unlikely", girth / 2 * (1 - BESIDE_HALF), above=up, says=says, where=where, hint=hint)
    return Head(girth, up)
