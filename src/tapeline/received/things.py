"""The next floor of DXF: header, blocks, and the things that are drawn, with nothing yet known of pieces."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import chain

from tapeline.received.pairs import Pair, pairs, refused

__all__ = ["MOST_THINGS", "Block", "Drawn", "NotUnderstoodError", "Thing", "read_things"]

MOST_THINGS = 600_000
"""Lines, points and texts of a file: a few thousand pieces."""
FURTHEST = 1e7
"""Units of the file; ten kilometres where they are millimetres."""
MODEL_SPACES = (b"*MODEL_SPACE", b"$MODEL_SPACE", b"*PAPER_SPACE", b"$PAPER_SPACE")


class NotUnderstoodError(ValueError):
    """A thing that cannot be read; its text says why."""


@dataclass(frozen=True, slots=True)
class Thing:
    """Something drawn: what kind, its codes and values, and for a `POLYLINE` its vertices."""

    kind: str
    line: int
    values: tuple[tuple[int, bytes], ...]
    parts: tuple[Thing, ...] = ()

    def first(self, code: int) -> bytes | None:
        """The first value of a code."""
        return next((value for found, value in self.values if found == code), None)

    def number(self, code: int, otherwise: float | None = None) -> float:
        """A number; raises `NotUnderstoodError` where it is none, is missing, or is too far away."""
        value = self.first(code)
        if value is None:
            if otherwise is None:
                raise NotUnderstoodError(f"group {code} is missing")
            return otherwise
        return number_of(value)

    def whole(self, code: int, otherwise: int = 0) -> int:
        """A whole number, such as flags."""
        return int(self.number(code, otherwise))

    @property
    def layer(self) -> bytes:
        """As it is written."""
        return (self.first(8) or b"0").strip()


def number_of(value: bytes) -> float:
    """A number as DXF writes it."""
    try:
        number = math.nan if b"_" in value else float(value)
    except ValueError:
        number = math.nan
    if not abs(number) <= FURTHEST:
        raise NotUnderstoodError(f"{value[:24].decode('ascii', 'replace').strip()!r} is no number to draw with")
    return number


@dataclass(frozen=True, slots=True)
class Block:
    """Things that belong together under a name; where other blocks take it from."""

    name: bytes
    base: Thing
    things: tuple[Thing, ...]


@dataclass(slots=True)
class Drawn:
    """All that a file holds."""

    header: dict[bytes, Pair] = field(default_factory=dict)
    """The first value of each variable."""
    blocks: list[Block] = field(default_factory=list)
    loose: list[Thing] = field(default_factory=list)
    """On the sheet of the file itself."""
    whole: bool = False
    """Whether the file says that it ends where it ends."""


def read_things(data: bytes, name: str) -> Drawn:
    """The things of a file.

    Raises:
        InputError: What `pairs` raises; `received-not-dxf` for text without a single section of DXF;
            `received-too-large` for more than `MOST_THINGS`.
    """
    sorter = _Sorter(name)
    for thing in _joined(_raw(pairs(data, name))):
        if thing.kind == "EOF":
            sorter.drawn.whole = True
            break
        sorter.take(thing)
    if not sorter.sections:
        says = "the file has no section of DXF in it"
        raise refused("received-not-dxf", says, name, "have it saved as text (ASCII) DXF")
    return sorter.drawn


@dataclass(slots=True)
class _Sorter:
    """Puts each thing where it belongs, as the sections of the file come."""

    name: str
    drawn: Drawn = field(default_factory=Drawn)
    sections: int = 0
    section: bytes = b""
    count: int = 0
    block: tuple[Thing, list[Thing]] | None = None

    def take(self, thing: Thing) -> None:
        """The next thing of the file."""
        if thing.kind == "SECTION":
            self.section, self.sections = (thing.first(2) or b"").strip().upper(), self.sections + 1
            if self.section == b"HEADER":
                self._header(thing)
        elif thing.kind == "ENDSEC":
            self.section = b""
        elif self.section in (b"BLOCKS", b"ENTITIES"):
            self._draw(thing)

    def _header(self, section: Thing) -> None:
        variable = b""
        for code, value in section.values:
            if code == 9:
                variable = value.strip().upper()
            elif variable:
                self.drawn.header.setdefault(variable, Pair(code, value, section.line))

    def _draw(self, thing: Thing) -> None:
        if thing.kind == "BLOCK":
            self.block = (thing, [])
        elif thing.kind == "ENDBLK":
            self._close()
        else:
            self.count += 1 + len(thing.parts)
            if self.count > MOST_THINGS:
                says = f"the file draws more than {MOST_THINGS} lines, points and texts"
                raise refused("received-too-large", says, self.name, "have fewer pieces or sizes written into one file")
            (self.drawn.loose if self.block is None else self.block[1]).append(thing)

    def _close(self) -> None:
        if self.block is None:
            return
        begin, things = self.block
        self.block = None
        name = (begin.first(2) or b"").strip()
        if name.upper().startswith(MODEL_SPACES):
            self.drawn.loose += things
        else:
            self.drawn.blocks.append(Block(name, begin, tuple(things)))


def _raw(found: Iterator[Pair]) -> Iterator[Thing]:
    """One thing from each code 0 to the next; a thing that a file breaks off in is left out."""
    kind, line, values = "", 0, list[tuple[int, bytes]]()
    for pair in chain(found, [Pair(-1, b"", 0)]):
        if pair.code == 0:
            if kind:
                yield Thing(kind, line, tuple(values))
            kind, line, values = pair.value.strip().decode("ascii", "replace").upper()[:32], pair.line, []
        elif pair.code == -1:
            if kind == "EOF":
                yield Thing(kind, line, ())
        elif pair.code != 999:  # a remark
            values.append((pair.code, pair.value))


def _joined(things: Iterator[Thing]) -> Iterator[Thing]:
    """Polylines with their vertices in them."""
    begin: Thing | None = None
    parts: list[Thing] = []
    for thing in things:
        if begin is not None and thing.kind == "VERTEX":
            parts.append(thing)
            continue
        if begin is not None:
            yield Thing(begin.kind, begin.line, begin.values, tuple(parts))
            begin, parts = None, []
        if thing.kind == "POLYLINE":
            begin = thing
        elif thing.kind != "SEQEND":
            yield thing
