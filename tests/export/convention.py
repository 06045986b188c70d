"""A reader of exchange files written from the layer convention alone: pairs of code and value, blocks, layers, points.

It shares nothing with the writer, nor with the library that the writer uses. Group codes: the DXF reference (2 a name,
8 a layer, 10 and 20 a place, 1 a text, 70 flags; from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

Place = tuple[float, float]


@dataclass
class Block:
    """What lies on each layer of a piece."""

    chains: dict[str, list[tuple[bool, list[Place]]]] = field(default_factory=dict)
    points: dict[str, list[Place]] = field(default_factory=dict)
    lines: dict[str, list[tuple[Place, Place]]] = field(default_factory=dict)
    texts: dict[str, list[str]] = field(default_factory=dict)
    open: list[Place] = field(default_factory=list)
    """The chain that is being read."""


def pairs(data: bytes) -> Iterator[tuple[int, str]]:
    """Codes and values, as they stand on two lines each."""
    lines = data.decode("ascii").splitlines()
    for code, value in zip(lines[::2], lines[1::2], strict=True):
        yield int(code), value.strip()


def entities(data: bytes) -> Iterator[tuple[str, dict[int, str]]]:
    """Kind and first value of each code, one thing of the file after the other."""
    kind, values = "", dict[int, str]()
    for code, value in [*pairs(data), (0, "EOF")]:
        if code == 0:
            yield kind, values
            kind, values = value, {}
        else:
            values.setdefault(code, value)


def blocks(data: bytes) -> tuple[dict[str, Block], Block]:
    """The blocks by name, and what lies outside them."""
    found: dict[str, Block] = {}
    here = outside = Block()
    section = ""
    for kind, values in entities(data):
        if kind == "SECTION":
            section = values.get(2, "")
        elif section not in ("BLOCKS", "ENTITIES"):
            continue
        elif kind == "BLOCK":
            here = found.setdefault(values[2], Block())
        elif kind == "ENDBLK":
            here = outside
        else:
            add(here, kind, values)
    return {name: block for name, block in found.items() if not name.startswith(("$", "*"))}, outside


def add(here: Block, kind: str, values: dict[int, str]) -> None:
    """One thing to the block it stands in; a vertex belongs to the chain before it."""
    layer, at = values.get(8, "0"), (float(values.get(10, 0)), float(values.get(20, 0)))
    if kind == "POLYLINE":
        here.open = []
        here.chains.setdefault(layer, []).append((bool(int(values.get(70, 0)) & 1), here.open))
    elif kind == "VERTEX":
        here.open.append(at)
    elif kind == "POINT":
        here.points.setdefault(layer, []).append(at)
    elif kind == "LINE":
        here.lines.setdefault(layer, []).append((at, (float(values[11]), float(values[21]))))
    elif kind == "TEXT":
        here.texts.setdefault(layer, []).append(values[1])
