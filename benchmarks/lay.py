"""`./run bench --lay`: how long the cloth has to be for every named style, against the bound that nothing can beat.

Each style in a standard size, 1, 5 and 20 garments to a lay, on 140 and 150 cm, open and folded: the shell alone. The
bound is the ground of the pieces over the width; density is bound over length.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tapeline.docket import Docket, docket_from_text
from tapeline.lay import LayPlan, Spread
from tapeline.problems import InputError
from tapeline.project import Drafted, draft, lay_plans, lay_tasks
from tapeline.styles import STYLES

__all__ = ["lay_rows", "time_lays"]

GARMENTS = (1, 5, 20)
WIDTHS_MM = (1400.0, 1500.0)
SPREADS = (Spread.OPEN, Spread.FOLDED)
HEAD = "| style | garments | cloth | length | a garment | bound | density | found after |"


def time_lays(seconds: float) -> None:
    """Prints a table in Markdown, a row as soon as it is laid."""
    print(f"\n{seconds:g} seconds for each lay; lengths in cm.\n")
    print(HEAD)
    print("|---" * (HEAD.count("|") - 1) + "|")
    for row in lay_rows(seconds):
        print(f"| {' | '.join(row)} |", flush=True)


def lay_rows(seconds: float, styles: tuple[str, ...] = tuple(STYLES)) -> Iterator[tuple[str, ...]]:
    """The rows of the table: style, garments, cloth, length, length of one, bound, density, when it was found."""
    for style in styles:
        drafted = draft(_docket(style))
        for count in GARMENTS:
            for width in WIDTHS_MM:
                for spread in SPREADS:
                    best = _laid(drafted, count, width, spread, seconds)
                    head = (style, str(count), f"{width / 10:g}, {spread}")
                    if best is None:
                        yield (*head, "does not fit", "", "", "", "")
                        continue
                    yield (
                        *head,
                        f"{best.length_mm / 10:.1f}",
                        f"{best.length_mm / 10 / count:.1f}",
                        f"{best.bound_mm / 10:.1f}",
                        f"{best.density:.1%}",
                        f"{best.seconds:.1f} s",
                    )


def _docket(style: str) -> Docket:
    return docket_from_text(f'wearer = {{ figure = "woman", size = "88" }}\ngarment = {{ style = "{style}" }}', style)


def _laid(drafted: Drafted, count: int, width: float, spread: Spread, seconds: float) -> LayPlan | None:
    best: LayPlan | None = None
    try:
        (task,) = lay_tasks(
            [drafted],
            garments=count,
            cloths=["shell"],
            changed=lambda cloth: replace(cloth, width_mm=width, spread=spread),
        )
        for best in lay_plans(task, seconds):  # noqa: B007 - the last one counts
            pass
    except InputError as error:
        if any(problem.code != "lay-too-narrow" for problem in error.problems):
            raise
    return best
