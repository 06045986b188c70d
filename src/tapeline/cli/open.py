"""`tapeline open`: the page, in the browser of this machine; with a password, for other machines too."""

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
@click.option("--host", metavar="ADDRESS", default="127.0.0.1", help="Listen there.  [127.0.0.1: this machine only]")
@click.option(
    "--password-file",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Ask for the password in it: at least 12 letters, in a file that its owner alone may read.",
)
@click.option("--browser/--no-browser", default=True, help="Open the browser, or only say the address.")
def open_(
    docket: Path | None, size: str | None, port: int, host: str, password_file: Path | None, *, browser: bool
) -> int:
    """Open the page.

    Everything that the commands do for one garment, with the drawing always in view. What you write is kept as you
    work; save the docket to a file of your choice from the page.

    It answers this machine only. At another address it wants a password file, is not encrypted, and lets everybody
    with the password see and change this docket.
    """
    from tapeline.cli.host import address_of, listen
    from tapeline.cli.password import password_of
    from tapeline.docket import template
    from tapeline.docket.file import docket_text
    from tapeline.styles import STYLES
    from tapeline.units import Unit
    from tapeline.web import Password, serve

    address = address_of(host, password=password_file is not None)
    password = Password.of(password_of(password_file)) if password_file is not None else None
    first = docket_text(docket) if docket is not None else template(STYLES["tee"], Unit.CM, size)
    with listen(address, port) as listening:
        serve(listening, docket, first, password=password, browser=browser, say=say)
    return 0


COMMAND = open_
