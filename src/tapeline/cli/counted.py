"""A bar that shows how far a long run of work is, on a terminal and nowhere else."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from typing import TypeVar

__all__ = ["counted"]

_Done = TypeVar("_Done")


def counted(found: Iterable[_Done], total: int, says: str = "Drafting") -> Iterator[_Done]:
    """The same, with a bar on a terminal."""
    if not sys.stderr.isatty() or os.environ.get("TERM") == "dumb":
        yield from found
        return
    from rich.console import Console
    from rich.progress import track

    yield from track(found, says, total=total, console=Console(stderr=True), transient=True)
