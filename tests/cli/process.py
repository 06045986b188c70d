"""The command, run as a person runs it: another process, its streams and its exit code."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

__all__ = ["EXAMPLES", "MARIT", "SOURCE", "Done", "can_be_interrupted", "clean", "tapeline"]

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src"
EXAMPLES = ROOT / "examples"

MARIT = (EXAMPLES / "tee.toml").read_text(encoding="utf-8")


@dataclass(frozen=True, slots=True)
class Done:
    """How a command ended."""

    code: int
    out: str
    err: str


def tapeline(*arguments: str | Path, cwd: Path, env: Mapping[str, str] | None = None) -> Done:
    """Run `tapeline ARGUMENTS` in a folder."""
    done = subprocess.run(
        [sys.executable, "-m", "tapeline", *map(str, arguments)],
        cwd=cwd,
        env={**clean(), **(env or {})},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    return Done(done.returncode, done.stdout, done.stderr)


def clean() -> dict[str, str]:
    """The environment, without what a terminal or an outer run has set."""
    kept = {name: value for name, value in os.environ.items() if name in {"PATH", "HOME", "LD_LIBRARY_PATH"}}
    return {**kept, "PYTHONPATH": str(SOURCE), "LC_ALL": "C.UTF-8", "COLUMNS": "80", "SOURCE_DATE_EPOCH": "1700000000"}


def can_be_interrupted() -> None:
    """In a new process, before the command: Ctrl-C ends it, even where the tests themselves run in the background."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
