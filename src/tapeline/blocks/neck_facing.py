"""The neck facing: front and back traced from the body beside the neckline, sewn on and turned inside.

It is as long as the neckline and not shorter, for the knit gives; understitched, it stays inside. Rules: common
practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.neck import Neck
from tapeline.blocks.neck_shapes import NeckLine
from tapeline.draft import Draft, Drawn, Place, Sheet, WornEdge, folded, neatened, sewn, worn_beside
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, Piece, choice

__all__ = ["SLANT", "FacedHalf", "FacedNeck", "FacingChoices", "NeckFacing", "neck_facing"]

THIRDS = Fraction(1, 3), Fraction(2, 3)
"""Where along a neckline the facing's width is measured off."""
GRAIN_IN = cm(1)
SLANT = 1.15
"""Along the shoulder a facing is wider than square off the neckline: front and back shoulders slant so much at most."""
LEAST_SHOULDER = cm(0.5)
"""Between the facing and the armhole, along the shoulder: the two would be caught in one seam."""


@dataclass(frozen=True, slots=True)
class FacingChoices:
    """Width and stretch of a facing, which is cut from the garment's own cloth."""

    width: Length = choice(cm(5), 3, 10, "width of the facing, from the neckline")
    stretch: float = choice(
        15.0, 0, 200, "how much it stretches once it is interfaced, per cent: woven or firmly interfaced, nothing"
    )


@dataclass(frozen=True, slots=True)
class FacedHalf:
    """What one half of a facing is traced from."""

    neckline: Drawn
    centre: Place
    """Where the neckline begins."""
    shoulder: Drawn
    """From the neckline outward."""
    pointed: bool = False
    """Whether the neckline meets the centre in a point."""
    keyhole: Drawn | None = None
    """One side of a keyhole below the neckline, from its lower end up."""


@dataclass(frozen=True, slots=True)
class FacedNeck:
    """The neck that is faced."""

    neck: Neck
    shape: NeckLine
    front: FacedHalf
    back: FacedHalf

    @property
    def pointed(self) -> bool:
        """Whether the front meets the centre in a point."""
        return self.front.pointed


@dataclass(frozen=True, slots=True)
class NeckFacing:
    """Both pieces, and whether their outer edges run on over the shoulder seam."""

    front: Piece
    back: Piece
    stretch: float
    smooth: bool


def neck_facing(d: Draft, c: FacingChoices, body: FacedNeck) -> NeckFacing:
    """Half a front and half a back facing, each on the fold at its centre, their shoulder seams as the body's."""
    front, back = d.sheet("front_neck_facing"), d.sheet("back_neck_facing")
    for half in (body.front, body.back):
        d.require(
            "facing-too-wide",
            half.shoulder.straight_start.length,
            c.width * SLANT + LEAST_SHOULDER,
            says="the facing is wider than the shoulder is long, so that it would reach the armhole",
            where="garment.neckline.facing.width",
            hint="make garment.neckline.facing.width smaller, or widen the neckline less",
        )
    front.section("The neck facing")
    if body.shape is NeckLine.BOAT:
        outer = shallow_edge(front, body.front, c.width), shallow_edge(back, body.back, c.width)
    else:
        outer = worn_beside(
            "outer",
            "As far from the neckline as the facing is wide, smooth over the shoulder",
            WornEdge(front, faced_edge(front, body.front), body.neck.front_shoulder_line),
            WornEdge(back, faced_edge(back, body.back), body.neck.back_shoulder_line),
            c.width,
        )
    pieces = [
        faced_piece(s, edge, half, pointed=body.pointed and s is front)
        for s, half, edge in zip((front, back), (body.front, body.back), outer, strict=True)
    ]
    return NeckFacing(pieces[0], pieces[1], c.stretch, body.shape is not NeckLine.BOAT)


def faced_edge(s: Sheet, half: FacedHalf) -> Drawn:
    """What the facing lies along: the neckline, and before it a keyhole where there is one."""
    if half.keyhole is None:
        return half.neckline
    slit, neckline = half.keyhole.path, half.neckline.path
    path = slit.joined(neckline.part(neckline.length_to(slit.end), neckline.length))
    how = f"{half.keyhole.full_name} and {half.neckline.full_name} as one line"
    says = "Keyhole and neckline, as far as the facing goes along them"
    return s.drawn("faced", says, path, (how,), (half.keyhole.label, half.neckline.label))


def shallow_edge(s: Sheet, half: FacedHalf, width: Length) -> Drawn:
    """The outer edge of a facing whose neckline has a corner at the shoulder: as wide there as at the centre."""
    return s.curve(
        "outer",
        "As far from the neckline as the facing is wide, and so far along the shoulder",
        s.point("outer_centre", "Its width below the neckline, on the centre", half.centre.down(width)),
        *(
            s.point(f"outer_{number}", "Its width, measured off the neckline", half.neckline.off(share, width))
            for number, share in enumerate(THIRDS, 1)
        ),
        s.point("outer_shoulder", "Its width along the shoulder", half.shoulder.along(width)),
        leave=s.centre.square,
    )


def faced_piece(s: Sheet, outer: Drawn, half: FacedHalf, *, pointed: bool) -> Piece:
    """The outline, on the fold at the centre: neckline and shoulder are traced from the body."""
    low = s.point("outer_end", "Where its outer edge meets the centre", outer.beginning)
    neckline = s.drawn(
        "neckline",
        "As on the body: the facing is as long as the neckline that it is sewn to",
        half.neckline.path,
        (f"traced from the {half.neckline.full_name}",),
        (half.neckline.label,),
    )
    along = outer.path.end.distance_to(half.shoulder.path.start)
    shoulder = s.drawn(
        "shoulder",
        "As much of the shoulder as the facing covers, so that both seams lie on each other",
        half.shoulder.path.part(0, along),
        (f"traced from the {half.shoulder.full_name}, from the neckline to the outer edge",),
        (half.shoulder.label, outer.label),
    )
    marks: tuple[Mark, ...] = ()
    if half.keyhole is not None:
        says, how = (
            "As on the body: stitched along here before both are slashed",
            f"traced from the {half.keyhole.full_name}",
        )
        marks = (Mark("keyhole", s.drawn("keyhole", says, half.keyhole.path, (how,), (half.keyhole.label,)).path),)
    return s.piece(
        s.name.replace("_", " ").capitalize(),
        folded("centre", s.straight("centre", "On the fold of the cloth", low, half.centre)),
        sewn("neckline", neckline),
        sewn("shoulder", shoulder),
        neatened("outer", outer.reversed),
        grain=(low.out(GRAIN_IN), half.centre.out(GRAIN_IN).down(GRAIN_IN)),
        cut=Cut(1),
        marks=marks,
        pointed=("neckline", "outer") if pointed else (),
    )
