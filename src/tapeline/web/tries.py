"""How often a password may be tried: a wrong one costs a wait, which grows, for the address that it came from."""

from __future__ import annotations

import math
import time
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field

__all__ = ["Tries"]

FREE = 3
"""Wrong tries without a wait: anybody mistypes."""
LONGEST = 60.0
"""Seconds: whoever has forgotten the password is not kept out for longer by having guessed often."""
FORGOTTEN = 900.0
"""Seconds without a wrong try, after which they are forgotten."""
MOST_ADDRESSES = 1000
"""Remembered; an attacker with more of them than this fills no memory."""
MOST_AT_ONCE = 20
"""Tries of everybody together, at once and in a second: one who changes the address with every try is slowed too."""


@dataclass(slots=True)
class Tries:
    """Counts wrong tries by address. The times are seconds of a clock that never goes back.

    >>> now = 0.0
    >>> tries = Tries(clock=lambda: now)
    >>> for _ in range(4):
    ...     tries.wrong("192.0.2.7")
    >>> tries.wait("192.0.2.7"), tries.wait("192.0.2.8")
    (2, 0)
    >>> now = 2.0
    >>> tries.wait("192.0.2.7")
    0
    """

    clock: Callable[[], float] = time.monotonic
    by_address: OrderedDict[str, tuple[int, float]] = field(default_factory=OrderedDict)
    """Wrong tries, and when the last one was; the longest unused first."""
    left: float = MOST_AT_ONCE
    """Tries that everybody together still has."""
    seen: float | None = None
    """When the last of them was counted."""

    def wait(self, address: str) -> int:
        """Whole seconds until the next try from an address is looked at; 0 for now, and then it counts as made."""
        now = self.clock()
        wrong, last = self.by_address.get(address, (0, now))
        if now - last >= FORGOTTEN:
            self.right(address)
            wrong = 0
        # The power is taken of a small number: after a thousand tries it is no number any more.
        own = last + min(LONGEST, 2.0 ** (min(wrong, 20) - FREE)) - now if wrong >= FREE else 0.0
        if own > 0:
            return math.ceil(own)
        since = 0.0 if self.seen is None else now - self.seen
        self.left, self.seen = min(MOST_AT_ONCE, self.left + since * MOST_AT_ONCE), now
        if self.left < 1:
            return 1
        self.left -= 1
        return 0

    def wrong(self, address: str) -> None:
        """Count a wrong try."""
        count, _ = self.by_address.pop(address, (0, 0.0))
        self.by_address[address] = (count + 1, self.clock())
        if len(self.by_address) > MOST_ADDRESSES:
            self.by_address.popitem(last=False)

    def right(self, address: str) -> None:
        """Forget the wrong tries of an address."""
        self.by_address.pop(address, None)
