"""A file of pieces from another program, read to be looked at, checked and laid."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from tapeline.units import Unit

if TYPE_CHECKING:
    from tapeline.received import Received, ReceivedPiece

__all__ = ["read_pieces", "received_data", "received_drawing"]


def read_pieces(path: Path, unit: str = "", outline: str = "1") -> Received:
    """The pieces of a DXF file by the layer convention, and everything in it that was not understood.

    Args:
        path: The file.
        unit: `mm` or `inch`; empty for what the file says.
        outline: The layer of the cut lines.

    Raises:
        InputError: it cannot be read at all, or holds no piece.
    """
    from tapeline.received import receive

    asked = {"": None, "mm": Unit.CM, "inch": Unit.INCH}[unit]
    return receive(path, unit=asked, outline=outline)


def received_drawing(file: Received) -> str:
    """The pieces as an SVG drawing."""
    from tapeline.export import received_picture

    return received_picture(file)


def received_data(file: Received) -> dict[str, Any]:
    """The same for programs: lengths in mm, paths as SVG path strings with y up."""
    return {
        "file": file.name,
        "unit": "inch" if file.unit is Unit.INCH else "mm",
        "style": file.style,
        "author": file.author,
        "pieces": [_piece(piece) for piece in file.pieces],
        "not_understood": [
            {"what": one.what, "layer": one.layer, "count": one.count, "why": one.why, "where": one.where}
            for one in file.not_understood
        ],
        "problems": [problem.data for problem in file.problems],
    }


def _piece(piece: ReceivedPiece) -> dict[str, Any]:
    wide, high = piece.size_mm
    lines = {"grain": piece.grain, "fold": piece.fold}
    paths = {
        "sew_lines": piece.sew_lines,
        "inside": piece.inside,
        "cutouts": piece.cutouts,
        "stripes": piece.stripes,
        "checks": piece.checks,
    }
    return {
        "name": piece.name,
        "size": piece.size,
        "block": piece.block,
        "quantity": piece.quantity,
        "mirrored": piece.mirrored,
        "material": piece.material,
        "width": round(wide, 4),
        "height": round(high, 4),
        "area_mm2": round(piece.area_mm2, 3),
        "outline": piece.outline.svg(),
        **{name: line and [[line.start.x, line.start.y], [line.end.x, line.end.y]] for name, line in lines.items()},
        "notches": [{"at": [notch.at.x, notch.at.y], "kind": notch.kind} for notch in piece.notches],
        "drills": [[drill.x, drill.y] for drill in piece.drills],
        **{name: [path.svg() for path in found] for name, found in paths.items()},
        "texts": list(piece.texts),
    }
