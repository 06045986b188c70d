"""A word of the docket that stands for several numbers, written out before one of the numbers is changed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from tapeline.docket.edit import with_value
from tapeline.lengths import Length
from tapeline.web.view import View

__all__ = ["unfolded"]


def unfolded(view: View, keys: tuple[str, ...]) -> str:
    """The docket's text, with the word that stands where a key below it is to be set written as its numbers.

    `looseness = "loose"` means five numbers; whoever changes one of them keeps the other four.
    """
    if keys[:2] == ("finish", "allowance") and len(keys) > 2:
        return _with_default_allowance(view)
    if view.docket is None or keys[0] != "garment" or len(keys) < 3:
        return view.text
    if not isinstance(view.section(*keys[:-2]).get(keys[-2]), str):
        return view.text
    meant: Any = view.docket.choices
    for key in keys[1:-1]:
        meant = getattr(meant, key, None)
    if not is_dataclass(meant) or isinstance(meant, Length):
        return view.text
    text = view.text
    for f in fields(meant):
        value = getattr(meant, f.name)
        if isinstance(value, Length):
            text = with_value(text, (*keys[:-1], f.name), f"{round(value.mm / view.unit.mm, 4):g}")
        elif isinstance(value, Fraction):
            text = with_value(text, (*keys[:-1], f.name), str(value))
        elif isinstance(value, int | float):
            text = with_value(text, (*keys[:-1], f.name), f"{value:g}")
    return text


def _with_default_allowance(view: View) -> str:
    """`allowance = 1` becomes the default of a table before an edge gets a number of its own."""
    typed = view.section("finish").get("allowance")
    if typed is None or isinstance(typed, Mapping):
        return view.text
    text = with_value(view.text, ("finish", "allowance"), None)
    return with_value(text, ("finish", "allowance", "default"), str(typed))
