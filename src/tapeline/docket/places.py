"""Where each key of a docket stands: the line, and the words on it, for the report of a problem.

TOML's own reader forgets lines, so the text is looked through a second time. It has been read by then, so it is known
to be TOML; where the search loses its way all the same, the key alone is named.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property

__all__ = ["Keys", "Place", "Places", "places", "printable"]

Keys = tuple[str, ...]
"""The way to a value: `("wearer", "tapes", "hip")`."""

LONGEST_SHOWN = 70
"""Characters of a docket line that a report shows."""

_SPACE = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_BARE_VALUE = re.compile(r"[^,\]}#\n]*")
_BASIC = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
_LITERAL = re.compile(r"'([^'\n]*)'")
_LONG = re.compile(r'"""(?:[^\\]|\\.)*?"{3,5}|\'\'\'.*?\'{3,5}', re.DOTALL)


@dataclass(frozen=True, slots=True)
class Place:
    """A line of a docket, from 1, and what stands there."""

    line: int
    text: str


# Without slots: the text is looked through when the first place is asked for, which a docket without fault never does.
@dataclass(frozen=True)
class Places:
    """All the places of a docket."""

    name: str
    """Of the file."""
    text: str

    @cached_property
    def found(self) -> dict[Keys, Place]:
        """Every key, and where it stands."""
        scan = _Scan(self.text.replace("\r\n", "\n"))
        with suppress(_LostError, RecursionError):  # what was found so far is right
            scan.document()
        return scan.found

    def where(self, keys: Keys) -> str:
        r"""The place of a key; of a table that is nowhere opened, its first key; otherwise the key alone.

        >>> places("marit.toml", 'allow = []\n[wearer]\ntapes.hip = "9.8 cm"').where(("wearer", "tapes", "hip"))
        'marit.toml, line 3: tapes.hip = "9.8 cm"'
        """
        place = self.found.get(keys) or next(
            (p for k, p in self.found.items() if keys and k[: len(keys)] == keys), None
        )
        if place is None:
            return f"{self.name}: {'.'.join(keys)}" if keys else self.name
        return f"{self.name}, line {place.line}: {place.text}"


def places(name: str, text: str) -> Places:
    """A docket's text, looked through when it has to be."""
    return Places(name, text)


def printable(text: str) -> str:
    r"""The same on one line, with a sign in place of what would steer a terminal or is no text at all.

    >>> printable("tee\x1b[31m.toml")
    'tee?[31m.toml'
    """
    return "".join(c if c.isprintable() else "?" for c in text)


class _LostError(Exception):
    """The text is not what was expected."""


class _Scan:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.found: dict[Keys, Place] = {}
        self.lines = [match.end() for match in re.finditer("\n", text)]

    def document(self) -> None:
        above: Keys = ()
        rows: dict[Keys, int] = {}
        while self.skip() < len(self.text):
            start = self.at
            if self.take("[["):
                keys = self.keys()
                self.need("]]")
                rows[keys] = rows.get(keys, -1) + 1
                above = (*keys, str(rows[keys]))
                self.keep(above, start)
            elif self.take("["):
                above = self.keys()
                self.need("]")
                self.keep(above, start)
            else:
                self.pair(above)

    def pair(self, above: Keys) -> None:
        start = self.at
        keys = (*above, *self.keys())
        self.need("=")
        self.keep(keys, start)  # before the pairs inside, which may not take its place
        self.value(keys)
        self.keep(keys, start)

    def keys(self) -> Keys:
        found = []
        while True:
            self.skip()
            if match := _BARE_KEY.match(self.text, self.at):
                found.append(match[0])
            elif match := _BASIC.match(self.text, self.at) or _LITERAL.match(self.text, self.at):
                found.append(match[1])
            else:
                raise _LostError
            self.at = match.end()
            self.skip()
            if not self.take("."):
                return tuple(found)

    def value(self, keys: Keys) -> None:
        self.skip()
        if (
            match := _LONG.match(self.text, self.at)
            or _BASIC.match(self.text, self.at)
            or _LITERAL.match(self.text, self.at)
        ):
            self.at = match.end()
        elif self.take("["):
            row = 0
            while self.skip() < len(self.text) and not self.take("]"):
                self.value((*keys, str(row)))
                self.skip()
                self.take(",")
                row += 1
        elif self.take("{"):
            while self.skip() < len(self.text) and not self.take("}"):
                self.pair(keys)
                self.skip()
                self.take(",")
        else:
            match = _BARE_VALUE.match(self.text, self.at)
            if match is None or not match[0].strip():
                raise _LostError
            self.at += len(match[0].rstrip())

    def keep(self, keys: Keys, start: int) -> None:
        text = " ".join(self.text[start : self.at].split())
        shown = text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 3] + "..."
        self.found[keys] = Place(bisect_right(self.lines, start) + 1, printable(shown))

    def skip(self) -> int:
        match = _SPACE.match(self.text, self.at)
        self.at = match.end() if match else self.at
        return self.at

    def take(self, sign: str) -> bool:
        taken = self.text.startswith(sign, self.at)
        self.at += len(sign) if taken else 0
        return taken

    def need(self, sign: str) -> None:
        self.skip()
        if not self.take(sign):
            raise _LostError
