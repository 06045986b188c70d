"""A connection from another machine: no address has many, and none is held open by asking slowly.

Without this, whoever opens connections and never finishes a request keeps everybody else out.
"""

from __future__ import annotations

import asyncio
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

__all__ = ["Connection"]

LATE = 10.0
"""Seconds in which a request's head has to have come; a connection at rest is closed sooner."""
MOST_OF_ONE = 60
"""Connections from one address at once: ten browsers' worth."""


class Connection(H11Protocol):
    """One connection, watched."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]  # as uvicorn writes it
        """Take a connection, or close it where its address has enough of them."""
        super().connection_made(transport)
        self._seen: Any = None
        address = self.client[0] if self.client else ""
        if sum(bool(other.client) and other.client[0] == address for other in self.connections) > MOST_OF_ONE:  # type: ignore[union-attr, index]  # all are ours
            transport.abort()
        else:
            self.loop.call_later(LATE, self._look)

    def _look(self) -> None:
        if self.transport.is_closing():
            return
        asked: Any = self.cycle  # none before the first request
        at_rest = asked is None or asked.response_complete
        if at_rest and asked is self._seen:  # nothing was asked since the last look
            self.transport.abort()
            return
        self._seen = asked
        self.loop.call_later(LATE, self._look)
