"""The figures that a wearer may have: which tapes are taken, and whether there is a survey to compare with."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Figure"]


class Figure(StrEnum):
    """Whose tapes these are.

    >>> Figure("man").fullest, Figure.CHILD.has_survey
    ('chest', False)
    """

    WOMAN = "woman"
    MAN = "man"
    CHILD = "child"

    @property
    def fullest(self) -> str:
        """The word for the tape round the fullest part of the chest: `bust`, or `chest` for men."""
        return "chest" if self is Figure.MAN else "bust"

    @property
    def has_survey(self) -> bool:
        """Whether a survey of real bodies stands behind estimates and doubts. Of children there is none."""
        return self is not Figure.CHILD
