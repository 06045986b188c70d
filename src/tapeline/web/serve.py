"""Opening the page: a server for this machine alone, and the browser shown to it."""

from __future__ import annotations

import gc
import hashlib
import os
import socket
import webbrowser
from collections.abc import Callable
from pathlib import Path

import uvicorn

from tapeline.web.app import application
from tapeline.web.guard import Guard, new_key
from tapeline.web.journal import Journal
from tapeline.web.table import Table

__all__ = ["kept_in", "serve"]


def kept_in(docket: Path | None) -> Path:
    """Where the journal of a docket is kept: in the folder for such things of whoever runs this."""
    base = os.environ.get("XDG_STATE_HOME") or str(Path.home() / ".local" / "state")
    name = (
        "new" if docket is None else f"{docket.stem}-{hashlib.sha256(str(docket.resolve()).encode()).hexdigest()[:12]}"
    )
    return Path(base) / "tapeline" / f"{name}.jsonl"


def serve(
    docket: Path | None, first: str, *, port: int = 0, browser: bool = True, say: Callable[[str], None] = print
) -> None:
    """Serve the page until it is stopped.

    Args:
        docket: Its file; None for a docket that has none yet.
        first: The docket's text, where no journal of it is kept.
        port: 0 for any that is free.
        browser: Whether to open the browser.
        say: Tells the maker the address.
    """
    with socket.create_server(("127.0.0.1", port)) as listening:
        # Head and body of an answer are sent apart: without this the second waits 40 ms for word of the first.
        listening.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        number = listening.getsockname()[1]
        key = new_key()
        address = f"http://127.0.0.1:{number}/?key={key}"
        table = Table(Journal.opened(kept_in(docket), first), docket.name if docket else "new.toml")
        guard = Guard(application(table), key)
        say(f"Tapeline is at {address}")
        say("It answers this machine only. Stop it with Ctrl-C; what you wrote is kept.")
        if browser:
            webbrowser.open(address)
        # What is there now stays: without this every long search for garbage goes through all of it, in mid-typing.
        _ = table.view
        gc.collect()
        gc.freeze()
        config = uvicorn.Config(guard, log_level="warning", access_log=False, lifespan="off")
        uvicorn.Server(config).run(sockets=[listening])
