"""The noun: one measurement of a wearer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tapeline.measures.figures import Figure
from tapeline.units import Unit, parse_angle, parse_length, show_angle, show_length

__all__ = ["Limits", "Place", "Tape"]

Place = Literal["head", "neck", "shoulder", "chest", "waist", "hip", "back", "front", "arm", "whole body"]


@dataclass(frozen=True, slots=True)
class Limits:
    """Between which values a tape is believed without being asked about; mm, or radians for an angle."""

    low: float
    high: float

    def hold(self, value: float) -> bool:
        """Whether the value lies between them.

        >>> Limits(600, 2000).hold(98)
        False
        """
        return self.low <= value <= self.high


@dataclass(frozen=True, slots=True)
class Tape:
    """One measurement: its name, how to take it, and what it can be.

    >>> from tapeline.measures import TAPES
    >>> waist = TAPES["waist"]
    >>> waist.title, waist.required, waist.iso_clause, waist.show(785, Unit.CM)
    ('Waist girth', True, '5.3.10', '78.5 cm')
    >>> waist.parse("30 1/2 in", Unit.CM)
    774.7
    """

    name: str
    """As in a docket."""
    title: str
    place: Place
    """Where on the body it sits."""
    take: str
    """How to take it: from where to where, and what to mind."""
    limits: dict[Figure, Limits]
    """Per figure; a figure that is missing does not have this tape."""
    reason: str
    """Why the limits lie where they lie."""
    required: bool = False
    angle: bool = False
    iso_name: str = ""
    """The nearest measurement of ISO 8559-1:2017, empty where none is known to us."""
    iso_clause: str = ""
    iso_differs: str = ""
    """How ours differs from it."""

    def taken_on(self, figure: Figure) -> bool:
        """Whether wearers of this figure have the tape."""
        return figure in self.limits

    def parse(self, value: object, unit: Unit) -> float:
        """Read a docket's value: mm, or radians for an angle.

        Raises:
            InputError: With a problem `length-not-understood` or `angle-not-understood`.
        """
        return parse_angle(value) if self.angle else parse_length(value, unit)

    def show(self, value: float, unit: Unit) -> str:
        """A value of this tape for reading."""
        return show_angle(value) if self.angle else show_length(value, unit)
