"""Lines of text on the hand sheet: words broken to a width, with empty boxes among them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tapeline.sheets.hand_sheet_marks import Box, WidthOf, Words
from tapeline.sheets.hand_sheet_rows import EMPTY

__all__ = ["BODY_MM", "LEADING", "SMALL_MM", "Block", "elided", "lines_of", "stacked"]

BODY_MM = 2.9
SMALL_MM = 2.6
LEADING = 1.38
"""From base line to base line, in sizes of the letters."""
BOX_MM = (17.0, 5.0)
"""Room for a number written by hand."""
BOX_DROP_MM = 1.2
"""How far a box reaches below the base line."""


@dataclass(frozen=True, slots=True)
class Block:
    """Marks from an upper left corner (y runs down below zero), kept together on a page."""

    height: float
    words: tuple[Words, ...] = ()
    boxes: tuple[Box, ...] = ()

    @property
    def first(self) -> float:
        """Its first base line; 0 where it is empty."""
        return max((*(word.y for word in self.words), *(box.y + BOX_DROP_MM for box in self.boxes)), default=0.0)

    def moved(self, x: float, y: float) -> Block:
        """The same marks elsewhere; moved down it is so much taller."""
        words = tuple(word.moved(x, y) for word in self.words)
        return Block(self.height - y, words, tuple(Box(b.x + x, b.y + y, b.width, b.height) for b in self.boxes))


def stacked(blocks: Iterable[Block]) -> Block:
    """Blocks under each other as one."""
    top, placed = 0.0, list[Block]()
    for block in blocks:
        placed.append(block.moved(0, -top))
        top += block.height
    return Block(top, tuple(w for b in placed for w in b.words), tuple(x for b in placed for x in b.boxes))


def lines_of(
    parts: Iterable[tuple[str, bool]], width_of: WidthOf, width: float, size_mm: float = BODY_MM, indent: float = 0.0
) -> Block:
    """Text in parts, each bold or not, broken to a width; lines after the first are indented."""
    words, boxes, y = list[Words](), list[Box](), 0.0
    for number, line in enumerate(_broken(parts, width_of, width, size_mm, indent)):
        has_box = any(word == EMPTY for _, word, _ in line)
        y -= max(size_mm * LEADING, BOX_MM[1] + 0.8 if has_box else 0.0)
        start = indent if number else 0.0
        run, run_at, run_bold = "", 0.0, False
        for at, word, bold in line:
            if word == EMPTY:
                boxes.append(Box(start + at, y - BOX_DROP_MM, *BOX_MM))
            if run and (word == EMPTY or bold != run_bold):
                words.append(Words(run, start + run_at, y, size_mm, run_bold))
                run = ""
            if word != EMPTY:
                run, run_at, run_bold = (f"{run} {word}", run_at, bold) if run else (word, at, bold)
        if run:
            words.append(Words(run, start + run_at, y, size_mm, run_bold))
    return Block(-y + 0.25 * size_mm if words or boxes else 0.0, tuple(words), tuple(boxes))


def _broken(
    parts: Iterable[tuple[str, bool]], width_of: WidthOf, width: float, size_mm: float, indent: float
) -> Iterator[list[tuple[float, str, bool]]]:
    """Lines of words, each with its distance from the start of the line."""
    space = {bold: width_of("n n", size_mm, bold=bold) - width_of("nn", size_mm, bold=bold) for bold in (False, True)}
    line, at, room = list[tuple[float, str, bool]](), 0.0, width
    for text, bold in parts:
        for word in text.split():
            for part in _fitting(word, width_of, width - indent, size_mm, bold=bold):
                long = BOX_MM[0] if part == EMPTY else width_of(part, size_mm, bold=bold)
                if line and at + long > room:
                    yield line
                    line, at, room = [], 0.0, width - indent
                line.append((at, part, bold))
                at += long + space[bold]
    if line:
        yield line


def _fitting(word: str, width_of: WidthOf, width: float, size_mm: float, *, bold: bool) -> Iterator[str]:
    """A word, cut where it is wider than a line."""
    while word != EMPTY and width_of(word, size_mm, bold=bold) > width and len(word) > 1:
        count = next((n for n in range(len(word) - 1, 1, -1) if width_of(word[:n], size_mm, bold=bold) <= width), 1)
        yield word[:count]
        word = word[count:]
    yield word


def elided(text: str, width_of: WidthOf, width: float, size_mm: float) -> str:
    """A text for a running head: what does not fit is left out at its end, with dots for it.

    >>> elided("Marit Sjöström", lambda text, size_mm, bold=False: len(text) * size_mm / 2, 10, 2)
    'Marit Sjö…'
    """
    if width_of(text, size_mm) <= width:
        return text
    while text and width_of(f"{text}…", size_mm) > width:
        text = text[:-1]
    return f"{text.rstrip()}…"
