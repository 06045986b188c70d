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


def pairs(data: bytes) -> Iterator[tuple[int, str]]:
    """Codes and values, as they stand on two lines each."""
    lines = data.decode("ascii").splitlines()
    for code, value in zip(lines[::2], lines[1::2], strict=True):
        yield int(code), value.strip()


def blocks(data: bytes) -> tuple[dict[str, Block], Block]:
    """The blocks by name, and what lies outside them."""
    found: dict[str, Block] = {}
    outside = Block()
    here, kind, values = outside, "", {}  # type: ignore[var-annotated]
    chain: list[Place] | None = None
    section = ""
    for code, value in [*pairs(data), (0, "EOF")]:
        if code != 0:
            values.setdefault(code, value)
            continue
        # What came before is whole now.
        layer = str(values.get(8, "0"))
        at = (float(values.get(10, 0)), float(values.get(20, 0)))
        if kind == "SECTION":
            section = str(values.get(2, ""))
        elif section in ("BLOCKS", "ENTITIES"):
            if kind == "BLOCK":
                here = found.setdefault(str(values[2]), Block())
            elif kind == "ENDBLK":
                here = outside
            elif kind == "POLYLINE":
                chain = []
                here.chains.setdefault(layer, []).append((bool(int(values.get(70, 0)) & 1), chain))
            elif kind == "VERTEX" and chain is not None:
                chain.append(at)
            elif kind == "POINT":
                here.points.setdefault(layer, []).append(at)
            elif kind == "LINE":
                here.lines.setdefault(layer, []).append((at, (float(values[11]), float(values[21]))))
            elif kind == "TEXT":
                here.texts.setdefault(layer, []).append(str(values[1]))
        kind, values = value, {}
    return {name: block for name, block in found.items() if not name.startswith(("$", "*"))}, outside
