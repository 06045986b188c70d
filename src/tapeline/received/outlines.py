"""The closed outlines among the lines of a layer; open ones are joined end to end where their ends meet."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace

from tapeline.received.shape import Chain, Place

__all__ = ["JOIN_MM", "Gap", "closed_chains"]

JOIN_MM = 0.1
"""Ends this near to each other are one: the width of a pencil line."""


@dataclass(frozen=True, slots=True)
class Gap:
    """An outline that does not close: from where to where it is open."""

    start: Place
    end: Place
    where: str

    def __str__(self) -> str:
        (x, y), (u, v) = self.end, self.start
        far = math.dist(self.start, self.end)
        return f"open by {far:.1f} mm, from ({x:.1f}, {y:.1f}) to ({u:.1f}, {v:.1f}) mm ({self.where})"


def closed_chains(chains: Sequence[Chain]) -> tuple[list[Chain], list[Gap]]:
    """Closed chains, each once, and those that stay open."""
    closed = [chain for chain in chains if chain.closed]
    still: list[Chain] = []
    for chain in chains:
        if not chain.closed:
            (closed if _meets(chain) else still).append(_shut(chain) if _meets(chain) else chain)
    joined = _joined(still)
    closed += [_shut(chain) for chain in joined if _meets(chain)]
    gaps = [Gap(chain.places[0], chain.places[-1], chain.where) for chain in joined if not _meets(chain)]
    return [chain for chain in closed if len(chain.places) > 2], gaps


def _meets(chain: Chain) -> bool:
    return len(chain.places) > 3 and math.dist(chain.places[0], chain.places[-1]) <= JOIN_MM


def _shut(chain: Chain) -> Chain:
    return replace(chain, places=chain.places[:-1], closed=True)


def _joined(chains: Sequence[Chain]) -> list[Chain]:
    """Runs of chains whose ends meet; looked up by place, so that thousands take no longer than they must."""
    ends: dict[tuple[int, int], list[int]] = defaultdict(list)
    for number, chain in enumerate(chains):
        for place in (chain.places[0], chain.places[-1]):
            ends[_cell(place)].append(number)
    used: set[int] = set()
    found = []
    for number, chain in enumerate(chains):
        if number in used:
            continue
        used.add(number)
        places = list(chain.places)
        for _ in range(2):  # on from its end, then from its beginning
            while (near := _next(places[-1], chains, ends, used)) is not None:
                used.add(near)
                more = chains[near].places
                places += more[1:] if math.dist(places[-1], more[0]) <= JOIN_MM else more[-2::-1]
            places.reverse()
        found.append(replace(chain, places=tuple(places)))
    return found


def _next(place: Place, chains: Sequence[Chain], ends: dict[tuple[int, int], list[int]], used: set[int]) -> int | None:
    x, y = _cell(place)
    for cell in ((x + dx, y + dy) for dx in (0, -1, 1) for dy in (0, -1, 1)):
        here = ends.get(cell)
        while here:
            # Those that are used go out of the list for good, so that a crowd in one place is walked once.
            number = here[-1]
            if number in used:
                here.pop()
                continue
            for other in reversed(here):
                both = (chains[other].places[0], chains[other].places[-1])
                if other not in used and any(math.dist(place, end) <= JOIN_MM for end in both):
                    return other
            break
    return None


def _cell(place: Place) -> tuple[int, int]:
    return math.floor(place[0] / (2 * JOIN_MM)), math.floor(place[1] / (2 * JOIN_MM))
