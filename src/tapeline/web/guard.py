"""Who may speak to the page: this machine's own browser, with the key that was handed out when it was opened.

Where it is opened to other machines, the door stands beside the guard, and hands the key to whoever has the password.

Refused are foreign host names (a web site that points its name at this machine), foreign origins (another site's page
that posts here), and whoever does not have the key.
"""

from __future__ import annotations

import hmac
import secrets
from collections.abc import MutableMapping
from dataclasses import dataclass
from http.cookies import CookieError, SimpleCookie
from typing import Any
from urllib.parse import parse_qs

from tapeline.web.answer import HEADERS, App, Receive, Scope, Send, answer
from tapeline.web.door import ENTER, Door

__all__ = ["Guard", "new_key"]

MOST_BYTES = 1_000_000
"""A docket has a few thousand letters; more than this is not read."""


def new_key() -> str:
    """A key that nobody guesses."""
    return secrets.token_urlsafe(24)


@dataclass(frozen=True, slots=True)
class Guard:
    """Stands before the page's application."""

    app: App
    key: str
    hosts: frozenset[str] = frozenset({"127.0.0.1", "localhost", "[::1]"})
    """Names of this machine, at any port."""
    exactly: frozenset[str] = frozenset()
    """The address and port that are allowed, and nothing else, where the page is opened at another address."""
    door: Door | None = None
    """Asks for the password; then nobody is handed the key for an address with it."""

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self.app(scope, receive, send)
            return
        heads = {name.decode("latin-1").lower(): value.decode("latin-1") for name, value in scope["headers"]}
        refusal = self._refusal(scope, heads)
        cookie = f"{_cookie_name(heads)}={self.key}; HttpOnly; SameSite=Strict; Path=/".encode()
        if refusal == "key" and self.door is not None and await self.door(scope, receive, send, cookie):
            return
        if not refusal and self.door is not None and scope["path"] == ENTER:
            await answer(send, 303, b"", (b"location", b"/"))  # let in already, in another window
        elif refusal == "key" and self.door is None and self._hands_key(scope):
            await answer(send, 303, b"", (b"location", b"/"), (b"set-cookie", cookie))
        elif refusal:
            await answer(send, 413 if refusal == "size" else 403, f"refused: {refusal}".encode())
        else:
            await self.app(scope, receive, _with_headers(send))

    def _refusal(self, scope: Scope, heads: dict[str, str]) -> str:
        host, origin = heads.get("host", ""), heads.get("origin")
        known = host in self.exactly if self.exactly else host.rsplit(":", 1)[0] in self.hosts
        if not known:
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
        return "" if _short(heads) else "size"

    def _hands_key(self, scope: Scope) -> bool:
        given = parse_qs(scope["query_string"].decode("latin-1")).get("key", [""])[0]
        return scope["path"] == "/" and hmac.compare_digest(given.encode(), self.key.encode())


def _short(heads: dict[str, str]) -> bool:
    """Whether a request says beforehand how long it is, and is not too long; what comes in parts does not say."""
    length = heads.get("content-length", "0")
    return "transfer-encoding" not in heads and length.isdecimal() and len(length) < 9 and int(length) <= MOST_BYTES


def _cookie_name(heads: dict[str, str]) -> str:
    """Cookies do not tell ports apart, so the name does."""
    port = heads.get("host", "").rpartition(":")[2]
    return "tapeline_" + (port if port.isdecimal() else "80")


def _with_headers(send: Send) -> Send:
    async def sending(message: MutableMapping[str, Any]) -> None:
        if message["type"] == "http.response.start":
            message["headers"] = [*message.get("headers", ()), *HEADERS]
        await send(message)

    return sending
