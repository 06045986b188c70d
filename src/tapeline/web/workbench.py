"""Work that takes a second: done beside the answering, a few pieces at a time, and no queue that never ends."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from dataclasses import dataclass
from typing import ParamSpec, TypeVar

__all__ = ["Busy", "Workbench"]

P = ParamSpec("P")
R = TypeVar("R")

MOST = 16
"""Pieces of work on the bench or waiting for it: about ten seconds of it."""


class Busy(Exception):  # noqa: N818 - it is no error, but full
    """The bench is full; ask again in a moment."""


@dataclass(slots=True)
class Workbench:
    """Counts the work that is asked for."""

    now: int = 0

    async def do(self, work: Callable[P, R], *args: P.args, **kwargs: P.kwargs) -> R:
        """Do it in a thread; raises `Busy` where too much waits already."""
        if self.now >= MOST:
            raise Busy
        self.now += 1
        try:
            return await asyncio.to_thread(work, *args, **kwargs)
        finally:
            self.now -= 1
