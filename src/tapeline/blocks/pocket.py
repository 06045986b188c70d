"""A pocket that is stitched flat on the front: which kind, and the hand that it is made for."""

from __future__ import annotations

from collections.abc import Callable

from tapeline.blocks.kangaroo_pocket import kangaroo
from tapeline.blocks.patch_pocket import breast, hips
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.pocket_place import OnFront, Pocket
from tapeline.draft import Draft
from tapeline.lengths import Length

__all__ = ["HAND_OF_ARM", "pocket"]

HAND_OF_ARM = 3
"""An arm is about this many hands long; women and men of the 1988 survey had hands of 18 and 19 cm (from memory)."""
MADE: dict[PocketKind, Callable[[Draft, PocketChoices, OnFront, Length], Pocket]] = {
    PocketKind.KANGAROO: kangaroo,
    PocketKind.BREAST: breast,
    PocketKind.HIPS: hips,
}
"""How each kind is drawn."""


def pocket(d: Draft, c: PocketChoices, on: OnFront) -> Pocket | None:
    """The pocket that was chosen; None where none was.

    Raises `InputError` (`pocket-too-deep`, `pocket-over-armhole`, `upright-not-crossed`) where it has no room.
    """
    if c.kind is PocketKind.NONE:
        return None
    d.section("The pocket's sizes")
    hand = d.measured(
        "hand", "From the wrist to the finger tips: about a third of the arm", on.arm_length / HAND_OF_ARM
    )
    return MADE[c.kind](d, c, on, hand)
