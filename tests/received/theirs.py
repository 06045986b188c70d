"""Files as other programs might write them, made with ezdxf or typed by hand; invented garments only."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import TYPE_CHECKING

from ezdxf.filemanagement import new

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.blocklayout import BlockLayout

SQUARE = [(0.0, 0.0), (400.0, 0.0), (400.0, 600.0), (0.0, 600.0)]
WORDS = ("Piece Name: FRONT", "Size: 38", "Quantity: 2", "Material: SHELL")


def file(
    release: str = "R12",
    draw: Callable[[Drawing, BlockLayout], None] | None = None,
    *,
    unit: str | None = "METRIC",
    words: tuple[str, ...] = WORDS,
) -> Drawing:
    """One block with a square piece, or with what `draw` draws, and words on layer 1."""
    made = new(release)
    if release != "R12":
        made.header["$INSUNITS"] = 0
    block = made.blocks.new("FRONT_38")
    if draw is None:
        block.add_polyline2d(SQUARE, close=True, dxfattribs={"layer": "1"})
        block.add_line((200, 100), (200, 500), dxfattribs={"layer": "7"})
    else:
        draw(made, block)
    for text in words:
        block.add_text(text, dxfattribs={"layer": "1"}).set_placement((10, 10))
    made.modelspace().add_blockref("FRONT_38", (1000, 0))
    if unit:
        made.modelspace().add_text(f"Units: {unit}", dxfattribs={"layer": "1"})
    return made


def data(made: Drawing) -> bytes:
    """Its bytes."""
    out = io.StringIO()
    made.write(out)
    return out.getvalue().encode(made.output_encoding, "dxfreplace")


def typed(*entities: str, header: str = "", end: str = "  0\nENDSEC\n  0\nEOF\n") -> bytes:
    """A file typed by hand: each entity as `KIND code value code value`, values without blanks."""
    lines = [header, "  0\nSECTION\n  2\nENTITIES\n"]
    for entity in entities:
        kind, *rest = entity.split()
        lines.append(f"  0\n{kind}\n")
        lines += [f"{code:>3}\n{value}\n" for code, value in zip(rest[::2], rest[1::2], strict=True)]
    return ("".join(lines) + end).encode()


def box(x: float, y: float, side: float, layer: str = "1", extra: str = "") -> str:
    """A closed square for `typed`."""
    corners = ((x, y), (x + side, y), (x + side, y + side), (x, y + side))
    return f"LWPOLYLINE 8 {layer} 70 1 {extra} " + " ".join(f"10 {a} 20 {b}" for a, b in corners)
