"""The neck of a top as it is finished: what is sewn to the neckline, and how."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.keyhole import KeyholePlace
from tapeline.blocks.neck_facing import FacedHalf, FacedNeck, neck_facing
from tapeline.blocks.neck_finish import NeckFinish, finish_fits
from tapeline.blocks.neck_shapes import NeckLine
from tapeline.blocks.neckband import BandChoices, Neckband, neck_binding, neckband, rib_collar
from tapeline.draft import Draft, Drawn
from tapeline.pattern import Join, Piece, Seam
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.body import HalfBody
from tapeline.styles.seams import band_seams, neck_facing_joins, neck_facing_seams
from tapeline.styles.top import FinishedNeckline, NecklineChoices, Top

__all__ = ["FinishedEdge", "finished_neck"]


@dataclass(frozen=True, slots=True)
class FinishedEdge:
    """Pieces, seams and joins that the finish adds; none where the edge is turned up."""

    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    joins: tuple[Join, ...] = ()


def finished_neck(d: Draft, c: NecklineChoices, band: BandChoices, made: Top) -> FinishedEdge:
    """The neck finished as chosen; `band` is the style's own, for a neck with a band."""
    finish = c.finish if isinstance(c, FinishedNeckline) else NeckFinish.BAND
    if isinstance(c, FinishedNeckline):
        keyhole_fits(c, made)
    finish_fits(finish, made.neckline.shape, pointed=made.neckline.pointed)
    if not isinstance(c, FinishedNeckline) or finish is NeckFinish.BAND:
        return stripped(neckband(d, band, made.neckline))
    if c.finish is NeckFinish.HEM:
        return FinishedEdge()
    if c.finish is NeckFinish.FACING:
        line, halves = made.neckline, made.body
        front = FacedHalf(
            line.front,
            made.front_centre,
            halves.front.shoulder,
            line.pointed,
            slit_of(c, KeyholePlace.FRONT, halves.front),
        )
        back = FacedHalf(
            line.back, made.back_centre, halves.back.shoulder, keyhole=slit_of(c, KeyholePlace.BACK, halves.back)
        )
        facing = neck_facing(d, c.facing, FacedNeck(made.points.neck, line.shape, front, back))
        return FinishedEdge((facing.front, facing.back), neck_facing_seams(facing), neck_facing_joins(facing))
    if c.finish is NeckFinish.BINDING:
        return stripped(neck_binding(d, c.binding, made.neckline))
    return stripped(rib_collar(d, c.collar, made.neckline))


def slit_of(c: FinishedNeckline, place: KeyholePlace, half: HalfBody) -> Drawn | None:
    """The keyhole marked on a half, where it has one."""
    if c.keyhole.place is not place:
        return None
    return Drawn(f"{half.piece.name}.keyhole", next(mark.path for mark in half.piece.marks if mark.name == "keyhole"))


def keyhole_fits(c: FinishedNeckline, made: Top) -> None:
    """Raise `InputError` (`keyhole-not-here`) for a keyhole that nothing finishes, or where there is no room for it."""
    if c.keyhole.place is KeyholePlace.NONE:
        return
    says, hint = "", ""
    if c.finish is not NeckFinish.FACING:
        says, hint = "the edges of a keyhole are turned in with a facing", 'choose garment.neckline.finish = "facing"'
    elif made.neckline.shape is NeckLine.BOAT:
        says, hint = (
            "a boat neck is wide enough for the head without a keyhole",
            'choose place = "none", or another shape',
        )
    elif made.neckline.pointed and c.keyhole.place is KeyholePlace.FRONT:
        says, hint = "a v goes down where a keyhole would be", 'choose place = "back", or another shape'
    if says:
        where = "garment.neckline.keyhole.place"
        raise InputError(Problem("keyhole-not-here", Severity.ERROR, says, where, f"{hint}. Nothing was drafted."))


def stripped(strip: Neckband) -> FinishedEdge:
    """With a strip round it."""
    return FinishedEdge((strip.piece,), band_seams(strip))
