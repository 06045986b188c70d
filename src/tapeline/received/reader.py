"""Things of a file read as shapes in millimetres; blocks laid out in one another."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from tapeline.received.curves import MOST_CHORDS
from tapeline.received.drawn import chain_of, place_of, plane_of
from tapeline.received.pairs import refused
from tapeline.received.shape import STAYS, Chain, Left, Move, Shape, Spot, Words, after, at, moved
from tapeline.received.things import MOST_THINGS, Block, NotUnderstoodError, Thing
from tapeline.received.words import plain

__all__ = ["Reader"]

DEEPEST_NEST = 8
MOST_POINTS = 1_000_000
INSERT_COUNTS = 10
"""A block put down counts like so many things, and a curve that fails like so many points: they cost as much."""
FAILED_COUNTS = 4 * MOST_CHORDS
FURTHEST_MM = 1e8
SAME_MM = 1e-6
"""Between places that are one."""
FLAT_MM = 0.01
_WITHOUT_MEANING = {"ATTDEF", "VIEWPORT"}


@dataclass(slots=True)
class Reader:
    """Turns the things of one file to shapes; counts as it goes, so that no file can make it work without end."""

    name: str
    scale: float
    """Millimetres in a unit of the file."""
    encoding: str
    blocks: Mapping[bytes, Block]
    """By name, in capitals."""
    apart: frozenset[bytes] = frozenset()
    """Blocks that are pieces of their own: wherever one is put down it is passed over."""
    left: Left = field(default_factory=Left)
    unsure_letters: int = 0
    things: int = 0
    points: int = 0
    distorted: dict[bytes, str] = field(default_factory=dict)
    """Pieces that are put down scaled or turned over, and where."""
    _layers: dict[bytes, str] = field(default_factory=dict)

    def shapes(self, things: Iterable[Thing], place: str, move: Move = STAYS, depth: int = 0) -> Iterator[Shape]:
        """The shapes of some things that stand at a place of the file."""
        for thing in things:
            self._spend(1 + len(thing.parts), 0)
            where = f"in {place}, line {thing.line}"
            layer = self.layer(thing.layer)
            try:
                _in_the_model(thing)
                if thing.kind == "INSERT":
                    self._spend(INSERT_COUNTS, 0)
                    yield from self._inserted(thing, layer, where, move, depth)
                    continue
                drawn = self._drawn(thing, layer, where)
            except (NotUnderstoodError, ValueError, OverflowError) as error:
                self._spend(0, FAILED_COUNTS if thing.kind in ("SPLINE", "ELLIPSE") else 0)
                self.left.out(thing.kind, layer, str(error), where)
                continue
            for shape in drawn:
                yield moved(shape, move)

    def layer(self, raw: bytes) -> str:
        """A layer's name as a person writes it; a number without noughts before it."""
        if raw not in self._layers:
            text, sure = plain(raw, self.encoding)
            self.unsure_letters += not sure
            number = text.isascii() and text.isdigit() and len(text) < 6
            self._layers[raw] = str(int(text)) if number else text[:60] or "0"
        return self._layers[raw]

    def text(self, thing: Thing) -> str:
        """What a text says."""
        long = b"".join(value for code, value in thing.values if code == 3) if thing.kind == "MTEXT" else b""
        said, sure = plain(long + (thing.first(1) or b""), self.encoding, formatted=thing.kind == "MTEXT")
        self.unsure_letters += not sure
        return said

    def _spend(self, things: int, points: int) -> None:
        self.things += things
        self.points += points
        if self.things > 1.2 * MOST_THINGS or self.points > MOST_POINTS:
            says = "the file draws more than can be read: its blocks or its curves multiply"
            raise refused("received-too-large", says, self.name, "have it written without blocks inside blocks")

    def _drawn(self, thing: Thing, layer: str, where: str) -> list[Shape]:
        if thing.kind in _WITHOUT_MEANING:
            return []
        if thing.kind == "POINT":
            return [Spot(layer, self._at(thing), where)]
        if thing.kind in ("TEXT", "ATTRIB", "MTEXT"):
            turned = plane_of(thing) if thing.kind != "MTEXT" else 1
            x, y = self._at(thing)
            lines = [line for line in self.text(thing).split("\n") if line.strip()]
            return [Words(layer, (x * turned, y), line, where) for line in lines]
        places, closed = chain_of(thing, self.scale)
        self._at(thing)
        self._spend(0, len(places))
        if any(not abs(value) <= FURTHEST_MM for place in places for value in place):
            raise NotUnderstoodError("it reaches too far to be drawn")
        if closed and len(places) > 1 and math.dist(places[0], places[-1]) <= SAME_MM:
            places = places[:-1]
        kept = tuple(p for n, p in enumerate(places) if n == 0 or p != places[n - 1])
        if len(kept) < 2:
            raise NotUnderstoodError("it has no length")
        if thing.kind != "CIRCLE":
            return [Chain(layer, kept, closed, where)]
        x, y = place_of(thing, self.scale)
        return [Chain(layer, kept, closed, where, (x * plane_of(thing), y))]

    def _at(self, thing: Thing) -> tuple[float, float]:
        """Where it begins; a height over the plane is counted."""
        if thing.kind in ("POLYLINE", "LWPOLYLINE", "SPLINE"):
            return 0.0, 0.0
        if abs(thing.number(30, 0.0)) * self.scale > FLAT_MM:
            self.left.out("heights (z)", self.layer(thing.layer), "pieces are flat", f"line {thing.line}")
        return place_of(thing, self.scale)

    def _inserted(self, thing: Thing, layer: str, where: str, move: Move, depth: int) -> Iterator[Shape]:
        name = (thing.first(2) or b"").strip()
        turned, angle = plane_of(thing), math.radians(thing.number(50, 0.0))
        wide, high = thing.number(41, 1.0), thing.number(42, 1.0)
        block = self.blocks.get(name.upper())
        if name.upper() in self.apart:
            if (turned * wide, high) != (1.0, 1.0):
                self.distorted.setdefault(name, where)
            return
        if block is None:
            raise NotUnderstoodError("the block it takes is not in the file")
        if depth >= DEEPEST_NEST:
            raise NotUnderstoodError(f"blocks lie in one another more than {DEEPEST_NEST} deep")
        if thing.whole(70, 1) > 1 or thing.whole(71, 1) > 1:
            raise NotUnderstoodError("a block that is repeated in rows")
        to = self._at(thing)
        base = (block.base.number(10, 0.0) * self.scale, block.base.number(20, 0.0) * self.scale)
        cos, sin = math.cos(angle), math.sin(angle)
        inner: Move = (turned * wide * cos, wide * sin, -turned * high * sin, high * cos, 0.0, 0.0)
        x, y = at(base, inner)
        inner = (*inner[:4], turned * to[0] - x, to[1] - y)
        for shape in self.shapes(block.things, where.removeprefix("in "), after(inner, move), depth + 1):
            yield replace(shape, layer=layer) if shape.layer == "0" else shape


def _in_the_model(thing: Thing) -> None:
    if thing.whole(67):
        raise NotUnderstoodError("drawn on a sheet of paper, not in the model")
