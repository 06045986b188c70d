"""A list of orders: a table with one docket in each row."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tapeline.docket.docket import Docket
from tapeline.docket.file import decoded, file_bytes
from tapeline.docket.places import LONGEST_SHOWN, Keys, printable
from tapeline.docket.read import docket_from
from tapeline.measures import TAPES
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["Order", "column_keys", "orders"]

MOST_BYTES = 64 * 1024 * 1024
"""Some hundred thousand orders: past that it is another kind of file."""
MARKS = ",;\t"
"""Between cells: spreadsheets write semicolons where the comma is the decimal mark."""
SHORT = ("name", "figure", "unit", "size")
"""Columns of the wearer that need no `wearer.` before them; tapes need nothing either."""
TABLES = ("wearer", "garment", "cloth", "finish")
USUAL = (*SHORT, "allow", "garment.style", "garment.looseness", "garment.frame", "finish.paper")
"""What a column was probably meant to be."""


@dataclass(frozen=True, slots=True)
class Order:
    """One row, as it was written."""

    file: str
    row: int
    """1 for the first order."""
    line: int
    """Of the file, where the row ends."""
    cells: Mapping[str, str] = field(hash=False)
    """By column; empty cells are left out."""
    extra: int = 0
    """Cells beyond the last column."""

    @property
    def name(self) -> str:
        """Of the wearer; empty when the row has none."""
        return self.cells.get("name", self.cells.get("wearer.name", "")).strip()

    def docket(self) -> Docket:
        """The row as a docket.

        Raises:
            InputError: With all that is wrong with it.
        """
        table: dict[str, Any] = {}
        columns: dict[Keys, str] = {}
        problems = []
        if self.extra:
            says = f"the row has {self.extra} more cells than there are columns"
            hint = "a value with the dividing mark in it stands in quotes"
            problems.append(Problem("row-cells", Severity.ERROR, says, self._place(), hint))
        for column, cell in self.cells.items():
            keys = column_keys(column)
            columns[keys] = column
            if not _put(table, keys, cell):
                says = f"{column} and another column set the same key"
                problems.append(Problem("row-conflict", Severity.ERROR, says, self._place(), "leave one of them empty"))
        if problems:
            raise InputError(problems)

        def where(keys: Keys) -> str:
            column = columns.get(keys)
            return self._place() if column is None else f"{self._place()}: {column} = {_shown(self.cells[column])}"

        return docket_from(table, f"{self.file}, order {self.row}", where)

    def _place(self) -> str:
        return f"{self.file}, order {self.row} (line {self.line})"


def orders(path: Path) -> list[Order]:
    """The orders of a file, in its order; what is wrong with a row is said when its docket is asked for.

    Raises:
        InputError: The file cannot be read, or its columns are not those of a docket.
    """
    text = decoded(file_bytes(path, MOST_BYTES, "a list of orders"), path)
    first = text.lstrip("\r\n").partition("\n")[0]
    mark = max(MARKS, key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=mark)
    try:
        return list(_orders(reader, path))
    except csv.Error as error:
        says = f"line {reader.line_num} is not a row of a table: {error}"
        raise InputError(Problem("orders-not-a-table", Severity.ERROR, says, str(path), "save it as CSV")) from None


def _orders(reader: Any, path: Path) -> Iterator[Order]:  # noqa: ANN401 - csv gives its reader no name
    columns: list[str] | None = None
    row = 0
    for cells in reader:
        if not any(cell.strip() for cell in cells):
            continue
        if columns is None:
            columns = [cell.strip() for cell in cells]
            _look_at(columns, path)
            continue
        row += 1
        filled = {column: cell.strip() for column, cell in zip(columns, cells, strict=False) if cell.strip()}
        extra = len([cell for cell in cells[len(columns) :] if cell.strip()])
        yield Order(printable(path.name), row, reader.line_num, filled, extra)
    if not row:
        says = f"{path} has no orders: a first row of columns and one row for each order"
        hint = "columns are name, figure, unit, the tapes, and docket keys such as garment.looseness"
        raise InputError(Problem("orders-empty", Severity.ERROR, says, str(path), hint))


def _look_at(columns: list[str], path: Path) -> None:
    where = f"{printable(path.name)}, first row"
    problems = [
        Problem("column-twice", Severity.ERROR, f"the column {column or '(no name)'} is there twice", where)
        for column, count in Counter(columns).items()
        if count > 1
    ]
    known = (*USUAL, *TAPES)
    for column in dict.fromkeys(columns):
        if column not in known and (column.partition(".")[0] not in TABLES or "." not in column or ".." in column):
            hint = closest(column, known)
            if f"garment.{column}" in known:
                hint = f"did you mean garment.{column}?"
            says = f"{column or 'a column without a name'} is no column of an order"
            problems.append(Problem("column-unknown", Severity.ERROR, says, where, hint))
    if problems:
        raise InputError(problems)


def column_keys(column: str) -> Keys:
    """The docket key that a column sets.

    >>> column_keys("hip"), column_keys("unit"), column_keys("garment.looseness")
    (('wearer', 'tapes', 'hip'), ('wearer', 'unit'), ('garment', 'looseness'))
    """
    if column in TAPES:
        return ("wearer", "tapes", column)
    return ("wearer", column) if column in SHORT else tuple(column.split("."))


def _put(table: dict[str, Any], keys: Keys, cell: str) -> bool:
    """Set a key of nested tables; False when something else stands there."""
    for key in keys[:-1]:
        inner = table.setdefault(key, {})
        if not isinstance(inner, dict):
            return False
        table = inner
    return table.setdefault(keys[-1], cell) is cell


def _shown(cell: str) -> str:
    text = printable(cell)
    return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 3] + "..."
