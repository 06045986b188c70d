"""`tapeline open`: the page, in the browser of this machine."""

from __future__ import annotations

from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.show import say

__all__ = ["COMMAND"]


@command(example="tapeline open marit.toml\ntapeline open --size 88")
@click.argument("docket", required=False, type=click.Path(path_type=Path))
@click.option("--size", help="A standard size to begin from, where there is no docket yet.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="The port to listen on.  [any that is free]")
@click.option("--browser/--no-browser", default=True, help="Open the browser, or only say the address.")
def open_(docket: Path | None, size: str | None, port: int, *, browser: bool) -> int:
    """Open the page.

    Everything that the commands do for one garment, with the drawing always in view. What you write is kept as you
    work; save the docket to a file of your choice from the page.
    """
    from tapeline.docket import template
    from tapeline.docket.file import docket_text
    from tapeline.styles import STYLES
    from tapeline.units import Unit
    from tapeline.web import serve

    first = docket_text(docket) if docket is not None else template(STYLES["tee"], Unit.CM, size)
    serve(docket, first, port=port, browser=browser, say=say)
    return 0


COMMAND = open_
