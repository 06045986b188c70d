"""Showing things to a person: results on stdout, problems on stderr, calm and aligned, with or without colour."""

from __future__ import annotations

import shutil
import textwrap
from collections.abc import Iterable, Sequence

import click

from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["columns", "heading", "in_words", "paragraph", "say", "show_problems", "width"]

_COLOURS = {Severity.ERROR: "red", Severity.DOUBT: "yellow", Severity.NOTE: "cyan"}


_STEERING = {code: "?" for code in (*range(32), *range(127, 160)) if chr(code) not in "\n\t"}


def width() -> int:
    """Columns of the terminal; 80 where there is none, and never wider than reads well."""
    return max(40, min(shutil.get_terminal_size((80, 24)).columns, 100))


def say(text: str = "") -> None:
    """One line of a result, or a text of several."""
    click.echo(tame(text))


def tame(text: str) -> str:
    """The same, unable to steer a terminal: names of files and cells of lists are typed by anybody."""
    return text.translate(_STEERING)


def heading(text: str) -> None:
    """A line above a group of lines."""
    click.echo()
    click.secho(text, bold=True)


def paragraph(text: str, indent: str = "", hanging: str | None = None) -> None:
    """Text, wrapped to the terminal."""
    for line in _wrapped(text, indent, indent if hanging is None else hanging):
        click.echo(line)


def in_words(unit: Unit) -> str:
    """A unit above a column: `cm`, `inches`."""
    return unit.sign if unit is Unit.CM else "inches"


def columns(rows: Iterable[Sequence[str]], head: Sequence[str] = (), right: str = "") -> None:
    """Rows as aligned columns, two spaces apart; the last column wraps when there is room for it at all.

    Args:
        rows: Cells as text.
        head: Words above the columns.
        right: A letter for each column: `r` sets it flush right, anything else flush left.
    """
    table = [[tame(cell).replace("\n", " ") for cell in row] for row in ([head] if head else []) + list(rows)]
    if not table:
        return
    widths = [max(len(row[n]) for row in table) for n in range(len(table[0]))]
    for number, row in enumerate(table):
        cells = [
            cell.rjust(wide) if right[n : n + 1] == "r" else cell.ljust(wide)
            for n, (cell, wide) in enumerate(zip(row, widths, strict=True))
        ]
        front = "  " + "  ".join(cells[:-1])
        front = front + "  " if cells[:-1] else front
        room = width() - len(front)
        last = cells[-1].rstrip()
        lines = textwrap.wrap(last, room) if len(last) > room >= 20 else [last]
        lines = lines or [""]
        for line in (f"{front}{lines[0]}", *(" " * len(front) + more for more in lines[1:])):
            click.echo(click.style(line.rstrip(), dim=True) if head and number == 0 else line.rstrip())


def show_problems(problems: Iterable[Problem]) -> None:
    """Problems on stderr, each a few lines, in the order given."""
    for problem in problems:
        label, _, rest = f"{problem.severity}: {problem.says}  [{problem.code}]".partition(":")
        first, *more = _wrapped(f"{label}:{rest}", "", "  ")
        styled = click.style(label, fg=_COLOURS[problem.severity], bold=True)
        click.echo(styled + first[len(label) :], err=True)
        if problem.where:
            more.append(tame(f"  in {problem.where}").replace("\n", " "))
        if problem.hint:
            more += _wrapped(f"hint: {problem.hint}", "  ", "    ")
        for line in more:
            click.echo(line, err=True)


def _wrapped(text: str, indent: str, hanging: str) -> list[str]:
    return textwrap.wrap(
        tame(text),
        width(),
        initial_indent=indent,
        subsequent_indent=hanging,
        break_long_words=False,
        break_on_hyphens=False,
    ) or [""]
