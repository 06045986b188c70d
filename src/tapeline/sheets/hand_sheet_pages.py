"""Fills the pages of the hand sheet: blocks run down a page and on to the next; each page has its head."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from tapeline.geometry import Path, Point
from tapeline.sheets.hand_sheet_marks import Box, Page, Picture, Stroke, WidthOf, Words
from tapeline.sheets.hand_sheet_text import SMALL_MM, Block, elided

__all__ = ["GAP_MM", "MARGIN_MM", "Head", "Leaves", "rows_of"]

MARGIN_MM = 12.0
"""White all round: printers need some, and so does the hole punch."""
HEAD_MM = 9.0
GAP_MM = 5.0
"""Between a text and the drawing beside it."""
RULE_GREY = 0.55


@dataclass(frozen=True, slots=True)
class Head:
    """What stands at the top of every page, beside the page's number."""

    left: str
    right: str


@dataclass(slots=True)
class Leaves:
    """The pages so far, and how far down the last one is filled."""

    paper_mm: tuple[float, float]
    head: Head
    width_of: WidthOf
    pages: list[Page] = field(default_factory=list)
    top: float = 0.0
    """Where the next block begins, mm from the lower edge of the paper."""
    _words: list[Words] = field(default_factory=list)
    _strokes: list[Stroke] = field(default_factory=list)
    _boxes: list[Box] = field(default_factory=list)
    _pictures: list[tuple[Point, Picture]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.top = self.highest

    @property
    def width(self) -> float:
        """Of what can be written on."""
        return self.paper_mm[0] - 2 * MARGIN_MM

    @property
    def highest(self) -> float:
        """Where the first block of a page begins."""
        return self.paper_mm[1] - MARGIN_MM - HEAD_MM

    @property
    def tallest(self) -> float:
        """What a page can hold."""
        return self.highest - MARGIN_MM

    @property
    def left_over(self) -> float:
        """What this page can still hold."""
        return self.top - MARGIN_MM

    def turn(self) -> None:
        """Begin a new page, if there is anything on this one."""
        if self._words or self._boxes or self._pictures:
            marks = (self._words, self._strokes, self._boxes, self._pictures)
            self.pages.append(Page(*(tuple(kept) for kept in marks)))  # type: ignore[arg-type]  # each is of its own kind
            for kept in marks:
                kept.clear()
        self.top = self.highest

    def put(self, block: Block, x: float = 0.0) -> None:
        """A block at the top of what is left, on a new page where this one is full."""
        if block.height > self.left_over:
            self.turn()
        self.put_at(block, x, self.top)
        self.top -= block.height

    def put_at(self, block: Block, x: float, top: float) -> None:
        """A block from an upper left corner."""
        placed = block.moved(MARGIN_MM + x, top)
        self._words += placed.words
        self._boxes += placed.boxes

    def rule(self, grey: float = RULE_GREY) -> None:
        """A thin line across the page at the top of what is left."""
        ends = (Point(MARGIN_MM, self.top), Point(MARGIN_MM + self.width, self.top))
        self._strokes.append(Stroke(Path.through(*ends), 0.15, grey))

    def picture(self, picture: Picture, x: float, top: float) -> None:
        """A picture from its upper left corner."""
        self._pictures.append((Point(MARGIN_MM + x, top - picture.height), picture))

    def done(self) -> tuple[Page, ...]:
        """All pages, with their heads: only now it is known how many there are."""
        self.turn()
        return tuple(self._headed(page, number) for number, page in enumerate(self.pages, start=1))

    def _headed(self, page: Page, number: int) -> Page:
        y = self.paper_mm[1] - MARGIN_MM - SMALL_MM
        right = f"{self.head.right}   page {number} of {len(self.pages)}".strip()
        at = MARGIN_MM + self.width - self.width_of(right, SMALL_MM)
        left = elided(self.head.left, self.width_of, at - MARGIN_MM - GAP_MM, SMALL_MM)
        rule = Path.through(Point(MARGIN_MM, y - 1.8), Point(MARGIN_MM + self.width, y - 1.8))
        words = (Words(left, MARGIN_MM, y, SMALL_MM), Words(right, at, y, SMALL_MM))
        return Page((*words, *page.words), (Stroke(rule, 0.25), *page.strokes), page.boxes, page.pictures)


def rows_of(pictures: Sequence[Picture], width: float) -> list[list[Picture]]:
    """Pictures side by side as far as a width allows, in rows.

    >>> rows_of([], 100)
    []
    """
    rows: list[list[Picture]] = []
    for picture in pictures:
        if rows and sum(p.width for p in rows[-1]) + GAP_MM * len(rows[-1]) + picture.width <= width:
            rows[-1].append(picture)
        else:
            rows.append([picture])
    return rows
