"""One sheet of a print: its window on the whole, and what helps to join it to its neighbours.

The sheet to the right is laid over this one: its left margin is cut off, this one's right margin stays. In the same way
the sheet below is laid over the bottom of this one. So every sheet is cut on two sides at most.
"""

from __future__ import annotations

import math
from itertools import product

import numpy as np

from tapeline.export.arrange import Layout, Tile
from tapeline.export.ink import GREY, Ink
from tapeline.geometry import Path, Point

__all__ = ["FORM", "draw_tile"]

FORM = "pattern"
"""The one drawing of all pieces that every sheet shows a part of."""
DIAMOND_MM = 3.5
"""From the middle of a match mark to its corners."""
SIGN_MM = 2.6
NAME_MM = 5.0


def draw_tile(ink: Ink, layout: Layout, tile: Tile, note: str, taken: np.ndarray) -> None:
    """The sheet, from the lower left of what it shows; `taken` holds samples of everything drawn on the whole."""
    width, height = layout.field_mm
    corner = layout.corner(tile)
    printed = set(layout.tiles)
    left, right = Tile(tile.row, tile.column - 1) in printed, Tile(tile.row, tile.column + 1) in printed
    above, below = Tile(tile.row - 1, tile.column) in printed, Tile(tile.row + 1, tile.column) in printed
    across, down = width - layout.step_mm[0], height - layout.step_mm[1]
    with ink.within(width, height):
        if right:
            ink.tint(width - across, 0, across, height, 0.93)
        if below:
            ink.tint(0, 0, width, down, 0.93)
        with ink.at(-corner.x, -corner.y):
            ink.canvas.doForm(FORM)
        ink.pen(0.2, (4, 2), GREY)
        ink.lines(*[(width - across, 0, width - across, height)] * right, *[(0, down, width, down)] * below)
        ink.pen(0.2, (), GREY)
        ink.lines(*[(0, 0, 0, height)] * left, *[(0, height, width, height)] * above)
        _signs(ink, layout, tile, left=left, right=right, above=above, below=below)
        marks = [(x, height * share) for x in [width - across] * right + [0.0] * left for share in (0.27, 0.77)]
        marks += [(width * share, y) for y in [down] * below + [height] * above for share in (0.27, 0.77)]
        ink.pen(0.25)
        for x, y in marks:
            _diamond(ink, x, y)
        if len(layout.tiles) > 1:
            _name(ink, layout, tile, note, taken - (corner.x, corner.y))


def _signs(ink: Ink, layout: Layout, tile: Tile, *, left: bool, right: bool, above: bool, below: bool) -> None:
    width, height = layout.field_mm
    gap = 1.2
    if left:
        with ink.at(gap + SIGN_MM * 0.75, height * 0.5, math.pi / 2):
            ink.words("cut off this margin", 0, 0, SIGN_MM, grey=GREY, middle=True)
    if above:
        ink.words("cut off this margin", width * 0.5, height - gap - SIGN_MM * 0.75, SIGN_MM, grey=GREY, middle=True)
    if right:
        with ink.at(width - gap, height * 0.5, math.pi / 2):
            ink.words(f"glue: column {tile.column + 1} goes on here", 0, 0, SIGN_MM, grey=GREY, middle=True)
    if below:
        ink.words(f"glue: row {tile.row + 1} goes on here", width * 0.5, gap, SIGN_MM, grey=GREY, middle=True)


def _diamond(ink: Ink, x: float, y: float) -> None:
    """A match mark; each of the two sheets shows its part, and together they are whole."""
    d = DIAMOND_MM
    ink.path(Path.through(Point(x - d, y), Point(x, y + d), Point(x + d, y), Point(x, y - d), Point(x - d, y)))
    ink.lines((x - d, y, x + d, y), (x, y - d, x, y + d))


def _name(ink: Ink, layout: Layout, tile: Tile, note: str, taken: np.ndarray) -> None:
    """Row and column, where the sheet is emptiest."""
    width, height = layout.field_mm
    wide = max(ink.width(str(tile), NAME_MM, bold=True), ink.width(note, SIGN_MM)) + 6
    tall = NAME_MM + SIGN_MM + 8
    edge = 14.0
    xs = np.linspace(edge, width - edge - wide, 7)
    ys = np.linspace(height - edge - tall, edge, 11)

    def lines_under(spot: tuple[float, float]) -> int:
        x, y = spot
        inside = (taken[:, 0] > x) & (taken[:, 0] < x + wide) & (taken[:, 1] > y) & (taken[:, 1] < y + tall)
        return int(inside.sum())

    x, y = min(((float(x), float(y)) for y, x in product(ys, xs)), key=lines_under)
    ink.words(str(tile), x + 3, y + SIGN_MM + 5, NAME_MM, bold=True, grey=GREY)
    ink.words(note, x + 3, y + 3, SIGN_MM, grey=GREY)
