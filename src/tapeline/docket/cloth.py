"""The docket's cloth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from tapeline.docket.choices import read_choices
from tapeline.docket.reader import Reader
from tapeline.pattern import Cloth, ClothSort, choices_of

__all__ = ["USUAL", "read_cloth"]

USUAL = {
    ClothSort.LIGHT_KNIT: Cloth(sort=ClothSort.LIGHT_KNIT),
    ClothSort.HEAVY_KNIT: Cloth("sweatshirt fleece", ClothSort.HEAVY_KNIT, stretch_across=20.0, stretch_along=10.0),
    ClothSort.LIGHT_WOVEN: Cloth("poplin", ClothSort.LIGHT_WOVEN, stretch_across=3.0, stretch_along=1.0),
    ClothSort.HEAVY_WOVEN: Cloth("brushed cotton", ClothSort.HEAVY_WOVEN, stretch_across=3.0, stretch_along=1.0),
}
"""What a cloth is taken to be where only its sort is said: fleece stretches 15 to 30 per cent, woven cloth 1 to 5 on
the grain, from memory of cloth tables.
"""


def read_cloth(reader: Reader, table: Mapping[str, Any]) -> Cloth:
    """Kind, sort, width, stretch and shrinkage; what is not said is usual for the sort."""
    said = str(table.get("sort", "")).strip().casefold()
    base = next((usual for sort, usual in USUAL.items() if sort == said), Cloth())
    # The width is a length of which there need be none, so it is read here.
    rest = {key: value for key, value in table.items() if key != "width"}
    cloth: Cloth = read_choices(reader, base, rest, ("cloth",), [f.name for f in fields(Cloth)])
    if "width" not in table:
        return cloth
    width = reader.length(table["width"], ("cloth", "width"), choices_of(Cloth)["width"])
    return cloth if width is None else replace(cloth, width=width.mm)
