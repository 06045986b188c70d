"""Docket: the text itself, with its problems at their lines."""

from __future__ import annotations

import re
from dataclasses import dataclass

from tapeline.problems import Problem
from tapeline.web.view import View

__all__ = ["PlacedProblem", "lines"]

_LINE = re.compile(r"line (\d+)")


@dataclass(frozen=True, slots=True)
class PlacedProblem:
    """A problem, and the line of the docket it stands at."""

    problem: Problem
    line: int | None


def lines(view: View) -> list[PlacedProblem]:
    """The problems that are told: those that stand at a line first, by line; then the others, worst first."""
    placed = [PlacedProblem(problem, _line(problem)) for problem in view.told]
    return sorted(placed, key=lambda found: (found.line is None, found.line or 0))


def _line(problem: Problem) -> int | None:
    found = _LINE.search(problem.where)
    return int(found[1]) if found else None
