"""A choice of the maker's: every number on a style page that is not a tape has a default, a range and a reason."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, fields, is_dataclass
from enum import StrEnum
from typing import Any, Self

from tapeline.lengths import Length

__all__ = ["Choice", "Word", "choice", "choices_of", "chosen_lengths", "idle_in"]


@dataclass(frozen=True, slots=True)
class Choice:
    """Range and reason of one field; lengths are limited in cm, other numbers as they are."""

    least: float
    most: float
    says: str


class Word(StrEnum):
    """A choice that is one of some words and stands for no numbers; each member is its word and what it means.

    >>> class Side(Word):
    ...     LEFT = "left", "over the heart"
    >>> Side("left").says
    'over the heart'
    """

    says: str

    def __new__(cls, word: str, says: str) -> Self:
        """A member: its word, and what it means."""
        made = str.__new__(cls, word)
        made._value_ = word
        made.says = says
        return made


def choice(default: Any, least: float, most: float, says: str) -> Any:  # noqa: ANN401 - as dataclasses.field
    """A field of a choices dataclass, with its range and reason."""
    return field(default=default, metadata={"choice": Choice(least, most, says)})


def chosen_lengths(choices: Any) -> Iterator[tuple[Length, str]]:  # noqa: ANN401 - any choices dataclass
    """Every named length in a choices dataclass and in those inside it, with what the choice is about."""
    for f in fields(choices):
        value = getattr(choices, f.name)
        if f.name in idle_in(choices):
            continue
        if is_dataclass(value) and not isinstance(value, Length):
            yield from chosen_lengths(value)
        elif isinstance(value, Length) and value.name and "choice" in f.metadata:
            yield value, f.metadata["choice"].says


def idle_in(choices: Any) -> frozenset[str]:  # noqa: ANN401 - any choices dataclass
    """The fields of a choices dataclass that say nothing, as its other fields stand: its own `idle`."""
    idle: frozenset[str] = getattr(choices, "idle", frozenset())
    return idle


def choices_of(cls: type) -> dict[str, Choice]:
    """The fields of a choices dataclass that are plain choices."""
    return {f.name: f.metadata["choice"] for f in fields(cls) if "choice" in f.metadata}
