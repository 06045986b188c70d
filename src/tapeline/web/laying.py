"""One lay at a time: the child process that looks for shorter plans, the best so far, and whoever watches."""

from __future__ import annotations

import asyncio
import json
import sys
from collections.abc import AsyncIterator
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any

__all__ = ["AlreadyLaying", "Laying"]

LONGEST_LINE = 64_000_000
"""Bytes of one plan with its picture."""
WATCH_S = 8.0
"""A stream of events ends after so long, and the browser opens the next: so the page can be stopped at any time."""
PATIENCE_S = 5.0
"""The child has so long to end by itself."""


class AlreadyLaying(Exception):  # noqa: N818 - it is no error, but taken
    """Another lay is under way."""


@dataclass(slots=True)
class Laying:
    """What is being laid on this table, if anything, and the best plan that was found."""

    best: dict[str, Any] = field(default_factory=dict)
    """The last plan: `n`, `picture`, `kept`, `said`, `rows`."""
    problem: str = ""
    under_way: bool = False
    changes: int = 0
    """Counts whatever there is to tell."""
    _child: asyncio.subprocess.Process | None = None
    _reading: asyncio.Task[None] | None = None
    _news: asyncio.Event = field(default_factory=asyncio.Event)

    async def start(self, asked: dict[str, Any]) -> None:
        """Lay what is asked for; raises `AlreadyLaying` while another lay is under way."""
        if self.under_way:
            raise AlreadyLaying
        self.under_way, self.best, self.problem = True, {}, ""
        self._tell()
        try:
            self._child = await asyncio.create_subprocess_exec(
                *(sys.executable, "-m", "tapeline.web.lay_work"),
                stdin=asyncio.subprocess.PIPE,
                stdout=asyncio.subprocess.PIPE,
                limit=LONGEST_LINE,
            )
            if self._child.stdin is None:
                raise OSError(32, "it cannot be spoken to")  # noqa: TRY301 - ends below like the others
            self._child.stdin.write((json.dumps(asked) + "\n").encode())
            await self._child.stdin.drain()
        except OSError as error:
            self.problem, self.under_way = f"nothing can be laid: {error.strerror}", False
            self._tell()
            return
        self._reading = asyncio.create_task(self._read(self._child))

    async def stop(self) -> None:
        """End it; the best plan stays."""
        child, reading = self._child, self._reading
        if child is None or child.stdin is None or not self.under_way:
            return
        with suppress(OSError):
            child.stdin.close()
        if reading is not None:
            with suppress(TimeoutError):
                await asyncio.wait_for(asyncio.shield(reading), PATIENCE_S)
        if child.returncode is None:
            with suppress(ProcessLookupError):
                child.kill()

    async def events(self, seen: int) -> AsyncIterator[str]:
        """What is new, as server-sent events, from after what was seen."""
        until = asyncio.get_running_loop().time() + WATCH_S
        yield "retry: 200\n\n"
        while (left := until - asyncio.get_running_loop().time()) > 0:
            news = self._news
            if self.changes > seen or not self.under_way:
                seen = self.changes
                yield f"id: {seen}\ndata: {json.dumps(self.told())}\n\n"
                if not self.under_way:
                    return
            with suppress(TimeoutError):
                await asyncio.wait_for(news.wait(), left)

    def told(self) -> dict[str, Any]:
        """The state in a few words; the picture is fetched by its number."""
        best = self.best
        return {
            "n": best.get("n", 0),
            "said": best.get("said", ""),
            "rows": best.get("rows", []),
            "problem": self.problem,
            "laying": self.under_way,
        }

    async def _read(self, child: asyncio.subprocess.Process) -> None:
        try:
            while child.stdout is not None and (line := await child.stdout.readline()):
                said = json.loads(line)
                if "problems" in said:
                    self.problem = " ".join(said["problems"])
                else:
                    self.best = said
                self._tell()
        except (ValueError, asyncio.LimitOverrunError):
            self.problem = "the plan could not be read"
            with suppress(ProcessLookupError):
                child.kill()
        await child.wait()
        if not self.best and not self.problem:
            self.problem = "no plan was found before it was stopped" if child.returncode == 0 else "laying failed"
        self.under_way = False
        self._tell()

    def _tell(self) -> None:
        self.changes += 1
        self._news.set()
        self._news = asyncio.Event()
