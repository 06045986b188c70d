"""`tapeline print`: the pieces, true to scale, as a PDF."""

from __future__ import annotations

from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import say, show_problems

__all__ = ["COMMAND"]


@command(example="tapeline print marit.toml\ntapeline print marit.toml --paper 'roll 914 mm' --out marit.pdf")
@docket
@click.option("--paper", default="", help="A4, A3, A2, A1, A0, Letter, 'roll 914 mm', 'roll 36 in'.  [the docket's]")
@click.option("--out", type=click.Path(path_type=Path), help="The file to write.  [the docket's name with .pdf, here]")
@force
def print_(docket: Path, paper: str, out: Path | None, *, force: bool) -> int:
    """Print a garment's pieces, true to scale.

    Writes a PDF with test squares to check the scale with. Print it without any scaling, at 100 per cent.
    """
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


COMMAND = print_
