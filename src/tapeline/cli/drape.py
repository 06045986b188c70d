"""`tapeline drape`: how the cloth hangs; for now, the solver beside the textbooks."""

from __future__ import annotations

import json
from dataclasses import asdict

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json
from tapeline.cli.show import columns, say

__all__ = ["COMMAND"]


@command(example="tapeline drape --check")
@click.option("--check", "checks", is_flag=True, help="Solve cloths of a known answer, and show both in a table.")
@as_json
def drape(*, checks: bool, as_json: bool) -> None:
    """Hold the solver of the cloth against textbooks.

    Strips that hang and bend, tubes on larger cylinders, and the same cloth mirrored and turned: what the textbooks
    say, what the solver finds, and how far apart they may be. Exits with 1 when one is further apart.
    """
    if not checks:
        raise click.UsageError("say --check: draping a docket's garment is not there yet")
    from tapeline.drape.check import check
    from tapeline.drape.ready import ready

    seconds = ready()
    rows = list(check())
    if as_json:
        data = [{**asdict(row), "off": row.off, "holds": row.holds} for row in rows]
        say(json.dumps({"ready_seconds": round(seconds, 2), "rows": data}, indent=2))
    else:
        say(f"The solver was ready after {seconds:.1f} s; its machine code is kept for the next time.")
        say()
        cells = [
            (
                row.what,
                f"{row.edge:g}",
                f"{row.exact:.3f}",
                f"{row.found:.3f}",
                f"{row.off:+.3f}",
                f"{row.allowed:.3f}",
                row.unit,
                "holds" if row.holds else "DOES NOT HOLD",
            )
            for row in rows
        ]
        columns(cells, head=("cloth", "edge mm", "exact", "found", "off", "allowed", "in", ""), right=" rrrrr")
    if not all(row.holds for row in rows):
        raise click.exceptions.Exit(1)


COMMAND = drape
