"""The stand of a shirt collar: bent up toward the front, so that it leans in to the neck, and run on over the lap.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.buttons import BEYOND, THICKNESS
from tapeline.blocks.collar_curve import FLAT_BEHIND, CollarSeam, collar_seam
from tapeline.draft import LEVEL, Draft, Drawn, Place, Sheet, folded, halfway, notch_along, only_if, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, NotchKind, Piece

__all__ = ["ButtonedLap", "Stand", "stand"]

LOWER_IN_FRONT = cm(0.5)
"""The stand is so much lower at the centre front than behind."""
GRAIN_IN = cm(2)
"""The grain line is drawn this far from the centre back."""


@dataclass(frozen=True, slots=True)
class ButtonedLap:
    """How far a front laps over the centre, and the diameter of its buttons."""

    by: Length
    button: Length


@dataclass(frozen=True, slots=True)
class Stand:
    """The stand, and its upper edge from the centre back to the centre front, which the leaf is sewn to."""

    piece: Piece
    upper: Drawn


def stand(
    d: Draft,
    *,
    height: Length,
    rise: Length,
    neckline: Length,
    front_neckline: Length,
    lap: ButtonedLap | None,
    cloth: str,
) -> Stand:
    """Half a stand, on the fold at the centre back, for half a neckline."""
    seam = collar_seam(d, "stand", neckline, bend=rise, upward=True, share=FLAT_BEHIND)
    s = d.sheet("stand")
    s.section("The stand")
    top = s.point("centre_back_top", "Its height behind", seam.back.up(height))
    front_top = s.point(
        "centre_front_top",
        "Square to the seam, a little lower than behind",
        seam.front.away_from((seam.front, seam.ahead), height - LOWER_IN_FRONT),
    )
    guide = s.point("upper_guide", "Keeps the upper edge beside the seam", seam.guide.up(height - LOWER_IN_FRONT / 2))
    upper = s.curve(
        "upper",
        "Sewn to the leaf of the collar, as far as the centre front",
        top,
        guide,
        front_top,
        leave=LEVEL,
        arrive=seam.line.onward,
    )
    marks: tuple[Mark, ...] = ()
    if lap is None:
        end = s.straight("front_end", "Ends at the centre front", front_top, seam.front)
        neck_edge = seam.line
    else:
        neck_edge, end, marks = _over_the_lap(s, seam, upper, (guide, front_top), whole=neckline + lap.by, lap=lap)
    beyond = lap.by if lap else cm(0)
    piece = s.piece(
        "Collar stand",
        folded("centre_back", s.straight("centre_back_fold", "On the fold of the cloth", seam.back, top)),
        sewn("collar", upper),
        sewn("front_end", end),
        sewn("neckline", neck_edge.reversed),
        grain=(seam.back.out(GRAIN_IN).up(height / 4), seam.back.out(GRAIN_IN).up(height * 0.75)),
        cut=Cut(2, cloth),
        notches=(
            *only_if(lap is not None, notch_along("neckline", beyond, NotchKind.SINGLE)),
            notch_along("neckline", beyond + front_neckline, NotchKind.SINGLE),
            notch_along("neckline", beyond + neckline, NotchKind.SINGLE),
        ),
        marks=marks,
    )
    return Stand(piece, upper)


def _over_the_lap(
    s: Sheet, seam: CollarSeam, upper: Drawn, above: tuple[Place, Place], *, whole: Length, lap: ButtonedLap
) -> tuple[Drawn, Drawn, tuple[Mark, ...]]:
    """The neck edge run on straight, the end rounded off, and the button at the centre front."""
    guide, front_top = above
    low = s.point("front_end_low", "Straight on over the lap, to the front edge", seam.line.along(whole))
    lap_line = s.straight("lap_line", "The neck edge over the lap", seam.front, low)
    neck_edge = s.joined("neck_edge", "Sewn to the neckline, and over the lap", seam.line, lap_line)
    end = s.curve(
        "front_end",
        "Rounded off, from the leaf's end to the front edge",
        front_top,
        low,
        leave=upper.onward,
        arrive=lap_line.square_at_end,
    )
    middle = s.point("button_place", "The button, at the centre front, half way up", halfway(seam.front, front_top))
    inner = s.point("stand_middle", "Half way up, about at the shoulder", halfway(seam.guide, guide))
    outer = s.point("buttonhole_start", "The buttonhole begins a little beyond it", middle.beyond(inner, BEYOND))
    hole_end = s.point(
        "buttonhole_end", "As long as the button and its thickness", outer.toward(inner, lap.button + THICKNESS)
    )
    cross = s.cross("button_cross", "Sewn on here", middle, lap.button / 2)
    hole = s.straight("buttonhole", "Cut along the stand, on the same side as those of the front", outer, hole_end)
    return neck_edge, end, (Mark("button", cross.path), Mark("buttonhole", hole.path))
