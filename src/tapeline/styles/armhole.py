"""The armhole of a top without sleeves as it is finished: what is sewn to it, and how."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from tapeline.blocks.armhole_band import BandedArmhole, armhole_band, armhole_binding
from tapeline.blocks.armhole_finish import ArmholeFinish, ArmholeFinishChoices, FacedArmhole, armhole_facing
from tapeline.blocks.neck_facing import SLANT
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neckband import BandChoices
from tapeline.draft import Draft, Drawn, hemmed, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Edge
from tapeline.styles.body import Body, HalfBody
from tapeline.styles.neck import FinishedEdge
from tapeline.styles.seams import armhole_band_seams, armhole_facing_joins, armhole_facing_seams
from tapeline.styles.top import FinishedNeckline

__all__ = ["armhole_edge", "finished_armhole", "inside_armhole"]

NOTHING = cm(0)


def inside_armhole(c: ArmholeFinishChoices, band: BandChoices) -> Length:
    """How far what is sewn to the armhole reaches into it: the body is cut back by as much."""
    inside = {ArmholeFinish.BAND: band.width, ArmholeFinish.BINDING: c.binding.width}
    return inside.get(c.finish, NOTHING)


def armhole_edge(c: ArmholeFinishChoices) -> Callable[[str, Drawn], Edge]:
    """What becomes of the armhole: turned up, sewn with an allowance as wide as its binding, or just sewn."""
    if c.finish is ArmholeFinish.HEM:
        return partial(hemmed, depth=c.hem)
    if c.finish is ArmholeFinish.BINDING:
        return partial(sewn, allowance=c.binding.width)
    return sewn


def finished_armhole(
    d: Draft, c: ArmholeFinishChoices, band: BandChoices, made: Body, *, neck: FinishedNeckline
) -> FinishedEdge:
    """The armhole finished as chosen; `band` is the style's own, for an armhole with a band."""
    if c.finish is ArmholeFinish.HEM:
        return FinishedEdge()
    if c.finish is ArmholeFinish.FACING:
        beside = neck.facing.width * SLANT if neck.finish is NeckFinish.FACING else NOTHING
        facing = armhole_facing(d, c.facing_width, faced(made.front), faced(made.back), neck_facing=beside)
        pieces = facing.front, facing.back
        return FinishedEdge(pieces, armhole_facing_seams(facing), armhole_facing_joins(facing))
    ends = banded(made.back), banded(made.front)
    binding = c.finish is ArmholeFinish.BINDING
    strip = armhole_binding(d, c.binding, *ends) if binding else armhole_band(d, band, *ends)
    return FinishedEdge((strip.piece,), armhole_band_seams(strip))


def banded(half: HalfBody) -> BandedArmhole:
    """The armhole of a half, to be banded."""
    return BandedArmhole(half.armhole, half.notch)


def faced(half: HalfBody) -> FacedArmhole:
    """The same, to be faced."""
    return FacedArmhole(half.shoulder, half.armhole, half.side, half.notched)
