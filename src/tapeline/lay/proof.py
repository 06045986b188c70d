"""What is wrong with a plan, found from its coordinates alone: nobody has to believe how it was made."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator
from itertools import combinations

from tapeline.geometry import Outline, Point, bounds, clearance, common_ground
from tapeline.lay.cloth import Direction, Flaw, LayCloth, Spread
from tapeline.lay.need import allowed_turns, need
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.problems import Problem, Severity

__all__ = ["faults"]

SLACK_MM2 = 0.01
"""Common ground below this is rounding: the outlines themselves are exact to a hundredth of a millimetre."""
SLACK_MM = 0.011
"""So far an outline may lie over an edge, or two be nearer than the gap: flattening and rounding."""
SLACK_RADIANS = 1e-6


def faults(plan: LayPlan) -> list[Problem]:
    """Everything that is wrong with a plan; an empty list proves it.

    Pieces must not overlap nor come nearer than the gap, must lie on the strip, clear of flaws, on the fold, on their
    stripes, facing an allowed way, and be there as often as they are needed. Areas are exact.

    >>> square = (Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100))
    >>> cuff = LayPiece("cuff", "marit", square, upright=2)
    >>> plan = LayPlan(LayCloth(), (cuff,), (Placement("marit/cuff", 1, 0, 0), Placement("marit/cuff", 1, 90, 0)))
    >>> [problem.says for problem in faults(plan)]
    ['marit/cuff and marit/cuff overlap by 1000.00 mm2']
    """
    says = [*_missing(plan), *_overlapping(plan), *_too_near(plan)]
    for placement, piece, outline in plan.laid():
        says += [f"{piece.key} {wrong}" for wrong in _misplaced(plan.cloth, placement, piece, outline)]
    says += _facing(plan)
    return [Problem("lay-invalid", Severity.ERROR, wrong, f"lay of {plan.cloth.name}") for wrong in says]


def _missing(plan: LayPlan) -> Iterator[str]:
    laid = Counter((placement.piece, placement.turned_over) for placement in plan.placements)
    for piece in plan.pieces:
        wanted_each = need(piece, plan.cloth)
        if piece.on_fold:  # either half may be the one that is drawn
            laid[piece.key, False] += laid.pop((piece.key, True), 0)
        for over, wanted in wanted_each.items():
            there = laid[piece.key, over]
            if there != wanted:
                yield f"{piece.key} lies {'turned over' if over else 'as drawn'} {there} times in place of {wanted}"


def _overlapping(plan: LayPlan) -> Iterator[str]:
    for i, j, shared in common_ground(plan.outlines):
        if shared > SLACK_MM2:
            yield f"{plan.placements[i].piece} and {plan.placements[j].piece} overlap by {shared:.2f} mm2"


def _too_near(plan: LayPlan) -> Iterator[str]:
    gap = plan.cloth.gap_mm
    if not gap:
        return
    boxes = [bounds(outline) for outline in plan.outlines]
    for i, j in combinations(range(len(boxes)), 2):
        a, b = boxes[i], boxes[j]
        if max(a[0], b[0]) - min(a[2], b[2]) >= gap or max(a[1], b[1]) - min(a[3], b[3]) >= gap:
            continue
        apart = clearance(plan.outlines[i], plan.outlines[j])
        if apart < gap - SLACK_MM:
            yield f"{plan.placements[i].piece} and {plan.placements[j].piece} are {apart:.2f} mm apart, not {gap:g}"


def _misplaced(cloth: LayCloth, placement: Placement, piece: LayPiece, outline: Outline) -> Iterator[str]:
    box = bounds(outline)
    if box[0] < -SLACK_MM or box[1] < -SLACK_MM or box[3] > cloth.strip_mm + SLACK_MM:
        yield f"lies beyond the edge of the cloth: {box[0]:.2f}, {box[1]:.2f} to {box[3]:.2f} mm"
    for flaw in cloth.flaws:
        if any(shared > SLACK_MM2 for _, _, shared in common_ground([outline, _box(flaw)])):
            yield f"lies on the flaw at {flaw.x:g}, {flaw.y:g} mm"
    if piece.on_fold and not _on_a_fold(cloth, placement, box):
        yield "does not lie on the fold"
    turns = allowed_turns(piece, cloth)
    if turns and all(_apart(placement.turn, turn) > cloth.tilt + SLACK_RADIANS for turn in turns):
        yield f"is turned by {math.degrees(placement.turn):.3f} degrees"
    if piece.match is not None:
        at = placement.move.point(piece.match)
        places = (
            (at.x, cloth.repeat_along_mm, cloth.line_along_mm),
            (at.y, cloth.repeat_across_mm, cloth.line_across_mm),
        )
        for place, repeat, line in places:
            if repeat and abs(math.remainder(place - line, repeat)) > SLACK_MM:
                yield f"lies {math.remainder(place - line, repeat):.2f} mm beside its stripe"


def _on_a_fold(cloth: LayCloth, placement: Placement, box: tuple[float, float, float, float]) -> bool:
    if _apart(placement.turn, 0) > SLACK_RADIANS and _apart(placement.turn, math.pi) > SLACK_RADIANS:
        return False
    upward = (math.cos(placement.turn) > 0) != placement.turned_over
    if upward:
        return cloth.spread in {Spread.FOLDED, Spread.TUBULAR} and abs(placement.y) < SLACK_MM and box[1] > -SLACK_MM
    return cloth.spread is Spread.TUBULAR and abs(placement.y - cloth.strip_mm) < SLACK_MM


def _facing(plan: LayPlan) -> Iterator[str]:
    if plan.cloth.direction is not Direction.BY_GARMENT:
        return
    ways: dict[tuple[str, int], set[bool]] = {}
    for placement, piece, _ in plan.laid():
        if not piece.free:
            ways.setdefault((piece.garment, placement.garment), set()).add(math.cos(placement.turn) > 0)
    yield from (f"pieces of {name}, garment {n}, face both ways" for (name, n), faced in ways.items() if len(faced) > 1)


def _apart(a: float, b: float) -> float:
    return abs(math.remainder(a - b, math.tau))


def _box(flaw: Flaw) -> Outline:
    right, top = flaw.x + flaw.length, flaw.y + flaw.width
    return Point(flaw.x, flaw.y), Point(right, flaw.y), Point(right, top), Point(flaw.x, top)
