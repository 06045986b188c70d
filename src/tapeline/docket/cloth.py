"""The docket's cloth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from tapeline.docket.choices import read_choices
from tapeline.docket.reader import Reader
from tapeline.pattern import Cloth, choices_of

__all__ = ["read_cloth"]


def read_cloth(reader: Reader, table: Mapping[str, Any]) -> Cloth:
    """Kind, width, stretch and shrinkage."""
    # The width is a length of which there need be none, so it is read here.
    rest = {key: value for key, value in table.items() if key != "width"}
    cloth: Cloth = read_choices(reader, Cloth(), rest, ("cloth",), [f.name for f in fields(Cloth)])
    if "width" not in table:
        return cloth
    width = reader.length(table["width"], ("cloth", "width"), choices_of(Cloth)["width"])
    return cloth if width is None else replace(cloth, width=width.mm)
