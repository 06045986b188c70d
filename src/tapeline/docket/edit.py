"""Changing one value of a docket's text, and nothing else in it: remarks and order stay as the maker wrote them."""

from __future__ import annotations

import re
from typing import Any

import tomlkit
from tomlkit import TOMLDocument
from tomlkit.exceptions import TOMLKitError as NotToml
from tomlkit.items import InlineTable, Item, Table

from tapeline.docket.places import Keys

__all__ = ["NotToml", "with_value"]

_LAST: dict[str, TOMLDocument] = {}
"""The text that was written last, taken apart: a maker who goes on with the same docket waits for that once only."""

_NUMBER = re.compile(r"[+-]?\d+(?:\.\d+)?")


def with_value(text: str, keys: Keys, value: str | None) -> str:
    r"""A docket's text with one value set, or taken out when it is None or empty.

    A plain number is written as one; anything else as the words that were typed.

    >>> with_value("[wearer.tapes]\nbust = 94 # in May\n", ("wearer", "tapes", "bust"), "95")
    '[wearer.tapes]\nbust = 95 # in May\n'
    >>> with_value("", ("garment", "sleeve", "length"), "long")
    '[garment.sleeve]\nlength = "long"\n'

    Raises:
        NotToml: The text is no TOML.
    """
    document = _LAST.pop(text, None) or tomlkit.parse(text)
    if value is None or not value.strip():
        _take_out(document, keys)
        return tomlkit.dumps(document)
    plain = _set(document, keys, _typed(value.strip()))
    made = tomlkit.dumps(document)
    # What was added is taken apart again: it reads the same, but may be held otherwise than if it had been read.
    if plain:
        _LAST.clear()
        _LAST[made] = document
    return made


def _typed(value: str) -> Any:  # noqa: ANN401 - whatever TOML holds
    if not _NUMBER.fullmatch(value):
        return value
    return float(value) if "." in value else int(value)


def _set(document: Any, keys: Keys, value: Any) -> bool:  # noqa: ANN401 - tables of several kinds
    """Write a value; whether it took the place of another, and nothing was added."""
    table = document
    for depth, key in enumerate(keys[:-1]):
        inside = table.get(key)
        if not isinstance(inside, dict):
            # A group of choices is written on one line where its parent is; a section gets lines of its own.
            inside = (
                tomlkit.inline_table() if isinstance(table, InlineTable) else tomlkit.table(is_super_table=depth == 0)
            )
            table[key] = inside
        table = table[key]
    old = table.get(keys[-1])
    item = tomlkit.item(value)
    plain = isinstance(old, Item) and not isinstance(old, Table | InlineTable)
    if plain:
        item.trivia.comment_ws, item.trivia.comment = old.trivia.comment_ws, old.trivia.comment
        item.trivia.trail = old.trivia.trail
    table[keys[-1]] = item
    return plain


def _take_out(document: Any, keys: Keys) -> None:  # noqa: ANN401 - tables of several kinds
    table = document
    for key in keys[:-1]:
        table = table.get(key)
        if not isinstance(table, dict):
            return
    if keys[-1] in table:
        del table[keys[-1]]
