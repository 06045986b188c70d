"""The page's server, as a maker starts it: another process, which can be killed and started again."""

from __future__ import annotations

import signal
import socket
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path

from tests.cli.process import clean

__all__ = ["Server"]


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listening:
        port: int = listening.getsockname()[1]
    return port


@dataclass(slots=True)
class Server:
    """`tapeline open --no-browser` on a port of its own, which keeps what is written in a folder of its own."""

    folder: Path
    docket: Path | None = None
    port: int = field(default_factory=_free_port)
    more: tuple[str, ...] = ()
    """Other words of the command."""
    address: str = ""
    """With the key in it."""
    process: subprocess.Popen[str] | None = None

    @property
    def origin(self) -> str:
        """The address without path and key."""
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> None:
        """Start, and wait until it says where it is."""
        words = [str(self.docket)] if self.docket else []
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tapeline", "open", *words, "--no-browser", "--port", str(self.port), *self.more],
            cwd=self.folder,
            env={**clean(), "XDG_STATE_HOME": str(self.folder / "state"), "PYTHONUNBUFFERED": "1"},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert self.process.stdout is not None
        first = self.process.stdout.readline()
        assert first.startswith("Tapeline is at "), first
        self.address = first.split()[-1]

    def kill(self) -> None:
        """End it as a power cut would: it can do nothing about it."""
        if self.process is not None:
            self.process.send_signal(signal.SIGKILL)
            self.process.communicate()
            self.process = None
