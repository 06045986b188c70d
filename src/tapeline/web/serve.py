"""Opening the page: a server for this machine alone, or for whoever has the password, and the browser shown to it."""

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
from tapeline.web.connection import Connection
from tapeline.web.door import Door, Password
from tapeline.web.guard import Guard, new_key
from tapeline.web.journal import Journal
from tapeline.web.table import Table

__all__ = ["kept_in", "serve"]

LOOPBACK = "127.0.0.1"
UNENCRYPTED = "What is sent is not encrypted (there is no TLS): others on the network could read docket and password."
GARBAGE_AFTER = 20_000
"""New values before a search for those that hold each other and nobody else."""
MOST_CONNECTIONS = 500
"""At once, where other machines reach it; who comes beyond them is told to come again."""


def kept_in(docket: Path | None) -> Path:
    """Where the journal of a docket is kept: in the folder for such things of whoever runs this."""
    base = os.environ.get("XDG_STATE_HOME") or str(Path.home() / ".local" / "state")
    name = (
        "new" if docket is None else f"{docket.stem}-{hashlib.sha256(str(docket.resolve()).encode()).hexdigest()[:12]}"
    )
    return Path(base) / "tapeline" / f"{name}.jsonl"


def serve(
    listening: socket.socket,
    docket: Path | None,
    first: str,
    *,
    password: Password | None = None,
    browser: bool = True,
    say: Callable[[str], None] = print,
) -> None:
    """Serve the page until it is stopped.

    Args:
        listening: The address and port, taken already.
        docket: Its file; None for a docket that has none yet.
        first: The docket's text, where no journal of it is kept.
        password: Asked for before anything is shown; without one, the address has a key in it.
        browser: Whether to open the browser.
        say: Tells the maker the address, and who can reach it.
    """
    # Head and body of an answer are sent apart: without this the second waits 40 ms for word of the first.
    listening.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    host, port = listening.getsockname()[:2]
    named = f"[{host}]" if listening.family is socket.AF_INET6 else host
    exactly = frozenset({f"{named}:{port}", *([named] if port == 80 else [])})  # browsers leave 80 out
    key = new_key()
    address = f"http://{named}:{port}/" + (f"?key={key}" if password is None else "")
    table = Table(Journal.opened(kept_in(docket), first), docket.name if docket else "new.toml")
    if password is None and host == LOOPBACK:
        guard = Guard(application(table), key)
    elif password is None:
        guard = Guard(application(table), key, exactly=exactly)
    else:
        table.shared = f"http://{named}:{port}/"
        guard = Guard(application(table), key, exactly=exactly, door=Door(password, f"{named}:{port}"))
    for line in _meaning(address, named, password):
        say(line)
    if browser:
        webbrowser.open(address)
    # What is there now stays: without this every long search for garbage goes through all of it, in mid-typing.
    _ = table.view
    gc.collect()
    gc.freeze()
    # A drawing makes a few thousand values that are gone with the next: looked for less often, they are found as well.
    gc.set_threshold(GARBAGE_AFTER)
    config = uvicorn.Config(
        guard,
        log_level="warning",
        access_log=False,
        lifespan="off",
        # An address that a request names for itself would be a new one with every wrong password.
        proxy_headers=False,
        http="auto" if password is None else Connection,
        limit_concurrency=MOST_CONNECTIONS if password is not None else None,
    )
    uvicorn.Server(config).run(sockets=[listening])


def _meaning(address: str, named: str, password: Password | None) -> list[str]:
    """What the maker is told: the address, who can reach it, and how to stop."""
    stop = "Stop it with Ctrl-C; what you wrote is kept."
    if password is None:
        return [f"Tapeline is at {address}", f"It answers this machine only. {stop}"]
    here = named.startswith("127.") or named == "[::1]"
    who = (
        "everybody who works on this machine"
        if here
        else f"every machine that reaches {named}, so perhaps all of its network"
    )
    return [
        f"Tapeline is at {address}",
        f"Who can reach it: {who}. It asks for the password in your file.",
        "Everybody with the password sees this docket and changes it, as you do.",
        f"{UNENCRYPTED} Use a network that you trust, and a password that you use nowhere else.",
        stop,
    ]
