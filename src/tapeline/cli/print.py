"""`tapeline print`: the pieces, true to scale, as a PDF."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import say, show_problems

if TYPE_CHECKING:
    from tapeline.export import Projection

__all__ = ["COMMAND"]


@command(
    example="tapeline print marit.toml\ntapeline print marit.toml --paper 'roll 914 mm' --out marit.pdf\n"
    "tapeline print marit.toml --projector --inverted --wide 1200"
)
@docket
@click.option("--paper", default="", help="A4, A3, A2, A1, A0, Letter, 'roll 914 mm', 'roll 36 in'.  [the docket's]")
@click.option("--projector", is_flag=True, help="One page with all pieces, to be thrown onto the cloth.")
@click.option("--inverted", is_flag=True, help="The projection is white on black.")
@click.option("--wide", type=float, help="The projection is so many mm wide.  [1400]")
@click.option("--line", type=float, help="The projection's cut line is so many mm wide.  [1.5]")
@click.option("--no-grid", is_flag=True, help="No grid below the projection.")
@click.option("--out", type=click.Path(path_type=Path), help="The file to write.  [the docket's name with .pdf, here]")
@force
def print_(
    docket: Path,
    paper: str,
    wide: float | None,
    line: float | None,
    out: Path | None,
    *,
    projector: bool,
    inverted: bool,
    no_grid: bool,
    force: bool,
) -> int:
    """Print a garment's pieces, true to scale.

    Writes a PDF with test squares to check the scale with. Print it without any scaling, at 100 per cent.
    """
    if not projector:
        if inverted or no_grid or wide is not None or line is not None:
            raise click.UsageError("--inverted, --wide, --line and --no-grid are about a projection: add --projector")
        return _on_paper(docket, paper, out, force=force)
    if paper:
        raise click.UsageError("a projection needs no paper: leave --paper out, or --projector")
    from tapeline.export import Projection

    plain = Projection()
    look = Projection(
        plain.width_mm if wide is None else wide, plain.line_mm if line is None else line, inverted, not no_grid
    )
    return _projection(docket, look, out, force=force)


def _on_paper(docket: Path, paper: str, out: Path | None, *, force: bool) -> int:
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import paper as paper_of
    from tapeline.export import write_whole
    from tapeline.project import draft, printed, today

    out = out or Path(docket.with_suffix(".pdf").name)
    may_write(out, docket, force=force)
    read = read_docket(docket)
    on = paper_of(paper or read.paper)  # before anything is drafted for a paper that there is not
    drafted = draft(read)
    made = printed(drafted, on.name, today())
    write_whole(out, made.data)
    sheets = made.layout.sheets
    count = f"{sheets} {'sheet' if sheets == 1 else 'sheets'}, {on.name}"
    say(f"{out}: {read.style.title.lower()} for {read.wearer.name}, {count}.")
    say("Print at 100 per cent, then measure the test squares: 100 mm and 4 in.")
    show_problems([*drafted.problems, *made.problems])
    return 0 if drafted.holds else 1


def _projection(docket: Path, look: Projection, out: Path | None, *, force: bool) -> int:
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import write_whole
    from tapeline.project import draft, projection, today

    out = out or Path(f"{docket.stem}-projection.pdf")
    may_write(out, docket, force=force)
    read = read_docket(docket)
    drafted = draft(read)
    made = projection(drafted, look, today())
    write_whole(out, made.data)
    across, down = made.layout.size_mm
    say(f"{out}: {read.style.title.lower()} for {read.wearer.name}, {across:.0f} x {down:.0f} mm on one page.")
    say("Set the projector until the square measures what it says, both ways, and the grid is square everywhere.")
    show_problems([*drafted.problems, *made.problems])
    return 0 if drafted.holds else 1


COMMAND = print_
