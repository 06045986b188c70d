"""Who may speak to the page: this machine's own browser, with the key that was handed out when it was opened.

Refused are foreign host names (a web site that points its name at this machine), foreign origins (another site's page
that posts here), and whoever does not have the key.
"""

from __future__ import annotations

import hmac
import secrets
from collections.abc import Awaitable, Callable, MutableMapping
from dataclasses import dataclass
from http.cookies import CookieError, SimpleCookie
from typing import Any
from urllib.parse import parse_qs

__all__ = ["Guard", "new_key"]

Scope = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[MutableMapping[str, Any]]]
Send = Callable[[MutableMapping[str, Any]], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

MOST_BYTES = 1_000_000
"""A docket has a few thousand letters; more than this is not read."""
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


def new_key() -> str:
    """A key that nobody guesses."""
    return secrets.token_urlsafe(24)


@dataclass(frozen=True, slots=True)
class Guard:
    """Stands before the page's application."""

    app: App
    key: str
    hosts: frozenset[str] = frozenset({"127.0.0.1", "localhost", "[::1]"})

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self.app(scope, receive, send)
            return
        heads = {name.decode("latin-1").lower(): value.decode("latin-1") for name, value in scope["headers"]}
        refusal = self._refusal(scope, heads)
        if refusal == "key" and self._hands_key(scope):
            cookie = f"{_cookie_name(heads)}={self.key}; HttpOnly; SameSite=Strict; Path=/".encode()
            await _answer(send, 303, b"", (b"location", b"/"), (b"set-cookie", cookie))
        elif refusal:
            await _answer(send, 413 if refusal == "size" else 403, f"refused: {refusal}".encode())
        else:
            await self.app(scope, receive, _with_headers(send))

    def _refusal(self, scope: Scope, heads: dict[str, str]) -> str:
        host, origin = heads.get("host", ""), heads.get("origin")
        if host.rsplit(":", 1)[0] not in self.hosts:
            return "host"
        if origin is not None and origin != f"http://{host}":
            return "origin"
        if scope["method"] not in {"GET", "HEAD"} and heads.get("sec-fetch-site", "same-origin") not in {
            "same-origin",
            "none",
        }:
            return "site"
        try:
            jar = SimpleCookie(heads.get("cookie", ""))
        except CookieError:
            return "key"
        given = jar.get(_cookie_name(heads))
        if given is None or not hmac.compare_digest(given.value.encode(), self.key.encode()):
            return "key"
        length = heads.get("content-length", "0")
        return "" if length.isdigit() and int(length) <= MOST_BYTES else "size"

    def _hands_key(self, scope: Scope) -> bool:
        given = parse_qs(scope["query_string"].decode("latin-1")).get("key", [""])[0]
        return scope["path"] == "/" and hmac.compare_digest(given.encode(), self.key.encode())


def _cookie_name(heads: dict[str, str]) -> str:
    """Cookies do not tell ports apart, so the name does."""
    return "tapeline_" + heads.get("host", "").rsplit(":", 1)[-1]


def _with_headers(send: Send) -> Send:
    async def sending(message: MutableMapping[str, Any]) -> None:
        if message["type"] == "http.response.start":
            message["headers"] = [*message.get("headers", ()), *HEADERS]
        await send(message)

    return sending


async def _answer(send: Send, status: int, body: bytes, *headers: tuple[bytes, bytes]) -> None:
    heads = [(b"content-type", b"text/plain; charset=utf-8"), *HEADERS, *headers]
    await send({"type": "http.response.start", "status": status, "headers": heads})
    await send({"type": "http.response.body", "body": body})
