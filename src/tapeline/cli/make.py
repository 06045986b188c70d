"""`tapeline make`: everything from one docket: print, drawing, data and report."""

from __future__ import annotations

from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import say, show_problems
from tapeline.problems import InputError, Problem, Severity

__all__ = ["COMMAND"]


@command(example="tapeline make marit.toml --out out")
@docket
@click.option("--out", default=Path("out"), type=click.Path(path_type=Path), help="The folder to write into.  [out]")
@force
def make(docket: Path, out: Path, *, force: bool) -> int:
    """Draft, true, finish and print a docket in one go.

    Writes the print (PDF), the drawing (SVG), the data (JSON) and a report to read (HTML) into a folder.
    """
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import text, write_all
    from tapeline.project import document, draft, drawing, printed, report, today

    read = read_docket(docket)
    drafted = draft(read)
    date, name = today(), docket.stem
    made = printed(drafted, date=date)
    files = {
        out / f"{name}.pdf": made.data,
        out / f"{name}.svg": drawing(drafted, date).encode(),
        out / f"{name}.json": (text(document(drafted), indent=1) + "\n").encode(),
        out / f"{name}.html": report(drafted, date).encode(),
    }
    for path in files:
        may_write(path, docket, force=force)
    _folder(out)
    write_all(files)
    sheets = made.layout.sheets
    style = read.style.title.lower()
    say(f"Made a {style} for {read.wearer.name} in {out}: print, drawing, data and report of {name}.")
    say(f"Read {out / f'{name}.html'} first: pieces, seams, girths, and why each line is where it is.")
    count = f"{sheets} {'sheet' if sheets == 1 else 'sheets'}, {made.layout.paper.name}"
    say(f"Print {out / f'{name}.pdf'} ({count}) at 100 per cent; measure the test squares.")
    say(f"Ask why a line is there: tapeline explain {docket} back.armhole")
    say('Change the docket and make it again: looseness = "easy" is a good first change.')
    show_problems([*drafted.problems, *made.problems])
    return 0 if drafted.holds else 1


def _folder(path: Path) -> None:
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        says = f"the folder {path} cannot be made: {(error.strerror or str(error)).lower()}"
        hint = "choose another folder with --out. Nothing was written."
        raise InputError(Problem("cannot-write", Severity.ERROR, says, str(path), hint)) from error


COMMAND = make
