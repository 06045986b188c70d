"""`tapeline batch`: a list of orders, each drafted on its own."""

from __future__ import annotations

import os
from contextlib import nullcontext
from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.counted import counted
from tapeline.cli.options import force
from tapeline.cli.show import columns, say

__all__ = ["COMMAND"]


@command(example="tapeline batch orders.csv\ntapeline batch orders.csv --json-lines --out orders.jsonl --jobs 2")
@click.argument("orders", metavar="ORDERS.csv", type=click.Path(path_type=Path, readable=False))
@click.option("--json-lines", is_flag=True, help="One JSON object a line for each order, in the order of the list.")
@click.option("--out", type=click.Path(path_type=Path), help="Write the JSON lines into this file.")
@click.option(
    "--jobs", type=click.IntRange(1, 256), help="How many orders are drafted at once.  [processors there are]"
)
@force
def batch(orders: Path, out: Path | None, jobs: int | None, *, json_lines: bool, force: bool) -> int:
    """Draft a list of orders.

    Columns are name, figure, unit, size, the tapes by name, and any docket key, such as garment.looseness. A row that
    cannot be drafted becomes a line with its problems, and the others go on; the exit code is then 1.
    """
    from tapeline.cli.batch_run import answers
    from tapeline.cli.output import may_write, written_whole
    from tapeline.docket import orders as orders_of

    json_lines = json_lines or out is not None
    listed = orders_of(orders)
    if out is not None:
        may_write(out, orders, force=force)
    workers = min(jobs or os.cpu_count() or 1, len(listed))
    failed = 0
    rows = []
    with written_whole(out) if out is not None else nullcontext() as file:
        for answer in counted(answers(listed, workers, json_lines=json_lines), len(listed)):
            failed += not answer.holds
            if not json_lines:
                rows.append((str(answer.row), answer.name, answer.says))
            elif file is not None:
                file.write(answer.line + "\n")
            else:
                click.echo(answer.line)
    if not json_lines:
        columns(rows, ("row", "name", ""), "r")
    done = f"{len(listed) - failed} of {len(listed)} orders drafted"
    click.echo(f"{done}; {failed} with problems." if failed else f"{done}.", err=json_lines and out is None)
    if json_lines and out is not None:
        say(f"The lines are in {out}.")
    return 1 if failed else 0


COMMAND = batch
