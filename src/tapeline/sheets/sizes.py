"""The sizes: both frames side by side, then every size with its source and formula."""

from __future__ import annotations

from collections.abc import Mapping

from tapeline.pattern import Garment, Size
from tapeline.sheets.html import paragraph, part, table
from tapeline.sheets.numbers import change, plain
from tapeline.units import Unit

__all__ = ["FRAMES", "sizes"]

FRAMES = {True: "follows the survey", False: "by the rule of proportion"}
"""The two frames, as the page calls them; the key is whether the frame is surveyed."""

COMPARED = (
    "armhole_depth",
    "half_back_width",
    "half_chest_width",
    "neck_width",
    "shoulder_length",
    "armhole",
    "cap_height",
    "sleeve_width",
    "neckline",
)
"""What the frames decide, and what comes of it on the paper."""


def sizes(garment: Garment, other: Mapping[str, float] | None, unit: Unit, *, surveyed: bool) -> str:
    """`other` has the sizes in mm that the other frame would have given; None when it cannot be drawn."""
    rows = [
        [_name(size), plain(size.length.mm, unit), _spread(size, unit), size.source.value, _formula(size, unit)]
        for size in garment.sizes
    ]
    head = ["size", unit.sign, "give or take", "from", "formula, or where it was read"]
    return part(
        "sizes",
        "Sizes",
        _side_by_side(garment, other, unit, surveyed=surveyed),
        paragraph("Give or take: two of three wearers with these tapes lie within that of the estimate."),
        table("Every size, where it is from, and its formula", head, rows, numbers=[1, 2]),
    )


def _side_by_side(garment: Garment, other: Mapping[str, float] | None, unit: Unit, *, surveyed: bool) -> str:
    if other is None:
        return paragraph("There is no second frame to compare with for these tapes.")
    rows = []
    for size in garment.sizes:
        here, there = size.length.mm, other.get(size.name)
        asked = {o.name: o.mm for o in size.others}
        if size.name not in COMPARED or there is None:
            continue
        survey, rule = (here, there) if surveyed else (there, here)
        # A taped size, or one set by hand, is the same in both frames: what each would have said stands in its others.
        survey, rule = asked.get("survey", survey), asked.get("rule", rule)
        drawn = f"{plain(here, unit)} ({size.source.value})"
        rows.append([_name(size), plain(rule, unit), plain(survey, unit), change(survey - rule, unit), drawn])
    head = ["size", "by proportion", "by the survey", "survey less rule", "drawn"]
    return table(f"Both frames side by side, {unit.sign}", head, rows, numbers=[1, 2, 3, 4])


def _formula(size: Size, unit: Unit) -> str:
    """A size that was read off the paper has no formula: where it was read says more."""
    return size.length.equation(unit) if size.length.operator else size.says


def _name(size: Size) -> str:
    return size.name.replace("_", " ")


def _spread(size: Size, unit: Unit) -> str:
    return f"± {plain(size.sd_mm, unit)}" if size.sd_mm else ""
