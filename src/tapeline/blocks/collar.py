"""A collar that is turned down: on a stand of its own, or in one piece that turns over by itself.

Rules: common practice in the trade, no published source. Both halves of a layer are cut in one, on the fold, and both
layers alike: that the upper layer wants to be a little larger than the under one is not drawn.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.collar_curve import CollarSeam, collar_seam
from tapeline.blocks.neck import Neckline
from tapeline.blocks.stand import ButtonedLap, Stand, stand
from tapeline.draft import LEVEL, Draft, folded, notch_along, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, NotchKind, Piece, choice

__all__ = ["COLLARS", "Collar", "CollarChoices", "collar"]

LEAF_BEND = 2
"""The leaf's seam is bent the other way than the stand's, by so many times as much."""
LEAST_COVER = cm(0.5)
"""The leaf is so much wider behind than its stand is high: narrower, and the seam shows."""
ROUND_THE_NECK = cm(1)
"""A collar is at least so much longer than the neck, or it cannot be closed in comfort."""
GRAIN_IN = cm(3)
"""The grain line is drawn this far from the centre back."""


@dataclass(frozen=True, slots=True)
class CollarChoices:
    """Heights, how the collar bends, and its points; all lengths as finished."""

    stand: Length = choice(cm(3), 0, 4.5, "height of the stand behind; without one the collar is cut in one piece")
    width: Length = choice(cm(4.5), 3, 12, "from the seam to the outer edge, at the centre back")
    rise: Length = choice(cm(1.5), 0, 3, "the seam is bent up so far at the front: more lies closer to the neck")
    point: Length = choice(cm(7), 3, 12, "from the seam to the point, square to the seam")
    forward: Length = choice(cm(2), -2, 5, "point forward of square: more, and the points come closer together")
    cloth: str = "shell"


COLLARS = {
    "stand": CollarChoices(),
    "one-piece": CollarChoices(stand=cm(0), width=cm(7.5), rise=cm(1)),
    "rib": CollarChoices(stand=cm(0), width=cm(7), rise=cm(0), point=cm(6.5), forward=cm(1), cloth="rib"),
}


@dataclass(frozen=True, slots=True)
class Collar:
    """The pieces of a collar; without a stand the leaf is sewn to the neckline itself."""

    leaf: Piece
    stand: Piece | None

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """From the neckline outward."""
        return (self.leaf,) if self.stand is None else (self.stand, self.leaf)


def collar(d: Draft, c: CollarChoices, line: Neckline, lap: ButtonedLap | None) -> Collar:
    """A collar as long as a neckline; a stand runs on over the lap, where the front has one."""
    d.section("The collar's sizes")
    front = d.measured("front_neckline", "Half the front neckline", line.front.reading())
    back = d.measured("back_neckline", "Half the back neckline", line.back.reading())
    neckline = d.measured("neckline", "Half the neckline", front + back)
    if d.taped("neck"):
        d.remark(
            "collar-tight",
            d.tape("neck") + ROUND_THE_NECK,
            above=neckline * 2,
            says="the closed collar leaves less than 1 cm round the neck",
            where="garment.neckline",
            hint="widen the neckline with garment.neckline.widen or lower it with garment.neckline.lower_front",
        )
    if not c.stand.mm:
        seam = collar_seam(d, "collar", neckline, bend=c.rise, upward=True)
        return Collar(_leaf(d, c, seam, "neckline", along=neckline, shoulder=front), None)
    made = _stand(d, c, neckline, front, lap)
    along = d.measured("stand_upper", "Along the stand's upper edge, to the centre front", made.upper.reading())
    bend = d.measured(
        "leaf_bend",
        "Twice as much as the stand's, the other way: the outer edge has to lie round the stand",
        c.rise * LEAF_BEND,
    )
    seam = collar_seam(d, "collar", along, bend=bend, upward=False)
    return Collar(_leaf(d, c, seam, "stand", along=along), made.piece)


def _stand(d: Draft, c: CollarChoices, neckline: Length, front: Length, lap: ButtonedLap | None) -> Stand:
    d.require(
        "collar-too-narrow",
        c.width,
        c.stand + LEAST_COVER,
        says="the collar does not cover the seam of its stand",
        where="garment.collar.width",
        hint="make garment.collar.width wider, or garment.collar.stand lower",
    )
    return stand(d, height=c.stand, rise=c.rise, neckline=neckline, front_neckline=front, lap=lap, cloth=c.cloth)


def _leaf(
    d: Draft, c: CollarChoices, seam: CollarSeam, name: str, *, along: Length, shoulder: Length | None = None
) -> Piece:
    """Half the part that is turned down, on the fold at the centre back; it ends at the centre front."""
    s = d.sheet("collar")
    s.section("The outer edge")
    top = s.point("centre_back_top", "Its width behind", seam.back.up(c.width))
    front_line = seam.front, seam.ahead
    square = s.point("point_square", "Square to the seam at its end", seam.front.away_from(front_line, c.point))
    beside = s.point("point_ahead", "As far square off, straight on", seam.ahead.away_from(front_line, c.point))
    tip = s.point("point", "The point of the collar, forward of square", square.toward(beside, c.forward))
    outer = s.curve("outer", "The outer edge, square to the fold", top, tip, leave=LEVEL)
    return s.piece(
        "Collar",
        folded("centre_back", s.straight("centre_back_fold", "On the fold of the cloth", seam.back, top)),
        sewn("outer", outer),
        sewn("front_end", s.straight("front_end", "From the point to the seam", tip, seam.front)),
        sewn(name, seam.line.reversed),
        grain=(seam.back.out(GRAIN_IN).up(c.width / 4), seam.back.out(GRAIN_IN).up(c.width * 0.75)),
        cut=Cut(2, c.cloth),
        notches=(
            *(() if shoulder is None else (notch_along(name, shoulder, NotchKind.SINGLE),)),
            notch_along(name, along, NotchKind.SINGLE),
        ),
    )
