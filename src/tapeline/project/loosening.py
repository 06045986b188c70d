"""The looseness of a docket in its two ways, on the plain block of its wearer."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.two_ways import TwoWays
from tapeline.alter.two_ways import two_ways as of_half
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.docket import Docket
from tapeline.draft import Draft
from tapeline.pattern import Garment
from tapeline.styles import STYLES

__all__ = ["two_ways"]

CLOSE = LOOSENESS["close"]


def two_ways(docket: Docket) -> tuple[TwoWays, ...]:
    """Back and front of the wearer's block, extended by the docket's looseness, and cut and spread by as much.

    The block is drawn to its hip line and without corrections: they are made on top of either way. Nothing where the
    docket makes it no looser.

    Raises `InputError` where the block cannot be drawn close, or cannot be cut so: then one way alone is possible.

    >>> from tapeline.docket import read_docket
    >>> [(way.half, way.same) for way in two_ways(read_docket("examples/tee.toml"))]
    [('back', True), ('front', True)]
    """
    given: Looseness = docket.choices.looseness
    by = replace(given, hem=CLOSE.hem)
    if not (by.side.mm or by.drop.mm or by.shoulder.mm):
        return ()
    close, ruled = _block(docket, replace(CLOSE, scoop=by.scoop)), _block(docket, by)
    return tuple(
        of_half(close, ruled, half, side=by.side, drop=by.drop, shoulder=by.shoulder) for half in ("back", "front")
    )


def _block(docket: Docket, looseness: Looseness) -> Garment:
    style = STYLES["block"]
    choices = replace(style.choices(), looseness=looseness)
    return style.page(Draft(docket.wearer, docket.by_hand), choices, surveyed=docket.surveyed)
