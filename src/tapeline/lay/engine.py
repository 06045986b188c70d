"""The strip-packing engine at arm's length: a task goes to a child process, feasible plans come back as they are found.

The engine (spyrrow) keeps outlines strictly apart, may panic, and is stopped only by a signal on its main thread: so it
works in a process of its own, and whatever happens there is a message here.
"""

from __future__ import annotations

import json
import os
import queue
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Self

from tapeline.geometry import Outline

__all__ = ["Found", "Item", "Run", "Task", "cores"]

CHILD = Path(__file__).with_name("child.py")
STOPPING_S = 3.0
"""An engine that is asked to stop gives its best within a tenth of this on a quiet machine (measured), or is ended."""


@dataclass(frozen=True, slots=True)
class Item:
    """One outline for the engine: how often, and in which turns in degrees; None for any turn."""

    name: str
    outline: Outline
    demand: int
    turns: tuple[float, ...] | None


@dataclass(frozen=True, slots=True)
class Task:
    """Lay all items on a strip of a height, as short as can be."""

    height: float
    items: tuple[Item, ...]
    seconds: float
    """How long it may take; a fifth of it is spent on pressing the best plan together."""
    seed: int = 0
    workers: int = 1
    pressing: float = 0.2
    """That fifth."""


@dataclass(frozen=True, slots=True)
class Found:
    """A feasible plan of the engine's: item, turn in degrees about the item's origin, then shift."""

    length: float
    placed: tuple[tuple[str, float, float, float], ...]


class Run:
    """An engine at work. Use it in a `with` block, which ends it whatever happens.

    >>> from tapeline.geometry import Point
    >>> square = Item("cuff", tuple(map(lambda c: Point(*c), [(0, 0), (9, 0), (9, 9), (0, 9)])), 4, (0.0,))
    >>> with Run(Task(20, (square,), 2)) as run:
    ...     best = list(run.plans(time.monotonic() + 1))[-1]
    >>> len(best.placed), 18 <= best.length < 19
    (4, True)
    """

    def __init__(self, task: Task) -> None:
        self.task = task
        self.failed = ""
        self.ended = False
        self._lines: queue.Queue[str | None] = queue.Queue()
        self._process = subprocess.Popen(  # noqa: S603 - this Python, and a file of this package
            [sys.executable, "-P", str(CHILD)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            start_new_session=True,  # Ctrl-C in a terminal is for who asked, who then stops the engine
        )
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()
        pressing = max(1, round(task.seconds * task.pressing))
        message = {
            "height": task.height,
            "items": [
                {
                    "id": item.name,
                    "shape": [(p.x, p.y) for p in item.outline],
                    "demand": item.demand,
                    "turns": None if item.turns is None else list(item.turns),
                }
                for item in task.items
            ],
            # Whole seconds; who asked stops it when the time is over.
            "exploring": max(1, round(task.seconds) - pressing),
            "compressing": pressing,
            "workers": task.workers,
            "seed": task.seed,
        }
        self._said = self._process.stdin
        with suppress(BrokenPipeError):
            if self._said is not None:
                self._said.write(json.dumps(message) + "\n")
                self._said.flush()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    def ready(self) -> Iterator[Found]:
        """What was found since the last call; does not wait."""
        while True:
            try:
                line = self._lines.get_nowait()
            except queue.Empty:
                return
            yield from self._understood(line)

    def plans(self, until: float) -> Iterator[Found]:
        """Each better plan as it comes, until a time of `time.monotonic`; then the engine is stopped, and its last."""
        while not self.ended and (left := until - time.monotonic()) > 0:
            with suppress(queue.Empty):
                yield from self._understood(self._lines.get(timeout=left))
        yield from self.stopped()

    def stopped(self) -> Iterator[Found]:
        """Stop it; what it gives last."""
        self.interrupt()
        until = time.monotonic() + STOPPING_S
        while not self.ended and (left := until - time.monotonic()) > 0:
            with suppress(queue.Empty):
                yield from self._understood(self._lines.get(timeout=left))

    def interrupt(self) -> None:
        """Ask it to give what it has."""
        if self._process.poll() is None and not self.ended:
            self._process.send_signal(signal.SIGINT)

    def end(self) -> None:
        """End the process."""
        if self._process.poll() is None:
            self._process.kill()
        self._process.wait()
        self.ended = True
        self._reader.join()
        for stream in (self._process.stdin, self._process.stdout):
            if stream is not None:
                with suppress(OSError):
                    stream.close()

    def _read(self) -> None:
        if self._process.stdout is not None:
            for line in self._process.stdout:
                self._lines.put(line)
        self._lines.put(None)

    def _understood(self, line: str | None) -> Iterator[Found]:
        if line is None:
            if not self.ended:
                self.failed = self.failed or "the engine's process ended"
            self.ended = True
            return
        message = json.loads(line)
        if "placed" in message:
            yield Found(message["length"], tuple((str(i), r, x, y) for i, r, x, y in message["placed"]))
        elif "failed" in message:
            self.failed, self.ended = message["failed"], True
        else:
            self.ended = True


def cores() -> int:
    """How many processors this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
