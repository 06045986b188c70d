"""The door: where the page is opened to other machines, it asks for the password before it shows anything.

A plain form without script. The right password is answered with the cookie that the guard knows; a wrong one with a
wait that grows. What is kept of the password is a digest under a key of this run, in nobody's log.
"""

from __future__ import annotations

import asyncio
import hashlib
import hmac
import secrets
import unicodedata
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from urllib.parse import parse_qs

from tapeline.web.answer import Receive, Scope, Send, answer
from tapeline.web.places import fragment
from tapeline.web.tries import Tries

__all__ = ["ENTER", "Door", "Password"]

ENTER = "/enter"
"""Where the form is sent."""
MOST_BYTES = 8192
"""A form with one password, however it is written, is shorter."""
LONGEST = 10.0
"""Seconds in which the form has to have arrived."""
SECONDS = {1: "a second"}


@dataclass(frozen=True, slots=True)
class Password:
    """A password that can be compared and not be read again.

    >>> Password.of("blue thread, long seam").fits("blue thread, long seam")
    True
    >>> Password.of("blue thread, long seam").fits("blue thread")
    False
    """

    salt: bytes = field(repr=False)
    digest: bytes = field(repr=False)

    @classmethod
    def of(cls, word: str) -> Password:
        """The password of a word, under a key of its own."""
        salt = secrets.token_bytes(32)
        return cls(salt, _digest(word, salt))

    def fits(self, word: str) -> bool:
        """Whether a word is the password; takes as long for one that begins right."""
        return hmac.compare_digest(_digest(word, self.salt), self.digest)


@dataclass(frozen=True, slots=True)
class Door:
    """Asks whoever has no key for the password."""

    password: Password
    address: str
    """As it is typed in the browser, for the words on the form."""
    tries: Tries = field(default_factory=Tries)

    async def __call__(self, scope: Scope, receive: Receive, send: Send, cookie: bytes) -> bool:
        """Answer one who has no key; False for what is none of the door's business.

        Args:
            scope: The request.
            receive: Its body.
            send: Takes the answer.
            cookie: Handed out for the right password.
        """
        method, path = scope["method"], scope["path"]
        if path == "/" and method in {"GET", "HEAD"}:
            await self._ask(send, 200)
        elif path == ENTER and method == "POST":
            await self._try(scope, receive, send, cookie)
        elif path == ENTER:
            await answer(send, 303, b"", (b"location", b"/"))
        else:
            return False
        return True

    async def _try(self, scope: Scope, receive: Receive, send: Send, cookie: bytes) -> None:
        given = await _given(receive)
        # From here to the count nothing else runs: tries that are sent all at once are counted one by one.
        client = scope.get("client")
        address = client[0] if client else ""
        if wait := self.tries.wait(address):
            says = (
                f"There were too many wrong tries. The next one is looked at in {SECONDS.get(wait, f'{wait} seconds')}."
            )
            await self._ask(send, 429, says, (b"retry-after", str(wait).encode()))
        elif given is not None and self.password.fits(given):
            self.tries.right(address)
            await answer(send, 303, b"", (b"location", b"/"), (b"set-cookie", cookie))
        else:
            self.tries.wrong(address)
            await self._ask(send, 403, "That is not the password.")

    async def _ask(self, send: Send, status: int, says: str = "", *headers: tuple[bytes, bytes]) -> None:
        body = fragment("door", says=says, address=self.address, look=_look(), enter=ENTER).encode()
        heads = ((b"content-type", b"text/html; charset=utf-8"), (b"referrer-policy", b"same-origin"), *headers)
        await answer(send, status, body, *heads)


def _digest(word: str, salt: bytes) -> bytes:
    # Keyboards write the same accented letter as one sign or as two.
    return hashlib.blake2b(unicodedata.normalize("NFC", word).encode("utf-8", "surrogatepass"), key=salt).digest()


async def _given(receive: Receive) -> str | None:
    """The password in a form; None when there is none, or it does not come to an end."""
    body = bytearray()
    try:
        async with asyncio.timeout(LONGEST):
            more = True
            while more:
                message = await receive()
                body += message.get("body", b"")
                more = message["type"] == "http.request" and message.get("more_body", False)
                if len(body) > MOST_BYTES:
                    return None
        form = parse_qs(body.decode("ascii"), keep_blank_values=True, strict_parsing=True, max_num_fields=2)
    except (TimeoutError, ValueError):
        return None
    words = form.get("password", [])
    return words[0] if len(words) == 1 else None


@cache
def _look() -> str:
    """The page's own look, in the form itself: no other file is shown to whoever has no key."""
    folder = files("tapeline.web") / "static"
    return "".join((folder / name).read_text(encoding="utf-8") for name in ("page.css", "door.css"))
