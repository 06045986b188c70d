"""A collar that is turned down: on a stand of its own, or in one piece that turns over by itself.

Rules: common practice in the trade, no published source. Both halves of a layer are cut in one, on the fold. The under
layer is a little smaller than the upper one, round its outer edge and its point and not at the seam: the upper one has
to go over the cloth that is turned at the edge, and what it is longer draws the seam to the under side.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.collar_curve import CollarSeam, collar_seam
from tapeline.blocks.neck import Neckline
from tapeline.blocks.stand import ButtonedLap, Stand, stand
from tapeline.draft import LEVEL, Draft, Place, Sheet, folded, notch_along, sewn, traced
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
    turn: Length = choice(
        cm(0.2), 0, 0.6, "under layer smaller than the upper one round its outer edge; 0.2 thin, 0.4 thick cloth"
    )
    cloth: str = "shell"


COLLARS = {
    "stand": CollarChoices(),
    "one-piece": CollarChoices(stand=cm(0), width=cm(7.5), rise=cm(1)),
    "rib": CollarChoices(stand=cm(0), width=cm(7), rise=cm(0), point=cm(6.5), forward=cm(1), turn=cm(0), cloth="rib"),
}


@dataclass(frozen=True, slots=True)
class Collar:
    """The pieces of a collar; without a stand the leaf is sewn to the neckline itself."""

    leaf: Piece
    stand: Piece | None
    under: Piece | None = None
    """The under layer, where it is smaller than the leaf; otherwise the leaf is cut twice."""

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """From the neckline outward."""
        return tuple(piece for piece in (self.stand, self.leaf, self.under) if piece is not None)


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
        return _layers(d, c, seam, None, _Sewn("neckline", neckline, front))
    made = _stand(d, c, neckline, front, lap)
    along = d.measured("stand_upper", "Along the stand's upper edge, to the centre front", made.upper.reading())
    bend = d.measured(
        "leaf_bend",
        "Twice as much as the stand's, the other way: the outer edge has to lie round the stand",
        c.rise * LEAF_BEND,
    )
    seam = collar_seam(d, "collar", along, bend=bend, upward=False)
    return _layers(d, c, seam, made.piece, _Sewn("stand", along))


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


@dataclass(frozen=True, slots=True)
class _Sewn:
    """What the leaf's seam is called, how long it is, and where along it the shoulder comes."""

    name: str
    along: Length
    shoulder: Length | None = None


def _layers(d: Draft, c: CollarChoices, seam: CollarSeam, made_stand: Piece | None, to: _Sewn) -> Collar:
    """Both layers alike, cut twice; or the under one smaller by the turn of cloth."""
    if not c.turn.mm:
        return Collar(_leaf(d.sheet("collar"), c, seam, to, Cut(2, c.cloth)), made_stand)
    upper = _leaf(d.sheet("collar"), c, seam, to, Cut(1, c.cloth))
    d.section("The turn of cloth")
    smaller = replace(
        c,
        width=d.measured(
            "under_width", "The upper layer goes over the edge: the under one is narrower", c.width - c.turn
        ),
        point=d.measured("under_point", "Its point is nearer to the seam by as much", c.point - c.turn),
        forward=d.measured("under_forward", "And further back by as much", c.forward - c.turn),
    )
    s = d.sheet("under_collar")
    s.section("The under layer")
    line = traced(s, "seam_line", "Its seam is as long as the upper layer's", seam.line)
    ends = {
        name: s.point(name, "As on the upper layer", Place(place.point, how=("traced through",), needs=(place.label,)))
        for name, place in (("centre_back", seam.back), ("centre_front", seam.front), ("straight_on", seam.ahead))
    }
    same = replace(seam, line=line, back=ends["centre_back"], front=ends["centre_front"], ahead=ends["straight_on"])
    return Collar(upper, made_stand, _leaf(s, smaller, same, to, Cut(1, c.cloth)))


def _leaf(s: Sheet, c: CollarChoices, seam: CollarSeam, to: _Sewn, cut: Cut) -> Piece:
    """Half the part that is turned down, on the fold at the centre back; it ends at the centre front."""
    s.section("The outer edge")
    top = s.point("centre_back_top", "Its width behind", seam.back.up(c.width))
    front_line = seam.front, seam.ahead
    square = s.point("point_square", "Square to the seam at its end", seam.front.away_from(front_line, c.point))
    beside = s.point("point_ahead", "As far square off, straight on", seam.ahead.away_from(front_line, c.point))
    tip = s.point("point", "The point of the collar, forward of square", square.toward(beside, c.forward))
    outer = s.curve("outer", "The outer edge, square to the fold", top, tip, leave=LEVEL)
    return s.piece(
        "Under collar" if s.name == "under_collar" else "Collar",
        folded("centre_back", s.straight("centre_back_fold", "On the fold of the cloth", seam.back, top)),
        sewn("outer", outer),
        sewn("front_end", s.straight("front_end", "From the point to the seam", tip, seam.front)),
        sewn(to.name, seam.line.reversed),
        grain=(seam.back.out(GRAIN_IN).up(c.width / 4), seam.back.out(GRAIN_IN).up(c.width * 0.75)),
        cut=cut,
        notches=(
            *(() if to.shoulder is None else (notch_along(to.name, to.shoulder, NotchKind.SINGLE),)),
            notch_along(to.name, to.along, NotchKind.SINGLE),
        ),
    )
