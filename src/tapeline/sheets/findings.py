"""What was found, worst first."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.problems import Problem, worst_first
from tapeline.sheets.html import paragraph, part, words

__all__ = ["findings"]


def findings(problems: Sequence[Problem]) -> str:
    """Every finding with its place and what to try."""
    if not problems:
        return part("findings", "Findings", paragraph("Nothing was found that is worth saying."))
    return part("findings", "Findings", '<ol class="findings">', *map(_finding, worst_first(problems)), "</ol>")


def _finding(problem: Problem) -> str:
    where = f'<p class="where">{words(problem.where)}</p>' if problem.where else ""
    hint = f"<p><b>Try:</b> {words(problem.hint)}</p>" if problem.hint else ""
    return (
        f'<li class="{problem.severity}"><p><strong>{problem.severity.capitalize()}:</strong> {words(problem.says)} '
        f"<code>{words(problem.code)}</code></p>{where}{hint}</li>"
    )
