"""Which lays the engine is set to, in which order and for how long."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

__all__ = ["Start", "schedule"]

LEAST_S = 3.0
"""A shorter start finds little that the first plan has not."""


@dataclass(frozen=True, slots=True)
class Start:
    """One start of the engine: the size of the lay in shares of the garments, the seed, and how long."""

    size: int
    seed: int
    seconds: float


def schedule(
    sizes: Sequence[int],
    seconds: float,
    workers: int,
    used: Callable[[], Sequence[int]],
    *,
    many_orders: bool,
    seed: int = 0,
) -> Iterator[Start]:
    """Starts without end; who reads them stops when the time is over.

    Seeds differ by a per cent and more (measured), so several starts pay; so do small lays repeated. Where pieces lie
    in a row on a fold their order counts most, so there are more starts, and shorter ones.

    Args:
        sizes: Of the lays to try.
        seconds: There are.
        workers: Engines at the same time.
        used: The lays in the best row so far: those are worth another start.
        many_orders: Whether chance decides something that the engine cannot.
        seed: Of the first start.

    >>> from itertools import islice
    >>> [(start.size, start.seed) for start in islice(schedule((1, 2), 60, 2, lambda: (2,), many_orders=False), 4)]
    [(1, 0), (2, 1), (2, 2), (2, 3)]
    """
    seeds = itertools.count(seed)
    rounds = 6.0 if many_orders else 3.0
    if len(sizes) > 1:
        # Half of the time for a look at each size, the largest first: it needs it most.
        each = max(LEAST_S, seconds * workers / 2 / (len(sizes) + 1))
        for size in (sizes[0], *reversed(sizes[1:])):
            yield Start(size, next(seeds), each * (2 if size == sizes[-1] else 1))
    again = max(LEAST_S, seconds / rounds)
    while True:
        for size in dict.fromkeys(used() or sizes):
            yield Start(size, next(seeds), again)
