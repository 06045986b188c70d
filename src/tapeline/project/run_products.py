"""What is made of a run of sizes: nested print, drawing and projection, exchange file, report."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from tapeline.grade import Meet
from tapeline.problems import Problem
from tapeline.project.run_tables import chart_csv, grade_csv, run_document, run_tables
from tapeline.project.size_run import SizeRun

if TYPE_CHECKING:
    from tapeline.export import Exchanged, Nest, Print, Projection

__all__ = [
    "RUN_FILES",
    "RunFile",
    "nested_drawing",
    "nested_print",
    "nested_projection",
    "run_exchange",
    "run_file",
    "run_report",
]

RUN_FILES = {
    "print": "-sizes.pdf",
    "drawing": "-sizes.svg",
    "projection": "-sizes-projection.pdf",
    "exchange": "-sizes.dxf",
    "report": "-sizes.html",
    "data": "-sizes.json",
    "chart": "-sizes-chart.csv",
    "grade": "-sizes-grade.csv",
}
"""Kinds of files that a run is written to, and how each is called after its docket."""


@dataclass(frozen=True, slots=True)
class RunFile:
    """A file's bytes, and what is worth knowing about it."""

    data: bytes
    problems: tuple[Problem, ...] = ()


def run_file(run: SizeRun, kind: str, meet: Meet = Meet.CHEST, paper: str = "", *, seams: bool = False) -> RunFile:
    """One file of a run, by its kind in `RUN_FILES`; paper and seam lines are about the print.

    Raises:
        InputError: What the function for the kind says.
        KeyError: There is no such kind.
    """
    if kind == "print":
        made = nested_print(run, paper, meet, seams=seams)
        return RunFile(made.data, made.problems)
    if kind == "projection":
        made = nested_projection(run, meet=meet)
        return RunFile(made.data, made.problems)
    if kind == "exchange":
        exchanged = run_exchange(run)
        return RunFile(exchanged.data, exchanged.problems)
    return RunFile(_TEXTS[kind](run, meet).encode())


def _data(run: SizeRun, meet: Meet) -> str:
    from tapeline.export import text

    return f"{text(run_document(run, meet), indent=1)}\n"


def nested_print(
    run: SizeRun, paper: str = "", meet: Meet = Meet.CHEST, *, seams: bool = False, tables: bool = True
) -> Print:
    """All sizes on each other, true to scale on paper, a layer for each; behind them what there is to read.

    Args:
        run: The sizes.
        paper: A paper's name or a roll; empty for the docket's own.
        meet: At which height the sizes meet.
        seams: Show the seam lines when the file is opened; otherwise they are on a hidden layer.
        tables: Add pages with chart, uneven steps, tapes and grade table.

    Raises:
        InputError: `run-too-long`, and what `printed` says of papers.
    """
    from tapeline.export import nest_printed
    from tapeline.export import paper as paper_of

    on = paper_of(paper or run.docket.paper)
    return nest_printed(_nest(run, meet), on, run.docket.unit, run_tables(run, meet) if tables else (), seams=seams)


def nested_projection(run: SizeRun, look: Projection | None = None, meet: Meet = Meet.CHEST) -> Print:
    """The same on one page for a projector."""
    from tapeline.export import nest_projected

    return nest_projected(_nest(run, meet), look, run.docket.unit)


def nested_drawing(run: SizeRun, meet: Meet = Meet.CHEST) -> str:
    """The same as an SVG drawing, with a group for each size."""
    from tapeline.export import nest_svg

    return nest_svg(_nest(run, meet))


def run_exchange(run: SizeRun, release: str = "R12") -> Exchanged:
    """Every piece of every size as DXF by the open layer convention of garment patterns."""
    from tapeline.export import Release, exchange

    return exchange([size.finished for size in run.sizes], run.docket.unit, Release(release))


def run_report(run: SizeRun, meet: Meet = Meet.CHEST) -> str:
    """One page to read: the nested drawing, problems, chart, uneven steps, tapes, grade table."""
    from tapeline.export import MOST_SIZES
    from tapeline.sheets import run_page

    title = run.sizes[0].finished.title
    drawing = nested_drawing(run, meet) if len(run.sizes) <= MOST_SIZES else ""
    return run_page(title, whom(run), run_tables(run, meet), run.problems, drawing)


def whom(run: SizeRun) -> str:
    """Whom the run is for: `sizes 84 to 100`, or the people's names."""
    labels = run.labels
    if run.persons:
        return ", ".join(labels)
    return f"size {labels[0]}" if len(labels) == 1 else f"sizes {labels[0]} to {labels[-1]}"


def _nest(run: SizeRun, meet: Meet) -> Nest:
    from tapeline.export import nest

    return nest([size.finished for size in run.sizes], run.labels, whom(run), meet)


_TEXTS: dict[str, Callable[[SizeRun, Meet], str]] = {
    "drawing": nested_drawing,
    "report": run_report,
    "data": _data,
    "chart": lambda run, _: chart_csv(run),
    "grade": grade_csv,
}
"""What makes each file that is text."""
