"""One way to put a lay to the engine, and to read its answer: rooms become items, items become placements."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import replace

from tapeline.geometry import Outline, Rigid, Vector, bounds, placed
from tapeline.lay.cloth import Direction, LayCloth
from tapeline.lay.comb import Comb, combs
from tapeline.lay.drop import Copy, copies
from tapeline.lay.engine import Found, Item, Task
from tapeline.lay.need import allowed_turns
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.lay.rooms import HAIR_MM, margin, outline_box, repeats, room_to_match, stripe_shift

__all__ = ["Layout"]

LEANS = (-1.0, -0.5, 0.5, 1.0)
"""Shares of the allowed tilt that the engine may choose from, besides none."""


class Layout:
    """Pieces on a cloth, as a task for the engine; chance decides what the engine cannot: orders and facings."""

    def __init__(self, pieces: Sequence[LayPiece], cloth: LayCloth, seed: int = 0) -> None:
        self.pieces, self.cloth, self.seed = tuple(pieces), cloth, seed
        chance = random.Random(seed)  # noqa: S311 - chance of the lay, not of a secret
        every = copies(pieces, cloth)
        self.facing = _facings(every, chance)
        halves = [copy for copy in every if copy.piece.on_fold]
        self._groups: dict[tuple[str, bool, float], list[Copy]] = {}
        for copy in every:
            if not copy.piece.on_fold:
                way = self._way(copy)
                self._groups.setdefault((copy.piece.key, copy.over, way), []).append(copy)
        self._combs = combs(halves, cloth, chance, self.facing)
        self._names = {str(n): key for n, key in enumerate(self._groups)}
        self.items = (*self._comb_items(), *self._piece_items())

    @property
    def height(self) -> float:
        """Of the strip, for the engine: the margins round the pieces may lie beyond the edges of the cloth."""
        return self.cloth.strip_mm + 2 * margin(self.cloth) + HAIR_MM

    @property
    def fits(self) -> bool:
        """Whether every item fits across the strip in some way; a piece swept over its stripes may not."""
        return all(_least_height(item) <= self.height for item in self.items)

    def task(self, seconds: float, workers: int = 1) -> Task:
        """For the engine."""
        return Task(self.height, self.items, seconds, self.seed, workers)

    def plan(self, found: Found) -> LayPlan:
        """What the engine found, as places on the cloth; on the stripes, but not yet pushed together."""
        waiting = {key: list(group) for key, group in self._groups.items()}
        by_key = {piece.key: piece for piece in self.pieces}
        placements: list[Placement] = []
        for name, turn, x, y in found.placed:
            if name.startswith("comb"):
                comb = self._combs[int(name.removeprefix("comb"))]
                placements += self._teeth(comb, x - margin(self.cloth), by_key)
                continue
            key, over, _ = self._names[name]
            copy = waiting[self._names[name]].pop()
            at = Placement(key, copy.garment, x - margin(self.cloth), y - margin(self.cloth), math.radians(turn), over)
            placements.append(self._inside(by_key[key], at))
        return LayPlan(self.cloth, self.pieces, tuple(placements))

    def _way(self, copy: Copy) -> float:
        by_garment = self.cloth.direction is Direction.BY_GARMENT and not copy.piece.free
        return self.facing[copy.piece.garment, copy.garment] if by_garment else -1.0

    def _inside(self, piece: LayPiece, at: Placement) -> Placement:
        """On its stripe, and within the edges to the last hundredth of a millimetre."""
        low, high = outline_box(piece, (at.turned_over, at.turn))[1::2]
        if piece.match is not None:
            side = math.copysign(1.0, math.cos(at.turn))
            by = stripe_shift(piece, self.cloth, at.move.point(piece.match), Vector(side, side))
            at = replace(at, x=at.x + by.x, y=at.y + by.y)
        if repeats(piece, self.cloth).y:
            return at
        return replace(at, y=min(max(at.y, -low), self.cloth.strip_mm - high))

    def _teeth(self, comb: Comb, x: float, by_key: dict[str, LayPiece]) -> list[Placement]:
        shift = x
        matched = next((t for t in comb.teeth if repeats(by_key[t.piece], self.cloth).x), None)
        if matched is not None and (match := by_key[matched.piece].match) is not None:
            at = replace(matched, x=matched.x + x).move.point(match)
            shift += stripe_shift(by_key[matched.piece], self.cloth, at, Vector(1, 0)).x
        return [replace(tooth, x=tooth.x + shift) for tooth in comb.teeth]

    def _comb_items(self) -> list[Item]:
        return [Item(f"comb{n}", comb.outline, 1, (0.0,)) for n, comb in enumerate(self._combs)]

    def _piece_items(self) -> list[Item]:
        made = []
        for name, key in self._names.items():
            group = self._groups[key]
            piece = group[0].piece
            outline = room_to_match(piece, self.cloth, key[1])
            made.append(Item(name, outline, len(group), self._turns(piece, key[2])))
        return made

    def _turns(self, piece: LayPiece, way: float) -> tuple[float, ...] | None:
        if piece.free:
            return None
        base = allowed_turns(piece, self.cloth) if way < 0 else (way,)
        striped = repeats(piece, self.cloth)
        leans = () if striped.x or striped.y or not self.cloth.tilt else LEANS
        return tuple(math.degrees(turn + self.cloth.tilt * lean) for turn in base for lean in (0.0, *leans))


def _facings(every: Sequence[Copy], chance: random.Random) -> dict[tuple[str, int], float]:
    """Every second garment faces back."""
    names = list(dict.fromkeys((copy.piece.garment, copy.garment) for copy in every))
    chance.shuffle(names)
    return {name: math.pi * (n % 2) for n, name in enumerate(names)}


def _least_height(item: Item) -> float:
    if item.turns is None:
        return 0.0
    return min(_height(item.outline, math.radians(turn)) for turn in item.turns)


def _height(outline: Outline, turn: float) -> float:
    box = bounds(placed(outline, Rigid.turn(turn)))
    return box[3] - box[1]
