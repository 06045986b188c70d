"""How high, how long and how full a sleeve is: set in, or below a dropped shoulder; hemmed, or with a cuff.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cap import CapSizes
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, at_most, cm

__all__ = ["ArmholeNotch", "Dropped", "SleeveSizes", "hem_is_left", "sleeve_sizes"]

LEAST_UNDERARM = cm(0.5)
"""A shorter underarm seam has no room for its bend, and the hem would run into the cap."""
LEAST_HEM = cm(4)
"""Across the hem: less, and the seams that come in to the wrist meet before a sleeve so long has ended."""
LEAST_CAP = cm(1)
"""Flatter than this a cap line cannot be told from a straight one."""
FLAT_CAP = 4
"""Times its height: the armhole of an easy cap, whose hollows and rises a flatter one takes."""


@dataclass(frozen=True, slots=True)
class ArmholeNotch:
    """Lengths from the shoulder tip: of a whole armhole, and to its notch."""

    whole: Length
    to_notch: Length


@dataclass(frozen=True, slots=True)
class Dropped:
    """What a dropped shoulder takes from the sleeve."""

    by: Length
    set_in: Length
    """Both armholes of one side as they would be, set in."""


@dataclass(frozen=True, slots=True)
class SleeveSizes:
    """What a sleeve's cap is drawn from, and how far below its crown the wrist is."""

    cap: CapSizes
    below_shoulder: Length


def sleeve_sizes(
    d: Draft, c: SleeveChoices, armholes: Length, arm_length: Length, *, dropped: Dropped | None, cuff: Length | None
) -> SleeveSizes:
    """For both armholes of one side, in mm; a cuff takes its finished width from the length."""
    armhole = d.measured("armhole", "Both armholes of one side", armholes)
    covered = cuff or c.end.rolled
    if dropped is None:
        below_shoulder = arm_length
        cap_height = d.measured("cap_height", "From crown to underarm", c.cap.height(armhole))
        clears = cap_height + covered if covered.mm else cap_height
        length = d.measured("sleeve_length", "From the crown to the hem", c.length.on(arm_length, clears))
        fullness = armhole
    else:
        below_shoulder = d.measured("arm_below_drop", "The arm below the dropped shoulder", arm_length - dropped.by)
        cap_height = d.measured(
            "cap_height",
            "As high as for a set-in sleeve, lowered by what was dropped",
            c.cap.height(dropped.set_in) - dropped.by,
        )
        d.require(
            "cap-too-low",
            cap_height,
            LEAST_CAP,
            says="what was dropped leaves no cap",
            where="sleeve",
            hint="drop the shoulder less, make garment.sleeve.cap formal, or lower the armhole",
        )
        clears = cap_height + c.end.rolled if c.end.rolled.mm else cap_height
        length = d.measured(
            "sleeve_length",
            "To the same place of the arm as a set-in sleeve: what was dropped lies on it already",
            c.length.on(arm_length, clears + dropped.by) - dropped.by,
        )
        fullness = at_most(armhole, cap_height * FLAT_CAP)
    if cuff:
        length = d.measured("sleeve_length_to_cuff", "The cuff makes up the rest", length - cuff)
    d.require(
        "sleeve-too-short",
        length,
        cap_height + LEAST_UNDERARM,
        says="the sleeve ends before its cap does",
        where="sleeve",
        hint="make garment.sleeve.length longer, or garment.sleeve.cap.share smaller",
    )
    return SleeveSizes(CapSizes(fullness, cap_height, length), below_shoulder)


def hem_is_left(d: Draft, across: Length, halves: int = 1) -> None:
    """Raise `sleeve-vanishes` where the underarm seams meet, or nearly, before the hem; `across` a half or a whole."""
    d.require(
        "sleeve-vanishes",
        across * halves,
        LEAST_HEM,
        says="the sleeve goes on so far past the wrist that its seams, which come in to it, meet before the hem",
        where="sleeve",
        hint="make garment.sleeve.length shorter, or garment.sleeve.shape straight",
    )
