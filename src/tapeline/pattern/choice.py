"""A choice of the maker's: every number on a style page that is not a tape has a default, a range and a reason."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Any

__all__ = ["Choice", "choice", "choices_of"]


@dataclass(frozen=True, slots=True)
class Choice:
    """Range and reason of one field; lengths are limited in cm, other numbers as they are."""

    least: float
    most: float
    says: str


def choice(default: Any, least: float, most: float, says: str) -> Any:  # noqa: ANN401 - as dataclasses.field
    """A field of a choices dataclass, with its range and reason."""
    return field(default=default, metadata={"choice": Choice(least, most, says)})


def choices_of(cls: type) -> dict[str, Choice]:
    """The fields of a choices dataclass that are plain choices."""
    return {f.name: f.metadata["choice"] for f in fields(cls) if "choice" in f.metadata}
