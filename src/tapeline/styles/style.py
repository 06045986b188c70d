"""A `Style` is one garment that can be drafted: its name, what can be chosen of it, and its page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Protocol

from tapeline.alter import uneven
from tapeline.draft import Draft, refuse_undrawn
from tapeline.lengths import Length
from tapeline.pattern import ONE_SIDE, Garment

__all__ = ["Page", "Style"]


class Page(Protocol):
    """A style's page: draws the garment on a draft."""

    def __call__(self, d: Draft, c: Any, /, *, surveyed: bool) -> Garment:  # noqa: ANN401 - its own choices
        """Draw the garment from the draft's wearer and the style's choices, by survey or by rule."""
        ...


@dataclass(frozen=True, slots=True)
class Style:
    """One entry of the list of styles."""

    name: str
    title: str
    says: str
    choices: type
    page: Page
    meaning: Mapping[str, tuple[Length, Length]] = field(default_factory=dict)
    """By girth, between which eases the garment is what the style is called."""
    pull_on: bool = False
    """Whether it is pulled over the head."""

    uncorrected: frozenset[str] = frozenset()
    """Keys of the corrections that its own lines do not follow."""

    def drawn(self, d: Draft, c: Any, *, surveyed: bool) -> Garment:  # noqa: ANN401 - its own choices
        """The garment; where only one shoulder is corrected, drafted for each side, and put together of both."""
        refuse_undrawn(d.corrections, {one.key for one in d.corrections.every()} - self.uncorrected, self.name)
        key = next((key for key in ONE_SIDE if d.correction(key).mm), "")
        if not key:
            return self.page(d, c, surveyed=surveyed)
        nothing: dict[str, Any] = {key: Length(0.0)}
        lower, usual = d.again(d.corrections), d.again(replace(d.corrections, **nothing))
        one, other = (self.page(side, c, surveyed=surveyed) for side in (lower, usual))
        d.notes += dict.fromkeys((*lower.notes, *usual.notes))
        return uneven(one, other) if key.startswith("right") else uneven(other, one)
