"""Timing of functions and of whole processes; medians, because a machine that does other things has bad moments."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median

__all__ = ["in_turns", "medians_of", "process"]

ROOT = Path(__file__).resolve().parent.parent


def medians_of(function: Callable[[], object], runs: int) -> float:
    """Median seconds of a function, after one run that is not counted."""
    function()
    return median(_seconds(function) for _ in range(runs))


def in_turns(functions: Sequence[Callable[[], object]], runs: int, *, first_counts: bool = False) -> list[float]:
    """Median seconds of each; they take turns, so that a slow minute of the machine falls on all of them.

    `first_counts` spares the run that warms up, for what takes so long that warming up does not show.
    """
    for function in () if first_counts else functions:
        function()
    rounds = [[_seconds(function) for function in functions] for _ in range(runs)]
    return [median(row[n] for row in rounds) for n in range(len(functions))]


def process(*arguments: str, codes: Sequence[int] = (0,)) -> Callable[[], str]:
    """A whole run of this Python with these arguments.

    Raises `RuntimeError` when it ends otherwise than expected, so that no failure is taken for speed.
    """
    paths = (str(ROOT / "src"), os.environ.get("PYTHONPATH", ""))
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(path for path in paths if path)}

    def run() -> str:
        done = subprocess.run(
            [sys.executable, *arguments], cwd=ROOT, env=environment, capture_output=True, text=True, check=False
        )
        if done.returncode not in codes:
            raise RuntimeError(f"{' '.join(arguments)} ended with {done.returncode}:\n{done.stderr}")
        return done.stdout + done.stderr

    return run


def _seconds(function: Callable[[], object]) -> float:
    start = time.perf_counter()
    function()
    return time.perf_counter() - start
