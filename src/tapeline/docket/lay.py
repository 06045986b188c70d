"""The docket's lay: how the cloth lies on the table, and what the pieces may do on it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from tapeline.docket.places import Keys
from tapeline.docket.reader import Reader, as_typed, dotted
from tapeline.lay.cloth import Direction, Flaw, LayCloth, Spread
from tapeline.lay.settings import LaySettings
from tapeline.pattern import Choice, Cloth

__all__ = ["CLOTH_WIDTH", "GARMENTS", "LAY_LENGTHS", "LAY_NUMBERS", "LAY_WORDS", "read_lay"]

LAY_WORDS = {
    "spread": (Spread, "how the cloth lies on the table"),
    "direction": (Direction, "which ways the pieces may face: one-way for nap and prints with a top"),
}
LAY_LENGTHS = {
    "selvedge": ("selvedge_mm", Choice(0, 50, "left free at each selvedge")),
    "gap": ("gap_mm", Choice(0, 20, "kept free between pieces")),
    "repeat_along": ("repeat_along_mm", Choice(0, 200, "crosswise stripes or checks: the repeat along the cloth")),
    "repeat_across": ("repeat_across_mm", Choice(0, 200, "lengthwise stripes or checks: the repeat across the cloth")),
    "line_along": ("line_along_mm", Choice(0, 200, "from the beginning to the first dominant crosswise line")),
    "line_across": ("line_across_mm", Choice(0, 200, "from the lower edge or the fold to the first lengthwise line")),
}
LAY_NUMBERS = {
    "tilt": Choice(0, 45, "how far the grain may lean, degrees"),
    "price": Choice(0, 1e6, "of one metre, in any money"),
}
GARMENTS = Choice(1, 1000, "how many garments alike are laid")
CLOTH_WIDTH = Choice(1, 400, "width of the cloth between the selvedges")
PLACE = Choice(0, 100000, "a place on the cloth")
SIZE = Choice(0.01, 100000, "a size on the cloth")
FLAW = ("along", "across", "length", "width")
OWN = ("garments", "together", "unmatched")


def read_lay(reader: Reader, table: Mapping[str, Any], cloth: Cloth) -> LaySettings:
    """Settings of every cloth; those of the shell begin with the docket's cloth."""
    keys: Keys = ("lay",)
    shell = LayCloth(shrink_length=cloth.shrink_length, shrink_width=cloth.shrink_width)
    if cloth.width is not None:
        shell = replace(shell, width_mm=cloth.width)
    others = {name: value for name, value in table.items() if name not in _known() and isinstance(value, Mapping)}
    reader.unknown({k: v for k, v in table.items() if k not in others}, keys, [*_known(), *OWN])
    cloths = {"shell": _cloth(reader, shell, table, keys)}
    for name, value in others.items():
        reader.unknown(value, (*keys, name), ["width", *_known()])
        # What a cloth does not say for itself is as the shell's, but for stripes, flaws and price.
        like = replace(cloths["shell"], name=name, repeat_along_mm=0.0, repeat_across_mm=0.0, flaws=(), price=None)
        cloths[name] = _cloth(reader, replace(like, shrink_length=0.0, shrink_width=0.0), value, (*keys, name))
    settings = LaySettings(cloths)
    if "garments" in table:
        count = reader.number(table["garments"], (*keys, "garments"), GARMENTS)
        if count is not None and count != int(count):
            reader.refuse("choice-range", (*keys, "garments"), f"lay.garments is {count}; it is a whole number")
        elif count is not None:
            settings = replace(settings, garments=int(count))
    together = _names(reader, table.get("together", []), (*keys, "together"), nested=True)
    unmatched = _names(reader, table.get("unmatched", []), (*keys, "unmatched"))
    return replace(settings, together=together, unmatched=tuple(name for row in unmatched for name in row))


def _known() -> list[str]:
    return [*LAY_WORDS, *LAY_LENGTHS, *LAY_NUMBERS, "flaws"]


def _cloth(reader: Reader, base: LayCloth, table: Mapping[str, Any], keys: Keys) -> LayCloth:
    changes: dict[str, Any] = {}
    if "width" in table and (width := reader.length(table["width"], (*keys, "width"), CLOTH_WIDTH)) is not None:
        changes["width_mm"] = width.mm
    for key, (name, limits) in LAY_LENGTHS.items():
        if key in table and (length := reader.length(table[key], (*keys, key), limits)) is not None:
            changes[name] = length.mm
    for key, (kind, _) in LAY_WORDS.items():
        if key in table and (word := reader.word(table[key], (*keys, key), list(kind))) is not None:
            changes[key] = kind(word)
    for key, choice in LAY_NUMBERS.items():
        if key in table and (number := reader.number(table[key], (*keys, key), choice)) is not None:
            changes[key] = math.radians(number) if key == "tilt" else float(number)
    if "flaws" in table:
        changes["flaws"] = _flaws(reader, table["flaws"], (*keys, "flaws"))
    return replace(base, **changes)


def _flaws(reader: Reader, value: object, keys: Keys) -> tuple[Flaw, ...]:
    if not isinstance(value, list) or not all(isinstance(row, Mapping) for row in value):
        says = f"{dotted(keys)} is {as_typed(value)}; it is a list of tables"
        reader.refuse("docket-type", keys, says, "write flaws = [{ along = 30, across = 20, length = 2, width = 2 }]")
        return ()
    found = []
    for number, row in enumerate(value):
        at: Keys = (*keys, str(number))
        reader.unknown(row, at, FLAW)
        sizes = []
        for key in FLAW:
            if key not in row:
                reader.refuse("docket-type", at, f"{dotted(at)} has no {key}", f"a flaw has {', '.join(FLAW)}")
                continue
            length = reader.length(row[key], (*at, key), PLACE if key in FLAW[:2] else SIZE)
            sizes += [] if length is None else [length.mm]
        if len(sizes) == len(FLAW):
            found.append(Flaw(*sizes))
    return tuple(found)


def _names(reader: Reader, value: object, keys: Keys, *, nested: bool = False) -> tuple[tuple[str, ...], ...]:
    """A list of names of pieces, or a list of such lists."""
    rows = value if nested else [value]
    good = isinstance(rows, list) and all(
        isinstance(row, list) and all(isinstance(name, str) for name in row) for row in rows
    )
    if not good or not isinstance(rows, list):
        shape = '[["front", "sleeve"]]' if nested else '["pocket"]'
        says = f"{dotted(keys)} is {as_typed(value)}; it is a list of names of pieces: {shape}"
        reader.refuse("docket-type", keys, says)
        return ()
    return tuple(tuple(row) for row in rows if row)
