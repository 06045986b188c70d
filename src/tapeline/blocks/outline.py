"""The lines of back and front around the points: shoulder, armhole, side, hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.dartless import Half
from tapeline.draft import LEVEL, Drawn, Place, Reading, Sheet

__all__ = ["GIRTHS", "SideLines", "armhole", "square_hem", "straight_side"]

GIRTHS = ("chest", "waist", "hip")


@dataclass(frozen=True, slots=True)
class SideLines:
    """The side seam of one half, and the place of its waist."""

    side: Drawn
    """As far as it is sewn."""
    waist: Place
    waist_out: Reading
    hem: Place
    notch: Place
    """Where back and front are matched: at the waist, or half way where the side ends above it."""
    vent: Drawn | None = None
    """One edge of the slit below the seam."""
    reaches: tuple[str, ...] = GIRTHS
    """The girths of the body that the sewn side comes down to."""

    @property
    def vent_top(self) -> Place:
        """Where the seam ends."""
        return Place(self.side.path.end, f"{self.side.label.partition('.')[0]}.vent_top")

    @property
    def last(self) -> Drawn:
        """What the hem meets."""
        return self.vent or self.side


def armhole(sheet: Sheet, half: Half, shoulder: Drawn, side: Drawn, name: str = "armhole") -> Drawn:
    """From the shoulder tip, square to the shoulder, to the underarm, square to the side.

    Level at the underarm would leave a point or a dip there when the side slants.
    """
    return sheet.curve(
        name,
        "Square to the shoulder and square to the side, so that it runs on smoothly over both seams",
        half.shoulder_tip,
        half.armhole_point,
        half.armhole_hollow,
        half.underarm,
        leave=shoulder.square_at_end,
        arrive=side.square_at_start,
    )


def straight_side(sheet: Sheet, half: Half, hem: Place, name: str = "side") -> SideLines:
    """Straight from the underarm to the hip line and on: nothing is taken in at the waist."""
    to_hip = sheet.straight("side_line", "Underarm to hip, straight", half.underarm, half.side_hip)
    waist = sheet.point("side_waist", "The side at the waist", to_hip.crossing_level(half.waist_level))
    end = sheet.point(
        "side_hem",
        "Where the side ends: one arc can leave the centre level and meet the side square",
        to_hip.arc_end(hem),
    )
    side = sheet.straight(name, "Underarm to hem", half.underarm, end)
    return SideLines(side, waist, waist.reading_from(half.waist_level), end, waist)


def square_hem(sheet: Sheet, centre: Place, side: SideLines) -> Drawn:
    """From the side, or its vent, square to it, to the centre, square to the fold."""
    return sheet.curve(
        "hem",
        "Square to the side and square to the centre, so that it runs on smoothly over both",
        side.hem,
        centre,
        leave=side.last.square_at_end,
        arrive=LEVEL,
    )
