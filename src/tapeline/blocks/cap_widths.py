"""How wide a sleeve must be for its cap line to fit the armholes, and how low its cap for a larger arm.

Common practice in the trade, no published source: a sleeve is made wider for the same armhole by lowering its cap.
"""

from __future__ import annotations

from dataclasses import replace

from tapeline.blocks.cap import CapSizes, cap
from tapeline.blocks.sleeve_sizes import FLAT_CAP, LEAST_CAP
from tapeline.draft import Draft, Reading
from tapeline.lengths import Length, at_most, cm

__all__ = ["cap_widths", "wider_cap"]

LEAST_WIDTH = cm(4)
"""Where the search for the widths begins if cap height and armhole leave nothing."""


def cap_widths(d: Draft, sizes: CapSizes, front_cap: Length, back_cap: Length) -> tuple[Length, Length]:
    """Front and back width with which both parts of the cap line come out as long as they are meant."""
    # As if each half of the cap line were the long side of a triangle, with the cap height and the width.
    front_start, back_start = (line.leg(sizes.height, LEAST_WIDTH) for line in (front_cap, back_cap))
    return d.found_together(
        ("front_sleeve_width", "back_sleeve_width"),
        "so wide that the cap line is as long as the armholes and the ease, front and back each",
        lambda scratch, widths: cap(scratch, sizes, *widths),
        lambda drawn: (drawn.front.reading().length - front_cap, drawn.back.reading().length - back_cap),
        start=(front_start, back_start),
        slopes=(front_start.mm / front_cap.mm, back_start.mm / back_cap.mm),
    )


def wider_cap(d: Draft, sizes: CapSizes, front_cap: Length, back_cap: Length) -> CapSizes:
    """The cap as it is, or so much lower that the sleeve is wider by the correction and its cap line as long."""
    wider = d.correction("large_arm")
    if not wider.mm:
        return sizes

    def lowered(height: Length) -> CapSizes:
        return replace(sizes, height=height, fullness=at_most(sizes.fullness, height * FLAT_CAP))

    def width(scratch: Draft, height: Length) -> Length:
        front, back = cap_widths(scratch, lowered(height), front_cap, back_cap)
        return front + back

    found = Length(width(d.scratch(), sizes.height).mm)
    usual = d.measured(
        "usual_sleeve_width",
        "How wide the sleeve would be",
        Reading(found, ("measured across the foot of the cap as it would be, drawn on scratch paper",), ()),
    )
    wanted = d.measured("wider_sleeve_width", "Wider for the larger arm", usual + wider)
    d.require(
        "arm-too-large",
        width(d.scratch(), LEAST_CAP),
        wanted,
        says="even with a flat cap no sleeve so wide fits this armhole",
        where="garment.corrections.large_arm",
        hint="make garment.corrections.large_arm smaller, or lower the armhole with garment.looseness.drop",
    )
    height = d.found(
        "lower_cap_height", "so low that across its foot the sleeve measures", width, wanted, (LEAST_CAP, sizes.height)
    )
    return lowered(d.measured("lower_cap_height", "From crown to underarm, for the larger arm", height))
