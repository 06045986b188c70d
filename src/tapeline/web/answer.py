"""Answers that need no application: what the guard and the door say, under the same policy as the page."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, MutableMapping
from typing import Any

__all__ = ["HEADERS", "App", "Receive", "Scope", "Send", "answer"]

Scope = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[MutableMapping[str, Any]]]
Send = Callable[[MutableMapping[str, Any]], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

POLICY = (
    b"default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
    b"connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'"
)
"""Nothing from elsewhere, no script but our own files; drawings carry a style of their own."""
HEADERS = (
    (b"content-security-policy", POLICY),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cache-control", b"no-store"),
)


async def answer(send: Send, status: int, body: bytes, *headers: tuple[bytes, bytes]) -> None:
    """One whole answer, as plain text unless a header says otherwise."""
    heads = {b"content-type": b"text/plain; charset=utf-8", **dict(HEADERS), **dict(headers)}
    heads[b"content-length"] = str(len(body)).encode()
    await send({"type": "http.response.start", "status": status, "headers": list(heads.items())})
    await send({"type": "http.response.body", "body": body})
