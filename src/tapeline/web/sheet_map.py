"""How the printed sheets lie: a small picture of the pieces on their sheets, made when it is asked for."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import Rigid
from tapeline.problems import InputError
from tapeline.project import printed
from tapeline.web.view import View

__all__ = ["SheetMap", "sheet_map"]


@dataclass(frozen=True, slots=True)
class SheetMap:
    """Pieces and sheets, y down, mm."""

    words: str
    box: str
    pieces: tuple[str, ...]
    tiles: tuple[tuple[float, float, float, float], ...]
    """x, y, width, height of every sheet that is printed."""


def sheet_map(view: View, paper: str = "") -> SheetMap:
    """The map of a docket's print; raises `InputError` when there is no garment or it does not fit the paper."""
    if view.drafted is None:
        raise InputError(view.told)
    layout = printed(view.drafted, paper).layout
    width, height = layout.size_mm
    flip = Rigid(1, 0, 0, -1, 0, height)
    pieces = tuple(p.piece.cut_line.moved(p.move).moved(flip).svg(1) for p in layout.placements)
    across, down = layout.step_mm
    tiles = tuple(((t.column - 1) * across, (t.row - 1) * down, *layout.field_mm) for t in layout.tiles)
    sheets = f"{layout.sheets} {'sheet' if layout.sheets == 1 else 'sheets'} of {layout.paper.name}"
    return SheetMap(sheets, f"0 0 {width:.0f} {height:.0f}", pieces, tiles)
