"""Laying by pushing: a piece comes in from the far end of the cloth and is pushed back until it meets something.

Its way was free, so it may also stop anywhere on it: on its stripe, or short of a flaw. What is laid so is sound
whatever came before, which makes it the first plan, and the last step of every other.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from tapeline.geometry import Point, Solid, Vector, push_left
from tapeline.lay.cloth import Direction, LayCloth
from tapeline.lay.need import allowed_turns, need
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.lay.rooms import FINE_MM, ROUGH_MM, Stance, margin, outline_box, repeats, solid, stripe_shift

__all__ = ["Copy", "Table", "copies", "dropped", "settled"]

FAR_MM = 1.0
"""Beyond everything that lies on the table."""
ROUNDS = 3
"""So often a plan is pushed together, while it helps."""
LEAST_MM = 0.5
"""All pieces together move less: it helps no more."""


@dataclass(frozen=True, slots=True)
class Copy:
    """One piece that has to be laid."""

    piece: LayPiece
    over: bool
    garment: int


class Table:
    """The cloth with what lies on it so far."""

    def __init__(self, cloth: LayCloth, chord: float) -> None:
        self.cloth = cloth
        self.chord = chord
        self.margin = margin(cloth)
        self.laid: list[Solid] = []
        self.placements: list[Placement] = []
        for flaw in cloth.flaws:
            right, top = flaw.x + flaw.length, flaw.y + flaw.width
            corners = (Point(flaw.x, flaw.y), Point(right, flaw.y), Point(right, top), Point(flaw.x, top))
            self.laid.append(Solid(corners))

    def put(self, piece: LayPiece, placement: Placement) -> None:
        """Lay it there."""
        self.laid.append(self.body(piece, placement))
        self.placements.append(placement)

    def body(self, piece: LayPiece, placement: Placement) -> Solid:
        """The room of a piece there."""
        made = solid(piece, self.margin, (placement.turned_over, placement.turn), self.chord)
        return made.shifted(placement.x, placement.y)

    def pushed(self, piece: LayPiece, stance: Stance, y: float, start: float | None = None) -> float | None:
        """The least x, mm, to which a piece can be pushed at a height; None when its start is taken.

        Args:
            piece: What to push.
            stance: How it lies.
            y: Its height: it stays there.
            start: Where it comes from; beyond everything unless given.
        """
        box = outline_box(piece, stance)
        body = solid(piece, self.margin, stance, self.chord)
        far = max((other.box[2] for other in self.laid), default=0.0) + FAR_MM - body.box[0]
        x = far if start is None else start
        moving = body.shifted(x, y)
        way = x + box[0]
        # The nearest first: what it stops at rules out whatever lies further back.
        for other in sorted((one for one in self.laid if _in_the_way(one.box, moving.box)), key=lambda o: -o.box[2]):
            if moving.box[0] - other.box[2] < way:
                way = min(way, push_left(moving, other))
        x -= max(way, 0.0)
        if (by := repeats(piece, self.cloth).x) and piece.match is not None:
            at = Placement(piece.key, 0, x, y, stance[1], stance[0]).move.point(piece.match)
            x += stripe_shift(piece, self.cloth, at, Vector(1, 0)).x
            if start is not None and x > start + 1e-6 and by:
                return None
        return x

    def heights(self, piece: LayPiece, stance: Stance) -> list[float]:
        """Heights worth trying: on the lower edge, under the upper one, on top of and below what lies there."""
        low, high = outline_box(piece, stance)[1::2]
        strip = self.cloth.strip_mm
        if piece.on_fold:
            return [0.0]
        tried = [-low, strip - high]
        for other in self.laid:
            tried += [other.box[3] + self.margin - low, other.box[1] - self.margin - high]
        if repeats(piece, self.cloth).y and piece.match is not None:
            tried = [y + self._across(piece, stance, y, side) for y in tried for side in (1.0, -1.0)]
        fits = [y for y in tried if y + low >= -1e-6 and y + high <= strip + 1e-6]
        return sorted({round(y, 6) for y in fits})

    def _across(self, piece: LayPiece, stance: Stance, y: float, side: float) -> float:
        if piece.match is None:
            return 0.0
        at = Placement(piece.key, 0, 0.0, y, stance[1], stance[0]).move.point(piece.match)
        return stripe_shift(piece, self.cloth, at, Vector(0, side)).y


def copies(pieces: Iterable[LayPiece], cloth: LayCloth) -> list[Copy]:
    """Every copy that has to be laid."""
    made = []
    for piece in pieces:
        for over, count in need(piece, cloth).items():
            per_garment = max(1, math.ceil(count / piece.garments))
            made += [Copy(piece, over, 1 + n // per_garment) for n in range(count)]
    return made


def dropped(pieces: Sequence[LayPiece], cloth: LayCloth, order: Sequence[Copy] | None = None) -> LayPlan | None:
    """Every copy where it ends furthest back, in an order (the largest first); None when one fits nowhere."""
    wanted = order or sorted(copies(pieces, cloth), key=lambda c: -_size(c.piece))
    table = Table(cloth, ROUGH_MM)
    for copy in wanted:
        best: tuple[float, float, Placement] | None = None
        for stance in _stances(copy, cloth):
            for y in table.heights(copy.piece, stance):
                x = table.pushed(copy.piece, stance, y)
                if x is None:
                    continue
                end = x + outline_box(copy.piece, stance)[2]
                if best is None or (end, y) < best[:2]:
                    best = end, y, Placement(copy.piece.key, copy.garment, x, y, stance[1], stance[0])
        if best is None:
            return None
        table.put(copy.piece, best[2])
    return LayPlan(cloth, tuple(pieces), tuple(table.placements), "pushed together")


def settled(plan: LayPlan) -> LayPlan:
    """The same plan, every piece pushed back as far as it goes: by whole repeats where it lies on a stripe.

    What lies on a flaw, or on what had to give way to one, is taken up first and comes in again from the far end.
    """
    plan = _cleared(plan)
    for _ in range(ROUNDS):
        shorter = _pushed_together(plan)
        if sum(p.x for p in plan.placements) - sum(p.x for p in shorter.placements) < LEAST_MM:
            return shorter
        plan = shorter
    return plan


def _pushed_together(plan: LayPlan) -> LayPlan:
    table = Table(plan.cloth, FINE_MM)
    for placement in plan.placements:
        table.put(plan.by_key[placement.piece], placement)
    flaws = len(plan.cloth.flaws)
    begins = [one.box[0] for one in table.laid[flaws:]]
    for number in sorted(range(len(begins)), key=lambda n: begins[n]):
        placement = table.placements[number]
        piece = plan.by_key[placement.piece]
        here = table.laid.pop(flaws + number)
        x = table.pushed(piece, (placement.turned_over, placement.turn), placement.y, placement.x)
        if x is not None and x < placement.x:
            here = here.shifted(x - placement.x, 0.0)
            table.placements[number] = replace(placement, x=x)
        table.laid.insert(flaws + number, here)
    return replace(plan, placements=tuple(table.placements))


def _cleared(plan: LayPlan) -> LayPlan:
    if not plan.cloth.flaws:
        return plan
    table = Table(plan.cloth, FINE_MM)
    begins = [table.body(plan.by_key[p.piece], p).box[0] for p in plan.placements]
    for number in sorted(range(len(begins)), key=lambda n: begins[n]):
        placement = plan.placements[number]
        piece = plan.by_key[placement.piece]
        if not _clear(table, table.body(piece, placement)):
            x = table.pushed(piece, (placement.turned_over, placement.turn), placement.y)
            placement = replace(placement, x=placement.x if x is None else x)
        table.put(piece, placement)
    return replace(plan, placements=tuple(table.placements))


def _clear(table: Table, body: Solid) -> bool:
    from tapeline.geometry import common_ground

    near = [other for other in table.laid if _boxes_meet(other.box, body.box)]
    if not near:
        return True
    corners = [tuple(Point(float(x), float(y)) for x, y in one.corners) for one in (body, *near)]
    return not any(i == 0 for i, _, area in common_ground(corners) if area > 1e-6)


def _in_the_way(still: tuple[float, float, float, float], moving: tuple[float, float, float, float]) -> bool:
    return still[1] < moving[3] and moving[1] < still[3] and still[0] < moving[2]


def _boxes_meet(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _stances(copy: Copy, cloth: LayCloth) -> list[Stance]:
    if copy.piece.on_fold:
        return [(False, 0.0)]
    turns = allowed_turns(copy.piece, cloth) or (0.0, math.pi / 2, math.pi, -math.pi / 2)
    if cloth.direction is Direction.BY_GARMENT and not copy.piece.free:
        turns = (0.0,)
    return [(copy.over, turn) for turn in turns]


def _size(piece: LayPiece) -> float:
    box = outline_box(piece, (False, 0.0))
    return (box[2] - box[0]) * (box[3] - box[1])
