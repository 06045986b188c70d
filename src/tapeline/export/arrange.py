"""Lays the pieces on the paper, so that as few sheets as possible have to be printed and glued."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tapeline.export.paper import LONGEST_PAGE_MM, Paper, page_too_long
from tapeline.export.search import Grid, Laid, Turned, search
from tapeline.finish import FinishedPiece
from tapeline.geometry import Path, Point, Rigid, area
from tapeline.geometry.silhouette import Silhouette, even_points
from tapeline.problems import InputError, Problem, Severity

__all__ = ["GAP_MM", "PANEL_MM", "Layout", "Placement", "Tile", "arrange"]

GAP_MM = 8.0
"""Between pieces: room for scissors (house rule)."""
EDGE_MM = 1.0
"""From a piece to where a sheet stops showing anything: more than half of the widest line."""
PITCH_MM = 4.0
"""About the height of a row of the search; half the gap, so that little room is lost."""
PANEL_MM = (190.0, 257.0)
"""The panel with test squares and words: fits what A4 and Letter can show."""
PANEL_ON_SHEET_MM = 400.0
"""Sheets that show at least this width carry the panel beside the pieces; smaller ones give it a page of its own."""

_QUARTERS = (Rigid(), Rigid(0, 1, -1, 0), Rigid(-1, 0, 0, -1), Rigid(0, -1, 1, 0))


@dataclass(frozen=True, slots=True)
class Placement:
    """A piece in its place on the glued sheets."""

    piece: FinishedPiece
    move: Rigid
    """From the piece's own axes to the glued sheets: origin at their lower left, y up, mm."""


@dataclass(frozen=True, slots=True, order=True)
class Tile:
    """One sheet of the glued whole; rows from the top, columns from the left, both from 1."""

    row: int
    column: int

    def __str__(self) -> str:
        return f"row {self.row}, column {self.column}"


@dataclass(frozen=True, slots=True)
class Layout:
    """Where every piece lies, and which sheets carry ink."""

    paper: Paper
    landscape: bool
    placements: tuple[Placement, ...]
    rows: int
    columns: int
    tiles: tuple[Tile, ...]
    """The sheets to print, row by row; a sheet with nothing on it is left out."""
    panel: Point | None
    """Lower left corner of the panel when it lies beside the pieces; none when it has a page of its own."""
    field_mm: tuple[float, float]
    """What one sheet shows, as it is turned."""
    step_mm: tuple[float, float]

    @property
    def size_mm(self) -> tuple[float, float]:
        """The glued whole."""
        (w, h), (dx, dy) = self.field_mm, self.step_mm
        return w + (self.columns - 1) * dx, h + (self.rows - 1) * dy

    @property
    def sheets(self) -> int:
        """Sheets of paper, the page with the panel included."""
        return len(self.tiles) + (self.panel is None)

    def joints(self) -> list[Path]:
        """Lines through the strips that two sheets show, close enough together that no word goes between."""
        (width, height), (w, h), (dx, dy) = self.size_mm, self.field_mm, self.step_mm
        shares = [i / 4 for i in range(5)]
        xs = [column * dx + (w - dx) * share for column in range(1, self.columns) for share in shares]
        ys = [row * dy + (h - dy) * share for row in range(1, self.rows) for share in shares]
        upright = [Path.through(Point(x, 0), Point(x, height)) for x in xs]
        return upright + [Path.through(Point(0, y), Point(width, y)) for y in ys]

    def corner(self, tile: Tile) -> Point:
        """Lower left corner of what a sheet shows."""
        return Point((tile.column - 1) * self.step_mm[0], (self.rows - tile.row) * self.step_mm[1])


def arrange(pieces: Sequence[FinishedPiece], paper: Paper) -> Layout:
    """Lay pieces with their grain along or across the sheet, `GAP_MM` apart, on as few sheets as found.

    Raises `InputError`: `roll-too-narrow` when a piece fits no way across a roll, `page-too-long` when all of them
    together need a longer piece of it than a page may have.
    """
    field, step = paper.field_mm, paper.step_mm
    rows_step = round((field[1] if paper.is_roll else step[1]) / PITCH_MM)
    pitch = (field[1] if paper.is_roll else step[1]) / rows_step
    choices = [[_turned(index, turn, piece, pitch) for turn in range(4)] for index, piece in enumerate(pieces)]
    on_sheet = field[0] >= PANEL_ON_SHEET_MM or paper.is_roll
    fixed = [_panel(pitch)] if on_sheet else []
    grid = _grid(paper, choices, rows_step, pitch)
    laid = search(choices, grid, fixed)
    if not laid:
        raise _does_not_fit(choices, paper)
    return _layout([item for item in laid if item.turned.shape >= 0], pieces, paper, pitch, on_sheet=on_sheet)


def _grid(paper: Paper, choices: Sequence[Sequence[Turned]], rows_step: int, pitch: float) -> Grid:
    if paper.is_roll:
        return Grid(paper.field_mm[0], paper.field_mm[0], rows_step, rows_step, 1, 1)
    across = sum(max(t.body.width for t in turns) + GAP_MM for turns in choices) + PANEL_MM[0]
    down = sum(max(t.body.rows for t in turns) * pitch + GAP_MM for turns in choices) + PANEL_MM[1]
    return Grid(
        paper.field_mm[0],
        paper.step_mm[0],
        math.floor(paper.field_mm[1] / pitch),
        rows_step,
        math.ceil(across / paper.step_mm[0]) + 2,
        math.ceil(down / paper.step_mm[1]) + 3,
    )


def _quarter(piece: FinishedPiece, turn: int) -> tuple[np.ndarray, Rigid]:
    """Samples round the turned outline, y down from its upper left, and the move that brings it there (y up)."""
    line = even_points(piece.cut_line.moved(_QUARTERS[turn]).flattened(0.1))
    points = np.vstack([line + shift for shift in ((EDGE_MM, 0), (-EDGE_MM, 0), (0, EDGE_MM), (0, -EDGE_MM))])
    left, top = float(points[:, 0].min()), float(points[:, 1].max())
    q = _QUARTERS[turn]
    move = Rigid(q.a, q.b, q.c, q.d, -left, -top)
    return np.column_stack([points[:, 0] - left, top - points[:, 1]]), move


def _turned(index: int, turn: int, piece: FinishedPiece, pitch: float) -> Turned:
    body = Silhouette.of(_quarter(piece, turn)[0], pitch)
    gap = GAP_MM - 2 * EDGE_MM
    return Turned(index, turn, body, body.grown(gap), body.extra_rows(gap), abs(area(piece.cut_line)))


def _panel(pitch: float) -> Laid:
    width, height = PANEL_MM
    rows = math.ceil(height / pitch)
    body = Silhouette(np.zeros(rows), np.full(rows, width), pitch)
    return Laid(Turned(-1, 0, body, body.grown(GAP_MM), body.extra_rows(GAP_MM), width * height), 0.0, 0)


def _layout(
    laid: Sequence[Laid], pieces: Sequence[FinishedPiece], paper: Paper, pitch: float, *, on_sheet: bool
) -> Layout:
    """From rows down to millimetres up; the whole is turned so that most of the cloth stands upright."""
    field, step = paper.field_mm, paper.step_mm
    quarters = {item.turned.shape: _quarter(pieces[item.turned.shape], item.turned.turn) for item in laid}
    down = max(item.y * pitch + float(quarters[item.turned.shape][0][:, 1].max()) for item in laid)
    right = max(item.x + item.turned.body.width for item in laid)
    if paper.is_roll:
        down = max(down, PANEL_MM[1])
        if down + 2 * paper.margin_mm > LONGEST_PAGE_MM:
            raise page_too_long(down + 2 * paper.margin_mm, paper.name)
        field = step = (field[0], down)
        columns = rows = 1
    else:
        columns = 1 + max(0, math.ceil((right - field[0] - 1e-6) / step[0]))
        rows = 1 + max(0, math.ceil((down - field[1] - 1e-6) / step[1]))
    height = field[1] + (rows - 1) * step[1]
    width = field[0] + (columns - 1) * step[0]
    upright = [0.0] * 4
    for item in laid:
        upright[item.turned.turn] += item.turned.area
    spin = 0 if on_sheet else max(range(4), key=lambda s: (upright[-s % 4], s % 2 == 0, -s))
    whole = (
        Rigid(),
        Rigid(0, 1, -1, 0, height, 0),
        Rigid(-1, 0, 0, -1, width, height),
        Rigid(0, -1, 1, 0, 0, width),
    )[spin]
    if spin % 2:
        field, step, rows, columns = field[::-1], step[::-1], columns, rows
    placements = []
    for item in sorted(laid, key=lambda item: item.turned.shape):
        move = quarters[item.turned.shape][1]
        there = Rigid(e=item.x, f=height - item.y * pitch)
        placements.append(Placement(pieces[item.turned.shape], move.then(there).then(whole)))
    panel = Point(0.0, height - PANEL_MM[1]) if on_sheet else None
    bare = Layout(paper, bool(spin % 2), tuple(placements), rows, columns, (), panel, field, step)
    tiles = _inked(bare)
    return Layout(paper, bool(spin % 2), tuple(placements), rows, columns, tiles, panel, field, step)


def _inked(layout: Layout) -> tuple[Tile, ...]:
    """The sheets that must be printed: those that show what no neighbour that is printed anyway shows."""
    (w, h), (dx, dy) = layout.field_mm, layout.step_mm
    shapes = [even_points(p.piece.cut_line.moved(p.move).flattened(0.1)) for p in layout.placements]
    if layout.panel is not None:
        left, low = layout.panel.x, layout.panel.y
        far, high = left + PANEL_MM[0], low + PANEL_MM[1]
        shapes.append(even_points([Point(left, low), Point(far, low), Point(far, high), Point(left, high)]))
    found: set[Tile] = set()
    tiles = [Tile(row, column) for row in range(1, layout.rows + 1) for column in range(1, layout.columns + 1)]
    # First what one sheet alone shows, then the strips that two show, then the corners that four show.
    for along, up in ((False, False), (True, False), (False, True), (True, True)):
        for tile in tiles:
            sharing = {
                Tile(tile.row + down, tile.column + right) for down in range(1 + up) for right in range(1 + along)
            }
            if not sharing <= set(tiles) or sharing & found:
                continue
            corner = layout.corner(tile)
            left = corner.x + (dx if along else (w - dx) * (tile.column > 1))
            right = corner.x + (w if along or tile.column == layout.columns else dx)
            low = corner.y + (0 if up or tile.row == layout.rows else h - dy)
            high = corner.y + (h - dy if up else h if tile.row == 1 else dy)
            if any(_touches(points, left, low, right, high) for points in shapes):
                found.add(tile)
    return tuple(sorted(found))


def _touches(points: np.ndarray, left: float, low: float, right: float, high: float) -> bool:
    x, y = points[:, 0], points[:, 1]
    if bool(((x > left) & (x < right) & (y > low) & (y < high)).any()):
        return True
    # No line runs here, so it lies wholly inside or outside: count the crossings of a ray from its middle.
    mx, my = (left + right) / 2, (low + high) / 2
    x2, y2 = np.roll(x, -1), np.roll(y, -1)
    crossed = (y > my) != (y2 > my)
    at = x[crossed] + (my - y[crossed]) / (y2[crossed] - y[crossed]) * (x2[crossed] - x[crossed])
    return bool((at > mx).sum() % 2)


def _does_not_fit(choices: Sequence[Sequence[Turned]], paper: Paper) -> InputError:
    widest = max(min(t.body.width for t in turns) for turns in choices)
    room = widest + 2 * paper.margin_mm
    if widest <= paper.field_mm[0]:
        return page_too_long(LONGEST_PAGE_MM + 1, paper.name)
    return InputError(
        Problem(
            "roll-too-narrow",
            Severity.ERROR,
            f"one piece needs a roll of at least {math.ceil(room)} mm; {paper.name} is narrower",
            where="paper",
            hint="take a wider roll, or sheets of A4. Nothing was printed.",
        )
    )
