"""A list of standard sizes as a person writes it: `84, 88, 92`, `84-104`, `S-XL`."""

from __future__ import annotations

import re

from tapeline.measures.figures import Figure
from tapeline.measures.sizes import LETTER_CODES, WOMEN_INTERVALS, size_wearer
from tapeline.measures.survey import survey_of
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["size_labels"]

_FROM_TO = re.compile(r"(\w+)\s*(?:-|\N{EN DASH}|\.\.|to\s)\s*(\w+)", re.IGNORECASE)
MEN_CM = range(60, 160)
"""Chests among which men's standard sizes are looked for."""


def size_labels(text: str, figure: Figure) -> tuple[str, ...]:
    """The labels of a list of sizes and of ranges of them, in the order written; a range takes the table's own steps.

    >>> size_labels("84-96, 104", Figure.WOMAN)
    ('84', '88', '92', '96', '104')
    >>> size_labels("S to XL", Figure.MAN)
    ('S', 'M', 'L', 'XL')

    Raises:
        InputError: `size-unknown` for a label that is in no table of the figure, `size-twice`, `sizes-not-understood`
            for an empty list, or a range that runs down or from letters to numbers.
    """
    if survey_of(figure) is None:
        size_wearer(text.strip(), figure)  # says why there are no sizes of this figure at all
    runs = _runs(figure)
    found: list[str] = []
    problems: list[Problem] = []
    for part in (part.strip().upper() for part in re.split(r"[,;]", text)):
        if not part:
            continue
        between = _FROM_TO.fullmatch(part)
        ends = between.groups() if between else (part, part)
        known = {label for run in runs for label in run}
        for end in dict.fromkeys(ends):
            if end not in known:
                says = f"there is no size {end} for the figure {figure}"
                problems.append(Problem("size-unknown", Severity.ERROR, says, hint=closest(end, sorted(known))))
        if all(end in known for end in ends):
            run = next((run for run in runs if set(ends) <= set(run)), ())
            first, last = (run.index(end) if run else 0 for end in ends)
            found += run[first : last + 1]
            if not run or first > last:
                problems.append(_not_understood(f"{part} is no range of sizes"))
    problems += [
        Problem("size-twice", Severity.ERROR, f"size {label} is there twice", hint="name each size once")
        for label in dict.fromkeys(label for label in found if found.count(label) > 1)
    ]
    if not found and not problems:
        problems.append(_not_understood("no size is named"))
    if problems:
        raise InputError(problems)
    return tuple(found)


def _runs(figure: Figure) -> tuple[tuple[str, ...], ...]:
    """The sizes of the tables, smallest first: by girth, and by letter."""
    if figure is Figure.WOMAN:
        girths = tuple(size.label for size in WOMEN_INTERVALS["bust"])
    else:
        girths = tuple(label for label in map(str, MEN_CM) if _is_size(label, figure))
    return girths, tuple(size.label for size in LETTER_CODES[figure])


def _is_size(label: str, figure: Figure) -> bool:
    try:
        size_wearer(label, figure)
    except InputError:
        return False
    return True


def _not_understood(says: str) -> Problem:
    hint = "write sizes and ranges from small to large: 84, 88, 92 or 84-104 or S-XL"
    return Problem("sizes-not-understood", Severity.ERROR, says, hint=hint)
