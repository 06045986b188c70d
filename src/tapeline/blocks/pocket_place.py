"""Where a pocket lies on the front, and its outline there.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.draft import Draft, Drawn, Place, Sheet
from tapeline.lengths import Length, cm
from tapeline.pattern import Mark, Piece

__all__ = ["OPENING_HEM", "UNDER", "OnFront", "Pocket", "above_hem", "on_front", "room_above"]

OPENING_HEM = cm(2)
"""Turned in along the opening."""
UNDER = "Turned under and stitched to the front"


@dataclass(frozen=True, slots=True)
class OnFront:
    """What a pocket is placed by."""

    chest_level: Place
    hem_centre: Place
    hem: Drawn
    """From the side to the centre."""
    arm_length: Length
    armhole: Drawn
    half_chest: Length
    """From the centre to the armhole, across the front."""


@dataclass(frozen=True, slots=True)
class Pocket:
    """The pocket, and its outline on the front."""

    piece: Piece
    mark: Mark


def above_hem(s: Sheet, c: PocketChoices, on: OnFront, between: tuple[Length, Length], start: Place) -> Place:
    """Above the hem by what was chosen, where the hem is highest between two distances from the centre."""
    near = s.point("pocket_in", "Out to the pocket's inner corner", on.hem_centre.out(between[0]))
    far = s.point("pocket_out", "Out to its outer corner", on.hem_centre.out(between[1]))
    inner = s.point("pocket_hem_in", "The hem under the pocket's inner corner", on.hem.crossing_plumb(near))
    outer = s.point("pocket_hem_out", "The hem under its outer corner", on.hem.crossing_plumb(far))
    higher = outer if outer.point.y >= inner.point.y else inner
    return start.level_with(higher).up(c.above_hem)


def room_above(d: Draft, on: OnFront, foot: Place, depth: Length) -> None:
    """Between a pocket and the chest line there is some front left."""
    d.require(
        "pocket-too-deep",
        d.measured(
            "pocket_room", "From the chest line down to the pocket's lower edge", on.chest_level.reading_down_to(foot)
        ),
        depth,
        says="the pocket would reach up past the chest line",
        where="garment.pocket.above_hem",
        hint="make garment.pocket.above_hem smaller, or garment.length longer",
    )


def on_front(s: Sheet, corners: tuple[Place, ...]) -> Mark:
    """The pocket's outline, where it is stitched down."""
    line = s.straight("pocket_place", "The pocket is laid here and stitched down", *corners)
    return Mark("pocket", line.path)
