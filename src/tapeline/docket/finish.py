"""The docket's finish: allowances, hem, notches, and the paper it is printed on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from tapeline.docket.places import Keys
from tapeline.docket.reader import Reader
from tapeline.finish import FinishChoices
from tapeline.pattern import Choice
from tapeline.problems import InputError

__all__ = ["ALLOWANCE", "HEM", "NOTCH", "read_finish", "read_paper"]

KEYS = ("allowance", "hem", "notch", "paper")
# The widths that finishing takes, told in cm here so that a docket hears of them in its own unit.
ALLOWANCE = Choice(0, 5, "wider would not lie flat inside a curve")
HEM = Choice(0, 10, "a top has no deeper hem")
NOTCH = Choice(0.1, 1, "deep enough to be seen, and well short of the stitches")


def read_finish(reader: Reader, table: Mapping[str, Any]) -> FinishChoices:
    """Allowances and hems in mm; whether a garment has the edges named is seen when it is finished."""
    reader.unknown(table, ("finish",), KEYS)
    choices: dict[str, Any] = {}
    for key, name, limits in (("hem", "hem_mm", HEM), ("notch", "notch_depth_mm", NOTCH)):
        if key in table and (length := reader.length(table[key], ("finish", key), limits)) is not None:
            choices[name] = length.mm
    keys: Keys = ("finish", "allowance")
    value = table.get("allowance", {})
    if not isinstance(value, Mapping):
        value = {"default": value}
        keys = ("finish",)
    by_name = {}
    for path, width in _leaves(value):
        name = ".".join(path)
        at: Keys = ("finish", "allowance") if keys == ("finish",) else (*keys, *path)
        length = reader.length(width, at, ALLOWANCE if name == "default" else HEM)
        if length is not None and name == "default":
            choices["allowance_mm"] = length.mm
        elif length is not None:
            by_name[name] = length.mm
    return FinishChoices(by_name=by_name, **choices)


def read_paper(reader: Reader, table: Mapping[str, Any]) -> str:
    """The name of a paper there is."""
    if "paper" not in table:
        return "A4"
    from tapeline.export.paper import paper  # brings the writers with it, which most commands do without

    text = reader.text(table["paper"], ("finish", "paper"))
    try:
        return paper(text).name if text else "A4"
    except InputError as error:
        reader.keep(error, ("finish", "paper"))
        return "A4"


def _leaves(table: Mapping[str, Any], above: Keys = ()) -> Iterator[tuple[Keys, Any]]:
    """`front.hem = 3` may be written with a dot, in quotes, or as a table in the table."""
    for key, value in table.items():
        if isinstance(value, Mapping):
            yield from _leaves(value, (*above, key))
        else:
            yield (*above, key), value
