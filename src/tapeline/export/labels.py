"""Where the words of a piece go: inside its seam line, clear of every line, as large as they need be."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tapeline.finish import FinishedPiece
from tapeline.geometry import Line, Path, Point, Vector
from tapeline.geometry.silhouette import even_points

__all__ = ["Label", "labels", "text_width"]

TITLE_MM = 7.0
"""Size of the letters of a title; its capitals are 5 mm high, to be read at arm's length."""
WORDS_MM = 4.4
SIGN_MM = 4.0
"""Of the words along the grain and the fold."""
SMALLEST_SHARE = 0.3
"""Words on a small piece shrink to this share and no further: capitals of 1.5 mm, as on a tape measure."""
LARGE_SHARES = (1.0, 0.9, 0.8)
ALL_SHARES = (*LARGE_SHARES, 0.7, 0.6, 0.5, 0.4, SMALLEST_SHARE)
"""Shares of the full size that are tried, large first."""
LEADING = 1.4
"""From line to line, in sizes."""
CELL_MM = 2.0
"""Cells in which room is looked for."""


@dataclass(frozen=True, slots=True)
class Label:
    """One line of text; angle in radians, counter-clockwise."""

    text: str
    at: Point
    """Left end of its base line."""
    size_mm: float
    angle: float = 0.0
    bold: bool = False

    def outline(self) -> tuple[Point, ...]:
        """Corners of the room it takes, closed."""
        along = Vector(math.cos(self.angle), math.sin(self.angle)) * text_width(self.text, self.size_mm, bold=self.bold)
        up = Vector(-math.sin(self.angle), math.cos(self.angle)) * self.size_mm
        return self.at, self.at + along, self.at + (along + up), self.at + up, self.at


def text_width(text: str, size_mm: float, *, bold: bool = False) -> float:
    """About how wide a text is, in mm: rather too much, so that what is said to fit does."""
    return len(text) * size_mm * (0.71 if bold else 0.64)


def labels(
    finished: FinishedPiece, grain_line: Line, lines: Sequence[Path], joints: Sequence[Path] = ()
) -> tuple[Label, ...]:
    """The words of a piece, clear of its lines; clear of the joints of the paper too where that leaves them large."""
    signs = [_along_fold(edge.path) for edge in finished.piece.edges if edge.fold]
    room = _Room(finished, (*lines, *joints), signs)
    grain = _along_grain(grain_line, room)
    room.block(grain)
    words = _words(finished.words, room, LARGE_SHARES if joints else ALL_SHARES)
    if not words:
        room = _Room(finished, lines, (*signs, grain))
        words = _words(finished.words, room, ALL_SHARES) or _at_middle(finished.words, room)
    return (*words, grain, *signs)


def _along_fold(path: Path) -> Label:
    """`on the fold`, between the fold and its bracket."""
    text, way, inward = "on the fold", path.leaves, path.leaves.right
    size = min(SIGN_MM, 0.6 * path.length / text_width(text, 1.0))
    width, middle = text_width(text, size), path.at(path.length / 2)
    clear = min(3.0, path.length / 16)
    if way.x < -1e-9 or (abs(way.x) <= 1e-9 and way.y < 0):
        return Label(text, middle + way * (width / 2) + inward * clear, size, (-way).angle)
    return Label(text, middle + (inward * (clear + 0.8 * size) - way * (width / 2)), size, way.angle)


def _along_grain(grain: Line, room: _Room) -> Label:
    """`grain`, beside the grain line where nothing else is."""
    way = grain.direction(0)
    if way.x < -1e-9 or (abs(way.x) <= 1e-9 and way.y < 0):
        way = -way
    size = min(SIGN_MM, grain.length / 6)
    half = way * (text_width("grain", size) / 2)
    tries = [
        Label("grain", grain.at(share) + (way.left * beside - half), size, way.angle)
        for share in (0.5, 0.35, 0.65, 0.2, 0.8)
        for beside in (2.2, -1.8 - size * 0.8)
    ]
    return next((label for label in tries if room.free(label)), tries[0])


def _words(words: Sequence[str], room: _Room, shares: Sequence[float]) -> list[Label]:
    """The block of words: full size if there is room, otherwise on fewer lines, turned, smaller; empty if in vain."""
    blocks = [[*words[:1], *_gathered(words[1:], count)] for count in range(max(1, len(words) - 1), 0, -1)]
    for share in shares:
        for block in blocks:
            sizes = [(WORDS_MM if index else TITLE_MM) * share for index in range(len(block))]
            lines = enumerate(zip(block, sizes, strict=True))
            width = max(text_width(text, size, bold=index == 0) for index, (text, size) in lines)
            height = sum(sizes) * LEADING
            for upright in (True, False):
                corner = room.find(*((width, height) if upright else (height, width)))
                if corner is not None:
                    return _set(block, sizes, corner, height, upright=upright)
    return []


def _at_middle(words: Sequence[str], room: _Room) -> list[Label]:
    """The title alone, as small as it may be: better over a line than nowhere."""
    size = TITLE_MM * SMALLEST_SHARE
    half = text_width(words[0], size, bold=True) / 2
    return [Label(words[0], room.middle + Vector(-half, 0), size, bold=True)]


def _gathered(words: Sequence[str], count: int) -> list[str]:
    """Lines of text on fewer lines, about as long as each other.

    >>> _gathered(("for Marit", "cut 1", "in rib", "tee.toml, 2031"), 2)
    ['for Marit, cut 1', 'in rib, tee.toml, 2031']
    """
    fair = sum(map(len, words)) / count
    lines: list[str] = []
    done = 0
    for word in words:
        if lines and done + len(word) / 2 < fair * len(lines):
            lines[-1] += f", {word}"
        else:
            lines.append(word)
        done += len(word)
    return lines


def _set(block: Sequence[str], sizes: Sequence[float], corner: Point, height: float, *, upright: bool) -> list[Label]:
    """Lines of a block from its lower left corner on the paper."""
    found, down = [], 0.0
    for index, (text, size) in enumerate(zip(block, sizes, strict=True)):
        down += size * LEADING
        # The base line lies a fifth of the size above the foot of the line.
        base = down - size * 0.3
        at = corner + (Vector(0, height - base) if upright else Vector(base, 0))
        found.append(Label(text, at, size, 0.0 if upright else math.pi / 2, bold=index == 0))
    return found


class _Room:
    """Cells of a piece that are free of lines."""

    def __init__(self, finished: FinishedPiece, lines: Sequence[Path], signs: Sequence[Label]) -> None:
        outline = even_points(finished.piece.seam_line.flattened(0.1), 1.0)
        self.low = outline.min(axis=0) - CELL_MM
        size = np.ceil((outline.max(axis=0) - self.low) / CELL_MM).astype(int) + 2
        self.open = np.zeros((int(size[1]), int(size[0])), dtype=bool)
        x, y = outline[:, 0], outline[:, 1]
        x2, y2 = np.roll(x, -1), np.roll(y, -1)
        columns = self.low[0] + (np.arange(self.open.shape[1]) + 0.5) * CELL_MM
        for row in range(self.open.shape[0]):
            level = self.low[1] + (row + 0.5) * CELL_MM
            crossed = (y > level) != (y2 > level)
            at = x[crossed] + (level - y[crossed]) / (y2[crossed] - y[crossed]) * (x2[crossed] - x[crossed])
            self.open[row] = (at[:, None] > columns).sum(axis=0) % 2 == 1
        self._close(outline)
        for line in lines:
            self._close(even_points(line.flattened(0.1), 1.0))
        for sign in signs:
            self.block(sign)
        self.middle = Point(*(float(v) for v in (outline.min(axis=0) + outline.max(axis=0)) / 2))

    def _cells(self, points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        cells = np.floor((points - self.low) / CELL_MM).astype(int)
        return cells[:, 1].clip(0, self.open.shape[0] - 1), cells[:, 0].clip(0, self.open.shape[1] - 1)

    def _close(self, points: np.ndarray) -> None:
        self.open[self._cells(points)] = False

    def block(self, label: Label) -> None:
        """Take the cells under a label."""
        self._close(_covered(label))

    def free(self, label: Label) -> bool:
        """Whether a label covers free cells only (a little of its line's own cells aside)."""
        return bool(self.open[self._cells(_covered(label))].mean() > 0.45)

    def find(self, width: float, height: float) -> Point | None:
        """Lower left corner of a free rectangle, the nearest to the middle of the piece; none when there is none."""
        w, h = math.ceil(width / CELL_MM) + 1, math.ceil(height / CELL_MM) + 1
        if h > self.open.shape[0] or w > self.open.shape[1]:
            return None
        sums = np.zeros((self.open.shape[0] + 1, self.open.shape[1] + 1), dtype=int)
        sums[1:, 1:] = (~self.open).cumsum(axis=0).cumsum(axis=1)
        taken = sums[h:, w:] - sums[:-h, w:] - sums[h:, :-w] + sums[:-h, :-w]
        rows, columns = np.nonzero(taken == 0)
        if not len(rows):
            return None
        x = self.low[0] + (columns + w / 2) * CELL_MM - width / 2
        y = self.low[1] + (rows + h / 2) * CELL_MM - height / 2
        away = np.hypot(x + width / 2 - self.middle.x, y + height / 2 - self.middle.y)
        best = int(np.lexsort((x, y, np.round(away, 6)))[0])
        return Point(float(x[best]), float(y[best]))


def _covered(label: Label) -> np.ndarray:
    along, up = (
        Vector(math.cos(label.angle), math.sin(label.angle)),
        Vector(-math.sin(label.angle), math.cos(label.angle)),
    )
    width = text_width(label.text, label.size_mm, bold=label.bold)
    across = np.linspace(0, width, max(2, math.ceil(width)))
    high = np.linspace(0, label.size_mm, max(2, math.ceil(label.size_mm)))
    a, b = (grid.ravel() for grid in np.meshgrid(across, high))
    return np.column_stack([label.at.x + a * along.x + b * up.x, label.at.y + a * along.y + b * up.y])
