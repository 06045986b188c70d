"""How an armhole without a sleeve is finished, as a choice by word, and the facing that it may have.

A facing is front and back traced beside the armhole, sewn on and turned inside. It ends on the body's own shoulder and
side seams, square to the armhole at both. Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.neckband import BindingChoices
from tapeline.draft import Draft, Drawn, Place, Sheet, neatened, notch, sewn
from tapeline.draft.place import needs_of
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, NotchKind, Piece, Word, choice

__all__ = ["ArmholeFacing", "ArmholeFinish", "ArmholeFinishChoices", "FacedArmhole", "armhole_facing"]

GRAIN_IN = cm(1)
PLACES = Fraction(1, 4), Fraction(1, 2), Fraction(3, 4)
"""Where along the armhole the facing's width is measured off."""
LEAST_BETWEEN = cm(0.5)
"""Along the shoulder, between the facing and the neckline."""


class ArmholeFinish(Word):
    """What is sewn to an armhole, or how it is turned."""

    BAND = "band", "a folded strip inside the armhole, shorter than it and stretched on"
    BINDING = "binding", "a narrow strip folded over the edge, stretched on a little"
    FACING = "facing", "cut as the body is, sewn on and turned inside"
    HEM = "hem", "turned inside and stitched down"


@dataclass(frozen=True, slots=True)
class ArmholeFinishChoices:
    """How the armhole is finished, and the numbers of each way; the band's stand beside it."""

    finish: ArmholeFinish = ArmholeFinish.BAND
    binding: BindingChoices = BindingChoices()
    facing_width: Length = choice(cm(3), 2, 6, "width of the armhole's facing")
    hem: Length = choice(cm(1), 0.5, 2.5, "depth of an armhole that is turned up")

    @property
    def idle(self) -> frozenset[str]:
        """The choices that say nothing with this finish."""
        used = {"facing": "facing_width"}.get(self.finish, str(self.finish))
        return frozenset({"binding", "facing_width", "hem"} - {used})


@dataclass(frozen=True, slots=True)
class FacedArmhole:
    """What one half of a facing is traced from: shoulder to the armhole, armhole to the side, side from there down."""

    shoulder: Drawn
    armhole: Drawn
    side: Drawn
    notched: Place
    """Where the armhole is notched."""


@dataclass(frozen=True, slots=True)
class ArmholeFacing:
    """Both pieces."""

    front: Piece
    back: Piece


def armhole_facing(
    d: Draft, width: Length, front: FacedArmhole, back: FacedArmhole, *, neck_facing: Length
) -> ArmholeFacing:
    """Front and back facing of one armhole, cut twice, once turned over; the neck's covers so much of the shoulder."""
    pieces = []
    for name, half, kind in (("front", front, NotchKind.SINGLE), ("back", back, NotchKind.DOUBLE)):
        d.require(
            "facing-too-wide",
            half.shoulder.reading().length,
            width + neck_facing + LEAST_BETWEEN,
            says="the armhole's facing would reach the neckline, or the facing of the neck",
            where="garment.armhole.facing_width",
            hint="make the facings or garment.shoulder_narrower smaller, or bind or hem one of the two edges",
        )
        pieces.append(_half(d.sheet(f"{name}_armhole_facing"), width, half, kind))
    return ArmholeFacing(pieces[0], pieces[1])


def _half(s: Sheet, width: Length, half: FacedArmhole, kind: NotchKind) -> Piece:
    title = s.name.replace("_", " ")
    s.section(f"The {title}")
    armhole = s.drawn(
        "armhole",
        "As on the body: the facing is as long as the armhole that it is sewn to",
        half.armhole.path,
        (f"traced from the {half.armhole.full_name}",),
        (half.armhole.label,),
    )
    inward = half.shoulder.reversed
    low = s.point("outer_side", "Its width down the side", half.side.along(width))
    outer = s.curve(
        "outer",
        "As far from the armhole as the facing is wide; square to both seams, so that it runs on over them",
        s.point("outer_shoulder", "Its width in along the shoulder", inward.along(width)),
        *(
            s.point(f"outer_{number}", "Its width, measured off the armhole", half.armhole.off(share, width))
            for number, share in enumerate(PLACES, 1)
        ),
        low,
        leave=half.shoulder.square_at_end,
        arrive=half.side.square_at(width),
    )
    shoulder = s.drawn(
        "shoulder",
        "As much of the shoulder as the facing covers",
        inward.path.part(0, width.mm).reversed(),
        (f"traced from the {half.shoulder.full_name}, from the armhole inward by ", width),
        (half.shoulder.label, *needs_of(width)),
    )
    side = s.drawn(
        "side",
        "As much of the side as the facing covers",
        half.side.path.part(0, width.mm),
        (f"traced from the {half.side.full_name}, from the armhole down by ", width),
        (half.side.label, *needs_of(width)),
    )
    return s.piece(
        title.capitalize(),
        sewn("shoulder", shoulder),
        sewn("armhole", armhole),
        sewn("side", side),
        neatened("outer", outer.reversed),
        grain=(low.inward(GRAIN_IN), low.inward(GRAIN_IN).up(width)),
        cut=Cut(2, mirrored=True),
        notches=(notch("armhole", armhole, half.notched, kind),),
    )
