"""Garments to look at: any wearer, style, looseness and frame."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product
from typing import Any

from hypothesis import settings

from tapeline.blocks.looseness import LOOSENESS
from tapeline.draft import Draft
from tapeline.measures import Wearer
from tapeline.pattern import Corrections, Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tests.wearers import CHILDREN

__all__ = ["Drawing", "draw", "drawing", "drawings", "examples", "size", "style_choices", "taped_children"]

FULL = 200
"""How many examples the full profile takes where a test does not say."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """One garment, and what it was drafted from."""

    wearer: Wearer
    style: str
    looseness: str
    surveyed: bool
    garment: Garment
    said: frozenset[str]
    """Codes of what drafting found worth saying."""

    def __str__(self) -> str:
        frame = "survey" if self.surveyed else "proportional"
        return f"{self.style}, {self.looseness}, {frame}, {self.wearer.name}"


DRAWN_FROM = ("block", "tee")


def examples(most: int) -> settings:
    """So many examples in the full profile, in proportion fewer or more in another."""
    return settings(max_examples=max(5, most * settings().max_examples // FULL))


def style_choices(style: str, looseness: str, **changes: Any) -> Any:
    """A style's own choices at a looseness."""
    return replace(STYLES[style].choices(), looseness=LOOSENESS[looseness], **changes)


def draw(
    wearer: Wearer,
    style: str = "tee",
    looseness: str = "slight",
    *,
    surveyed: bool = True,
    by_hand: Mapping[str, float] | None = None,
    corrections: Corrections | None = None,
    **changes: Any,
) -> Garment:
    """Draft one garment."""
    choices = style_choices(style, looseness, **changes)
    d = Draft(wearer, by_hand or {}, corrections=corrections or Corrections())
    return STYLES[style].drawn(d, choices, surveyed=surveyed)


def drawing(
    wearer: Wearer, style: str, looseness: str, *, surveyed: bool, corrections: Corrections | None = None
) -> Drawing | InputError:
    """One garment with what it was drafted from; where it cannot be drafted, the refusal."""
    d = Draft(wearer, {}, corrections=corrections or Corrections())
    try:
        garment = STYLES[style].drawn(d, style_choices(style, looseness), surveyed=surveyed)
    except InputError as refusal:
        return refusal
    return Drawing(wearer, style, looseness, surveyed, garment, frozenset(note.code for note in d.notes))


def drawings(wearer: Wearer) -> Iterator[Drawing | InputError]:
    """A wearer in every style; where it cannot be drafted, the refusal.

    The two from which all others are drawn come in every looseness and frame; of the others each wearer gets one, so
    that over many wearers all are drawn.
    """
    ways = list(product((True, False) if wearer.figure.has_survey else (False,), LOOSENESS))
    for number, style in enumerate(STYLES):
        mine = ways if style in DRAWN_FROM else [ways[(round(wearer["bust"]) + number) % len(ways)]]
        for surveyed, looseness in mine:
            yield drawing(wearer, style, looseness, surveyed=surveyed)


def taped_children() -> tuple[Wearer, ...]:
    """The children, with the tapes for which no survey stands in; how they go with the chest is invented."""
    return tuple(
        child.with_tape("wrist", 80 + child["bust"] / 12)
        .with_tape("upper_arm", 90 + child["bust"] / 6)
        .with_tape("head_girth", 360 + child["bust"] * 0.24)
        for child in CHILDREN
    )


def size(drawing: Drawing, name: str) -> float:
    """A size of the garment, mm."""
    return next(s.length.mm for s in drawing.garment.sizes if s.name == name)
