"""Pages of tables behind a nested print: what the sizes measure, how points move, what is uneven."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tapeline.export.ink import GREY, UNIT, Ink
from tapeline.finish import Title

__all__ = ["RunTable", "draw_tables"]

PAGE_MM = (297.0, 210.0)
"""A4 lying on its side: the more sizes, the wider the table."""
MARGIN_MM = 12.0
WORDS_MM = 2.6
LEAST_MM = 1.5
LEADING = 1.5
GAP_MM = 3.0


@dataclass(frozen=True, slots=True)
class RunTable:
    """A table with words above it."""

    title: str
    says: tuple[str, ...]
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    left: int = 1
    """So many columns are words and stand on the left; the others are numbers."""

    @property
    def told(self) -> bool:
        """Whether the last column is a sentence, which goes on on the next line where it is long."""
        return self.left == len(self.head)


def draw_tables(ink: Ink, tables: Sequence[RunTable], title: Title) -> None:
    """Every table on pages of its own, the head again on each."""
    for number, table in enumerate(tables, 1):
        rows = list(table.rows)
        first = True
        while rows or first:
            rows = _page(ink, table, rows, title, first=first)
            if first:
                ink.canvas.bookmarkPage(f"table {number}")
                ink.canvas.addOutlineEntry(table.title, f"table {number}")
            ink.canvas.showPage()
            first = False


def _page(
    ink: Ink, table: RunTable, rows: list[tuple[str, ...]], title: Title, *, first: bool
) -> list[tuple[str, ...]]:
    """One page; what of the rows is left for the next."""
    width, height = PAGE_MM
    ink.canvas.setPageSize((width * UNIT, height * UNIT))
    y = height - MARGIN_MM - 5.0
    ink.words(table.title if first else f"{table.title}, continued", MARGIN_MM, y, 5.0, bold=True)
    facts = "  ·  ".join(fact for fact in (title.docket, title.style, title.wearer, title.date) if fact)
    ink.words(facts, MARGIN_MM, y - 5.0, 2.6, grey=GREY)
    y -= 11.0
    for said in table.says if first else ():
        y = ink.paragraph(said, MARGIN_MM, y, width - 2 * MARGIN_MM, 2.8)
    y -= 2.0
    size, widths = _fitted(ink, table)
    step = size * LEADING
    y = _row(ink, table, table.head, _Setting(y, size, widths), bold=True)
    ink.pen(0.2)
    ink.lines((MARGIN_MM, y + step - 0.35 * size, width - MARGIN_MM, y + step - 0.35 * size))
    y -= 0.5
    while rows and y > MARGIN_MM:
        y = _row(ink, table, rows.pop(0), _Setting(y, size, widths))
    return rows


def _fitted(ink: Ink, table: RunTable) -> tuple[float, list[float]]:
    """The size of the letters, and how wide each column is."""
    room = PAGE_MM[0] - 2 * MARGIN_MM

    def columns(size: float) -> list[float]:
        cells = [table.head, *table.rows]
        wide = [
            max(ink.width(row[n], size, bold=row is table.head) for row in cells) + GAP_MM
            for n in range(len(table.head) - table.told)
        ]
        return [*wide, room - sum(wide)] if table.told else wide

    size = WORDS_MM
    # A sentence is set into what is left; numbers that do not fit are set smaller.
    while sum(columns(size)) > room and size > LEAST_MM:
        size -= 0.1
    return size, columns(size)


@dataclass(frozen=True, slots=True)
class _Setting:
    """Where a row's base line lies, how large its letters are, how wide its columns; mm."""

    y: float
    size: float
    widths: Sequence[float]


def _row(ink: Ink, table: RunTable, cells: Sequence[str], how: _Setting, *, bold: bool = False) -> float:
    """A row; the base line of the next."""
    y, size = how.y, how.size
    x = MARGIN_MM
    for number, (cell, wide) in enumerate(zip(cells, how.widths, strict=True)):
        at = x if number < table.left else x + wide - GAP_MM - ink.width(cell, size, bold=bold)
        if table.told and number == len(cells) - 1 and not bold:
            return ink.paragraph(cell, x, y, wide, size) - 0.5
        ink.words(cell, at, y, size, bold=bold)
        x += wide
    return y - size * LEADING
