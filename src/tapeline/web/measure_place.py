"""Measure: the tapes as typed, what the other tapes suggest, and what is estimated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tapeline.measures import LETTER_CODES, WOMEN_INTERVALS, Estimate, Figure, Tape, estimates, suggestion, tapes_of
from tapeline.problems import Problem
from tapeline.units import Unit
from tapeline.web.stand import HEIGHT, WIDTH, stand
from tapeline.web.view import View

__all__ = ["TapeRow", "tapes"]


@dataclass(frozen=True, slots=True)
class TapeRow:
    """One tape's line on the page."""

    tape: Tape
    typed: str
    suggested: str
    """What the other tapes suggest, or what is expected of a tape not taken; in words."""
    fill: str
    """The value in it, as it would be typed."""
    standard: str
    """The value that the standard size stands in with."""
    problems: tuple[Problem, ...]


def tapes(view: View) -> dict[str, Any]:
    """Everything the place shows."""
    typed = view.section("wearer", "tapes")
    expected = estimates(view.docket.wearer) if view.docket is not None else {}
    rows = [_row(view, tape, typed, expected) for tape in tapes_of(view.figure)]
    standard = "size" in view.section("wearer")
    missing = [row.tape.title.lower() for row in rows if row.tape.required and not row.typed and not standard]
    return {
        "rows": rows,
        "missing": ", ".join(missing),
        "figures": list(Figure),
        "units": list(Unit),
        "sizes": _sizes(view.figure),
        "wearer": view.section("wearer"),
        "elsewhere": [p for p in view.told if _is_elsewhere(p, rows) and p.code != "tape-missing"],
        "stand": stand(),
        "stand_size": (WIDTH, HEIGHT),
        "shown": {row.tape.name for row in rows},
        "doubted": {row.tape.name for row in rows if row.problems},
    }


def _is_elsewhere(problem: Problem, rows: list[TapeRow]) -> bool:
    """About the wearer, but about none of the tapes that stand here."""
    about_wearer = "wearer" in problem.where or problem.code.startswith(("tape", "size", "survey"))
    return about_wearer and not any(problem in row.problems for row in rows)


def _sizes(figure: Figure) -> list[str]:
    """Labels of the standard sizes of a figure; a child has none."""
    busts = WOMEN_INTERVALS["bust"] if figure is Figure.WOMAN else ()
    return [size.label for size in (*busts, *LETTER_CODES.get(figure, ()))]


def _row(
    view: View,
    tape: Tape,
    typed: Any,  # noqa: ANN401 - whatever was typed
    expected: Mapping[str, Estimate],
) -> TapeRow:
    value = typed.get(tape.name)
    problems = tuple(p for p in view.problems if _tape_of(p) == tape.name)
    suggested, fill = _suggested(view, tape, expected)
    standard = ""
    if value is None and view.docket is not None and view.docket.wearer.given(tape.name):
        standard = view.docket.wearer.show(tape.name)
    return TapeRow(tape, "" if value is None else str(value), suggested, fill, standard, problems)


def _suggested(view: View, tape: Tape, expected: Mapping[str, Estimate]) -> tuple[str, str]:
    if view.docket is None:
        return "", ""
    wearer = view.docket.wearer
    given = wearer.given(tape.name)
    found = suggestion(wearer, tape.name) if given else expected.get(tape.name)
    if found is None:
        return "", ""
    low, high = (tape.show(value, view.unit) for value in found.span())
    middle = tape.show(found.value, view.unit)
    words = f"the other tapes suggest {low} to {high}" if given else f"expected {middle}, between {low} and {high}"
    return words, middle


def _tape_of(problem: Problem) -> str:
    """The tape a problem stands at: its place ends in `hip = 9.8` on a line of the tapes, or names `tapes.hip`."""
    place = problem.where.rpartition(": ")[2]
    return place.partition("=")[0].strip().rpartition(".")[2]
