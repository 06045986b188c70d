"""Pieces of a garment that stay together: laid beside each other first, then moved as one piece with one outline."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from tapeline.geometry import Outline, Vector, bounds, closed_up, ground
from tapeline.lay.cloth import LayCloth, Spread
from tapeline.lay.drop import dropped, settled
from tapeline.lay.need import need
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Bound", "bound"]

SHARES = (1.0, 1.2, 1.5, 2.0, math.inf)
"""A block is tried on strips so much wider than the side of a square of its pieces' ground, and on the whole cloth."""


@dataclass(frozen=True, slots=True)
class Bound:
    """Pieces of which some stand for a whole block, and what they stand for."""

    pieces: tuple[LayPiece, ...]
    members: dict[str, tuple[Placement, ...]]
    """By the key of the piece that stands for a block: its members, in that piece's axes."""
    before: tuple[LayPiece, ...]

    def loosed(self, plan: LayPlan) -> LayPlan:
        """The same plan, of the pieces themselves."""
        if not self.members:
            return plan
        placements: list[Placement] = []
        for placement in plan.placements:
            if placement.piece not in self.members:
                placements.append(placement)
                continue
            for member in self.members[placement.piece]:
                at = placement.move.vector(Vector(member.x, member.y)) + Vector(placement.x, placement.y)
                turn = math.remainder(member.turn + placement.turn, math.tau)
                placements.append(replace(member, garment=placement.garment, x=at.x, y=at.y, turn=turn))
        return replace(plan, pieces=self.before, placements=tuple(placements))


def bound(pieces: Sequence[LayPiece], cloth: LayCloth) -> Bound:
    """The pieces of each garment's blocks in one outline each.

    Raises:
        InputError: `lay-block`: a block with a half that has to lie on the fold, with pieces that have to match
            stripes, or one that does not fit on the cloth.
    """
    words = dict.fromkeys((piece.garment, piece.block) for piece in pieces if piece.block)
    kept = [piece for piece in pieces if not piece.block]
    members: dict[str, tuple[Placement, ...]] = {}
    for garment, word in words:
        own = [piece for piece in pieces if (piece.garment, piece.block) == (garment, word)]
        _may_be_bound(own, cloth, word)
        one, placements = _together(own, cloth, word)
        kept.append(one)
        members[one.key] = placements
    return Bound(tuple(kept), members, tuple(pieces))


def _together(own: Sequence[LayPiece], cloth: LayCloth, word: str) -> tuple[LayPiece, tuple[Placement, ...]]:
    single = [replace(piece, garments=1) for piece in own]
    covered = sum(ground(p.outline) * (p.upright + p.turned_over) for p in single)
    plans = []
    for share in SHARES:
        plan = dropped(single, _of_strip(cloth, min(math.sqrt(covered) * share, cloth.strip_mm)))
        if plan is not None:
            plans.append(settled(plan))
    if not plans:
        raise _refused(f"the block {word} does not fit on the cloth", word)
    outlines = [closed_up(plan.outlines) for plan in plans]
    best = min(range(len(plans)), key=lambda n: _room(outlines[n]))
    first = own[0]
    one = LayPiece(f"block {word}", first.garment, outlines[best], garments=first.garments, cloth=cloth.name)
    return one, plans[best].placements


def _of_strip(cloth: LayCloth, strip: float) -> LayCloth:
    """The same cloth, so wide that its strip has that height."""
    wide = {Spread.FOLDED: 2 * (strip + cloth.selvedge_mm), Spread.TUBULAR: 2 * strip}
    return replace(cloth, flaws=(), width_mm=wide.get(cloth.spread, strip + 2 * cloth.selvedge_mm))


def _room(outline: Outline) -> float:
    """The box round a block: what it takes at worst."""
    left, low, right, high = bounds(outline)
    return (right - left) * (high - low)


def _may_be_bound(own: Sequence[LayPiece], cloth: LayCloth, word: str) -> None:
    for piece in own:
        alone = need(replace(piece, garments=1), cloth)
        if piece.on_fold:
            raise _refused(f"{piece.name} lies on the fold, so it cannot be moved about with the block {word}", word)
        if piece.match is not None and (cloth.repeat_along_mm or cloth.repeat_across_mm):
            raise _refused(f"{piece.name} has to match the stripes, so it cannot stay with the block {word}", word)
        if need(piece, cloth) != {over: count * piece.garments for over, count in alone.items()}:
            says = f"on two layers one {piece.name} serves two garments, so it cannot stay with the block {word}"
            raise _refused(says, word)


def _refused(says: str, word: str) -> InputError:
    hint = "leave it out of the block, or spread the cloth open. Nothing was laid"
    return InputError(Problem("lay-block", Severity.ERROR, says, f"block {word}", hint))
