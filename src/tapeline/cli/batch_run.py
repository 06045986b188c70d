"""The orders of a batch, spread over processes and brought back in their order."""

from __future__ import annotations

import signal
from collections import deque
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from contextlib import contextmanager
from itertools import islice
from multiprocessing import get_context
from multiprocessing.resource_tracker import ensure_running

from tapeline.cli.batch_row import Answer, answer
from tapeline.docket import Order

__all__ = ["answers"]

ORDERS_AT_ONCE = 4
"""Sent to a worker in one go: few enough that the bar moves, enough that sending costs nothing."""
AHEAD = 3
"""Lots that wait for each worker: a slow one does not hold up the others, and memory stays small."""


def answers(orders: Sequence[Order], workers: int, *, json_lines: bool) -> Iterator[Answer]:
    """The answers, in the order of the orders; with one worker nothing but this process is used."""
    if workers <= 1 or len(orders) <= ORDERS_AT_ONCE:
        for order in orders:
            yield answer(order, json_lines=json_lines)
        return
    lots = iter([orders[n : n + ORDERS_AT_ONCE] for n in range(0, len(orders), ORDERS_AT_ONCE)])
    # Spawned, not forked: a fork of a process with threads may hang.
    pool = ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=leave_stopping_to_parent)
    ensure_running()  # or it would end the waiting of Ctrl-C below
    waiting: deque[Future[list[Answer]]] = deque()
    try:
        while True:
            with ctrl_c_waits():
                for lot in islice(lots, workers * AHEAD - len(waiting)):
                    waiting.append(pool.submit(answer_lot, lot, json_lines))
            if not waiting:
                return
            yield from waiting.popleft().result()
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def answer_lot(orders: Sequence[Order], json_lines: bool) -> list[Answer]:  # noqa: FBT001 - sent to another process
    """The answers of a few orders."""
    return [answer(order, json_lines=json_lines) for order in orders]


def leave_stopping_to_parent() -> None:
    """Ctrl-C reaches every process of the terminal; the first one ends the others."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


@contextmanager
def ctrl_c_waits() -> Iterator[None]:
    """Hold Ctrl-C back while workers are started: they inherit that, and so are not stopped half way into Python."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
