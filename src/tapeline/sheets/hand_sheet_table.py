"""Rows of a table on the hand sheet: cells side by side, all on one base line."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.sheets.hand_sheet_marks import WidthOf
from tapeline.sheets.hand_sheet_text import BODY_MM, SMALL_MM, Block, lines_of

__all__ = ["Cell", "row"]

Cell = Sequence[tuple[str, bool]]
"""Parts of a text, each bold or not."""
BETWEEN_MM = 2.0


def row(
    width_of: WidthOf, width: float, cells: Sequence[Cell], columns: Sequence[float], *, strong: int | None = None
) -> Block:
    """One row: where each column begins, and which one is written larger where it is bold."""
    blocks = []
    for n, cell in enumerate(cells):
        room = (*columns, width + BETWEEN_MM)[n + 1] - columns[n] - BETWEEN_MM
        blocks.append(lines_of(cell, width_of, room, BODY_MM if n == strong and cell[0][1] else SMALL_MM))
    first = min(block.first for block in blocks)
    placed = [block.moved(x, first - block.first) for x, block in zip(columns, blocks, strict=True)]
    height = max(block.height for block in placed) + 0.9
    return Block(height, tuple(w for b in placed for w in b.words), tuple(x for b in placed for x in b.boxes))
