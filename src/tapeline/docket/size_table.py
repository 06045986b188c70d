"""A table of one's own sizes: tapes by size, as CSV or TOML, in centimetres or inches."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from tapeline.docket.file import MOST_BYTES, decoded, file_bytes, toml_table
from tapeline.docket.orders import MARKS
from tapeline.docket.places import printable
from tapeline.docket.reader import NOTHING_DONE, sentences
from tapeline.measures import TAPES, Figure, Wearer, required_tapes, survey_of, tapes_of, wearer_problems
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.units import Unit

__all__ = ["size_table"]

Cells = Mapping[str, Mapping[str, Any]]
"""By size and tape, as written."""


def size_table(path: Path, figure: Figure, unit: Unit, allow: frozenset[str] = frozenset()) -> dict[str, Wearer]:
    """The sizes of a file by their labels, in its order.

    As CSV, either a row for each size, with `size` above the labels and a tape above each other column, or a row for
    each tape, with `tape` above their names and a size above each other column. As TOML, `unit` and a table for each
    size, `[sizes.M]`. A row, column or key `unit` says what bare numbers are.

    Where the table lacks a tape that drafting needs, the survey's mean is taken, given those it has, and `made_from`
    says so.

    Args:
        path: The file; `.toml` is read as TOML, everything else as CSV.
        figure: Whose tapes these are.
        unit: Of bare numbers, where the table does not say; sizes are shown in it too.
        allow: What the maker lets pass.

    Raises:
        InputError: With all that is wrong: `size-table-shape`, `size-twice`, `tape-unknown`, `tape-missing`, what
            reading a length says, and all that can be wrong with tapes; each with its size.
    """
    text, name = decoded(file_bytes(path, MOST_BYTES, "a table of sizes"), path), printable(path.name)
    cells = _toml(text, name) if path.suffix.lower() == ".toml" else _csv(text, name)
    if not cells:
        raise InputError(_shape(f"{name} has no sizes", name))
    problems: list[Problem] = []
    found = {}
    for label, tapes in cells.items():
        try:
            found[label] = _wearer(label, tapes, name, figure=figure, unit=unit, allow=allow)
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    return found


def _toml(text: str, name: str) -> Cells:
    try:
        table = toml_table(text, name)
    except InputError as error:
        hint = sentences('words with spaces, and lengths with a unit, stand in quotes: "33 1/4 in"', NOTHING_DONE)
        raise InputError([replace(problem, hint=hint) for problem in error.problems]) from None
    sizes = table.get("sizes")
    strange = [key for key in table if key not in ("unit", "sizes")]
    if not isinstance(sizes, dict) or strange or not all(isinstance(row, dict) for row in sizes.values()):
        says = f"{name} is no table of sizes" + (f": {strange[0]} is no key of one" if strange else "")
        raise InputError(_shape(says, name))
    shared = {"unit": table["unit"]} if "unit" in table else {}
    return {str(label): {**shared, **row} for label, row in sizes.items()}


def _csv(text: str, name: str) -> Cells:
    first = text.lstrip("\r\n").partition("\n")[0]
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=max(MARKS, key=first.count))
    try:
        rows = [[cell.strip() for cell in row] for row in reader if any(cell.strip() for cell in row)]
    except csv.Error as error:
        raise InputError(_shape(f"{name} is no table: {error}", name)) from None
    if not rows:
        return {}
    if rows[0][0].casefold() not in ("size", "tape"):
        raise InputError(_shape(f"{name} does not begin with size or tape", name))
    (corner, *heads), below = rows[0], rows[1:]
    problems = [
        Problem(
            "size-twice" if (corner.casefold() == "size") is (word == "row") else "column-twice",
            Severity.ERROR,
            f"{label or 'a nameless one'} is there twice",
            f"{name}, a {word}",
            NOTHING_DONE,
        )
        for word, labels in (("column", heads), ("row", [row[0] for row in below]))
        for label, count in Counter(labels).items()
        if count > 1
    ]
    problems += [_shape(f"row {row[0]} has more cells than there are columns", name) for row in _longer(below, heads)]
    if problems:
        raise InputError(problems)
    by_row = {row[0]: {head: cell for head, cell in zip(heads, row[1:], strict=False) if cell} for row in below}
    if corner.casefold() == "size":
        return by_row
    shared = by_row.pop("unit", {})
    return {
        head: {
            **({"unit": shared[head]} if head in shared else {}),
            **{tape: cells[head] for tape, cells in by_row.items() if head in cells},
        }
        for head in heads
    }


def _longer(rows: Sequence[Sequence[str]], heads: Sequence[str]) -> Iterator[Sequence[str]]:
    return (row for row in rows if any(row[len(heads) + 1 :]))


def _wearer(
    label: str, cells: Mapping[str, Any], name: str, *, figure: Figure, unit: Unit, allow: frozenset[str]
) -> Wearer:
    place = f"{name}, size {printable(label)}"
    problems: list[Problem] = []
    said = str(cells.get("unit", unit)).casefold()
    if said not in list(Unit):
        says = f"the unit of size {label} is {printable(said)}"
        problems.append(Problem("size-table-shape", Severity.ERROR, says, place, f"write cm or inch. {NOTHING_DONE}"))
    of = Unit(said) if said in list(Unit) else unit
    known = {tape.name for tape in tapes_of(figure)} | {"bust"}
    tapes: dict[str, float] = {}
    for tape, value in cells.items():
        key = tape.strip().casefold().replace(" ", "_").replace("-", "_")
        if key == "unit":
            continue
        if key not in known:
            says = f"there is no tape named {printable(tape)} for the figure {figure}"
            hint = sentences(closest(key, sorted(known)), NOTHING_DONE)
            problems.append(Problem("tape-unknown", Severity.ERROR, says, f"{place}: {printable(tape)}", hint))
            continue
        try:
            tapes[figure.fullest if key == "bust" else key] = TAPES[key].parse(value, of)
        except InputError as error:
            problems += [
                replace(problem, where=f"{place}: {key}", hint=sentences(problem.hint, NOTHING_DONE))
                for problem in error.problems
            ]
    if problems:
        raise InputError(problems)
    whole, made_from = _with_means(tapes, name, figure)
    found = wearer_problems(figure, whole, unit, allow)
    if any(problem.severity is Severity.ERROR for problem in found):
        raise InputError(
            [
                replace(p, where=f"{place}: {p.where.removeprefix('tapes.')}", hint=sentences(p.hint, NOTHING_DONE))
                for p in found
            ]
        )
    return Wearer(f"Size {label}", figure, whole, allow, unit, made_from)


def _with_means(tapes: Mapping[str, float], name: str, figure: Figure) -> tuple[dict[str, float], str]:
    """The tapes, with the survey's means for those that drafting needs and the table does not have."""
    made_from = f"the table {name}, nobody was measured"
    survey = survey_of(figure)
    missing = [tape.name for tape in required_tapes(figure) if tape.name not in tapes]
    if not missing or survey is None or figure.fullest not in tapes:
        return dict(tapes), made_from
    means = survey.conditional(tapes)
    return (
        {**tapes, **{tape: means[tape].mm for tape in missing}},
        f"{made_from}; the survey's mean, given those of the table: {', '.join(missing)}",
    )


def _shape(says: str, name: str) -> Problem:
    hint = "as CSV it has size above its first column and a tape above each other one, or tape and sizes; see the docs"
    return Problem("size-table-shape", Severity.ERROR, says, name, sentences(hint, NOTHING_DONE))
