"""A `Size` is a length that drafting uses: taped, expected from the survey, or by a rule."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from tapeline.lengths import Length

__all__ = ["Size", "Source"]


class Source(StrEnum):
    """Where a size comes from."""

    TAPED = "taped"
    BY_HAND = "by hand"
    """Written into the docket in place of the rule."""
    CHOICE = "choice"
    """The maker's, from the docket."""
    RULE = "rule"
    SURVEY = "survey"


@dataclass(frozen=True, slots=True)
class Size:
    """A named length, where it comes from, and how sure it is."""

    name: str
    says: str
    length: Length
    source: Source
    sd_mm: float | None = None
    """Standard deviation of an estimate: two of three wearers lie within it."""
    others: tuple[Length, ...] = ()
    """What the other sources would have said, each named by its source."""
