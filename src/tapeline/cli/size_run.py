"""`tapeline size-run`: one docket in several sizes, each drafted by the rules."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import columns, heading, paragraph, say, show_problems

if TYPE_CHECKING:
    from tapeline.docket import Docket
    from tapeline.export import RunTable
    from tapeline.measures import Wearer
    from tapeline.project import SizeRun

__all__ = ["COMMAND"]

KINDS = ("print", "drawing", "projection", "exchange", "report", "data", "chart", "grade")


@command(
    example="tapeline size-run marit.toml --sizes 84-100\n"
    "tapeline size-run marit.toml --sizes S-XL --as print --as exchange\n"
    "tapeline size-run marit.toml --table sizes.csv --as report"
)
@docket
@click.option("--sizes", help="Standard sizes: 84,88,92 or 84-100 or S-XL.")
@click.option("--table", type=click.Path(path_type=Path), help="A file with your own tapes by size, CSV or TOML.")
@click.option(
    "--wearers",
    multiple=True,
    type=click.Path(path_type=Path),
    help="A docket whose wearer is a size of the run; give it again for each.",
)
@click.option(
    "--as",
    "kinds",
    multiple=True,
    type=click.Choice(KINDS),
    help="A file to write; give it again for each. print: nested PDF with a layer for each size. drawing: nested SVG. "
    "projection: PDF for a projector. exchange: DXF with every size. report: HTML. data: JSON. chart, grade: CSV.",
)
@click.option("--meet", type=click.Choice(["chest", "neck"]), default="chest", help="Where sizes meet.  [chest]")
@click.option("--paper", default="", help="Of the print: A4, A0, Letter, 'roll 914 mm'.  [the docket's]")
@click.option("--seam-lines", is_flag=True, help="The print shows its layer of seam lines.")
@click.option("--points", is_flag=True, help="Show how every point moves from size to size too.")
@click.option("--go-on", is_flag=True, help="Make the other sizes when one cannot be made.")
@click.option("--out", default=Path(), type=click.Path(path_type=Path), help="The folder to write into.  [here]")
@force
def size_run(
    docket: Path,
    *,
    sizes: str | None,
    table: Path | None,
    wearers: tuple[Path, ...],
    kinds: tuple[str, ...],
    meet: str,
    paper: str,
    out: Path,
    seam_lines: bool,
    points: bool,
    go_on: bool,
    force: bool,
) -> int:
    """Draft a docket in several sizes, none of them scaled.

    Each is drafted by the rules from its own tapes. Shows what the garment measures in each size and which steps are
    not even, and why; with --as it writes files. The docket's own wearer is not drafted.
    """
    if sum(bool(given) for given in (sizes, table, wearers)) != 1:
        raise click.UsageError("say which sizes: --sizes, or --table, or --wearers")
    if (paper or seam_lines) and "print" not in kinds:
        raise click.UsageError("--paper and --seam-lines are about the print: add --as print")
    from tapeline.cli.counted import counted
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import paper as paper_of
    from tapeline.export import write_all
    from tapeline.grade import Meet
    from tapeline.project import run_file, run_tables, today
    from tapeline.project import size_run as drafted_run
    from tapeline.project.run_products import RUN_FILES

    read = read_docket(docket)
    paper_of(paper or read.paper)  # before anything is drafted for a paper that there is not
    paths = {kind: out / f"{docket.stem}{RUN_FILES[kind]}" for kind in kinds}
    for path in paths.values():
        may_write(path, docket, force=force)
    asked = _asked(read, sizes, table, wearers)
    run = drafted_run(
        read, asked, today(), go_on=go_on, persons=bool(wearers), told=lambda labels: counted(labels, len(asked))
    )
    at = Meet(meet)
    made = {path: run_file(run, kind, at, paper, seams=seam_lines) for kind, path in paths.items()}
    write_all({path: file.data for path, file in made.items()})
    chart, uneven, _, grade = run_tables(run, at)
    _show(run, chart, uneven)
    if points:
        heading(grade.title)
        paragraph(" ".join(grade.says), "  ")
        columns(grade.rows, grade.head, "ll" + "r" * len(run.labels))
    if made:
        say()
    for path in made:
        say(f"{path}: {read.style.title.lower()}, {', '.join(run.labels)}.")
    show_problems([*run.problems, *(problem for file in made.values() for problem in file.problems)])
    return 0 if run.holds else 1


def _asked(read: Docket, sizes: str | None, table: Path | None, wearers: tuple[Path, ...]) -> dict[str, Wearer]:
    from tapeline.project import standard_sizes, table_sizes, wearers_of

    if sizes is not None:
        return standard_sizes(read, sizes)
    return table_sizes(read, table) if table is not None else wearers_of(read, wearers)


def _show(run: SizeRun, chart: RunTable, uneven: RunTable) -> None:
    say(run.title)
    heading(chart.title)
    columns(chart.rows, chart.head, "l" + "r" * len(run.labels))
    heading(uneven.title)
    if not uneven.rows:
        paragraph(uneven.says[0], "  ")
    for measure, span, step, usual, because in uneven.rows:
        paragraph(f"{measure}, {span}: {step}, usually {usual}: {because}.", "  ", "    ")


COMMAND = size_run
