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
    ensure_running()  # or it would end the holding back of Ctrl-C below
    waiting: deque[Future[list[Answer]]] = deque()
    try:
        while True:
            with stopping_waits():
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
def stopping_waits() -> Iterator[None]:
    """Hold Ctrl-C and the request to end back while workers are started, so that none is left without its task.

    Holding the signals back in this thread is not enough: another thread takes them, and they are answered in this one.
    Workers inherit that Ctrl-C is held back, and so are not stopped half way into Python.
    """
    came: list[int] = []
    before = {
        number: signal.signal(number, lambda came_now, _: came.append(came_now))
        for number in (signal.SIGINT, signal.SIGTERM)
    }
    try:
        with ctrl_c_held_back():
            yield
    finally:
        for number, way in before.items():
            signal.signal(number, way)
        for taken in came:
            signal.raise_signal(taken)


@contextmanager
def ctrl_c_held_back() -> Iterator[None]:
    """What is started meanwhile does not hear Ctrl-C, where the system can do that."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
