"""The cutting list, and the usual cautions for what comes next."""

from __future__ import annotations

from tapeline.finish import CuttingListRow, Finished, FinishedPiece
from tapeline.sheets.html import paragraph, part, table
from tapeline.sheets.numbers import plain
from tapeline.units import Unit

__all__ = ["CAUTIONS", "cautions", "cutting"]

CAUTIONS = (
    "Blades: cut away from your hands, and close a rotary cutter whenever it is laid down.",
    "Pins: count them in and count them out again, before pressing and before anybody puts the garment on.",
    "Irons: plate, steam and pressed cloth burn; stand the iron up, and switch it off when you leave the room.",
    "Keep all of them where children and animals do not reach.",
)
"""Said once, where cutting begins."""


def cutting(finished: Finished, unit: Unit) -> str:
    """What comes out of which cloth, and how much room it takes."""
    pieces = {piece.piece.name: piece for piece in finished.pieces}
    rows = [_row(row, pieces[row.piece], unit) for row in finished.cutting_list]
    head = ["piece", "cloth", "cut", "how", f"across, {unit.sign}", f"along the grain, {unit.sign}", "allowances"]
    return part(
        "cutting",
        "Cutting list",
        paragraph(
            "Measure the square on the first printed sheet before anything is cut. Sizes are of the whole piece, "
            "unfolded, with allowances."
        ),
        table("What to cut from which cloth", head, rows, numbers=[2, 4, 5]),
    )


def cautions() -> str:
    """The cautions, as a part of the page."""
    items = "".join(f"<li>{text}</li>" for text in CAUTIONS)
    return part("cautions", "Before you cut, pin and press", f"<ul>{items}</ul>")


def _row(row: CuttingListRow, piece: FinishedPiece, unit: Unit) -> list[str]:
    how = ["on the fold"] if row.on_fold else []
    how += ["mirrored in pairs"] if row.mirrored else []
    widths: dict[str, list[str]] = {}
    for edge, mm in piece.allowances:
        if mm:
            widths.setdefault(plain(mm, unit), []).append(edge.replace("_", " "))
    allowances = "; ".join(f"{width} {unit.sign} on {', '.join(edges)}" for width, edges in widths.items())
    return [
        row.title,
        row.cloth,
        str(row.quantity),
        ", ".join(how) or "single",
        plain(row.width_mm, unit),
        plain(row.length_mm, unit),
        allowances,
    ]
