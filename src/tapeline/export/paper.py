"""A `Paper` is what a print goes on: sheets of a standard size that are glued together, or a roll."""

from __future__ import annotations

import re
from dataclasses import dataclass

from tapeline.problems import InputError, Problem, Severity, closest

__all__ = [
    "LONGEST_PAGE_MM",
    "MARGIN_MM",
    "NARROWEST_ROLL_MM",
    "OVERLAP_MM",
    "PAPERS",
    "Paper",
    "page_too_long",
    "paper",
]

MARGIN_MM = 10.0
"""What printers leave white round a sheet, with room to spare (common practice, no source)."""
OVERLAP_MM = 10.0
"""What two neighbouring sheets both show: wide enough for a glue stick."""
LONGEST_PAGE_MM = 5080.0
"""Readers of PDF take pages up to 14,400 units of 1/72 in (ISO 32000-1, annex C: architectural limits)."""
NARROWEST_ROLL_MM = 210.0
"""The panel with the test squares has to fit across."""

# ISO 216:2007, trimmed sizes of the A series; Letter is 8 1/2 x 11 in (ANSI/ASME Y14.1, size A).
PAPERS: dict[str, tuple[float, float]] = {
    "A4": (210.0, 297.0),
    "A3": (297.0, 420.0),
    "A2": (420.0, 594.0),
    "A1": (594.0, 841.0),
    "A0": (841.0, 1189.0),
    "Letter": (215.9, 279.4),
}

_ROLL = re.compile(r"roll\s+(\d+(?:[.,]\d+)?)\s*(mm|cm|in|inch)", re.IGNORECASE)
_UNITS = {"mm": 1.0, "cm": 10.0, "in": 25.4, "inch": 25.4}


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet, upright, or a roll; millimetres.

    >>> paper("A4").field_mm
    (190.0, 277.0)
    """

    name: str
    """`A4`, `roll 914 mm`."""
    width_mm: float
    """Short side of a sheet; width of a roll."""
    height_mm: float | None
    """Long side of a sheet; none for a roll, which is as long as it has to be."""
    margin_mm: float = MARGIN_MM
    overlap_mm: float = OVERLAP_MM

    @property
    def is_roll(self) -> bool:
        """Whether it has no end."""
        return self.height_mm is None

    @property
    def field_mm(self) -> tuple[float, float]:
        """Width and height that can be printed on; a roll's height is the longest page."""
        height = LONGEST_PAGE_MM if self.height_mm is None else self.height_mm
        return self.width_mm - 2 * self.margin_mm, height - 2 * self.margin_mm

    @property
    def step_mm(self) -> tuple[float, float]:
        """How far apart neighbouring sheets lie once glued."""
        width, height = self.field_mm
        return width - self.overlap_mm, height - self.overlap_mm


def paper(text: str) -> Paper:
    """The paper of that name: `A4`, `letter`, `roll 914 mm`, `roll 36 in`.

    Raises `InputError`: `paper-unknown` for a name that is none; `roll-too-narrow`, `page-too-long` for a roll
    that cannot carry the test squares or that no reader of the file would show.

    >>> paper("a3").width_mm, paper("roll 36 in").width_mm, paper("roll 91,4 cm").name
    (297.0, 914.4, 'roll 914 mm')
    >>> try:
    ...     paper("A44")
    ... except InputError as error:
    ...     print(error)
    error: there is no paper A44  [paper-unknown]
      in paper
      hint: did you mean A4? A roll is written as: roll 914 mm, or roll 36 in. Nothing was printed.
    """
    asked = " ".join(text.split())
    for name, (width, height) in PAPERS.items():
        if name.casefold() == asked.casefold():
            return Paper(name, width, height)
    match = _ROLL.fullmatch(asked)
    if match is None:
        hint = closest(asked.capitalize(), PAPERS)
        raise _wrong(
            "paper-unknown",
            f"there is no paper {asked}" if asked else "no paper is named",
            f"{hint}{'' if hint.endswith('?') else '.'} A roll is written as: roll 914 mm, or roll 36 in",
        )
    width = float(match[1].replace(",", ".")) * _UNITS[match[2].casefold()]
    inches = match[2].casefold().startswith("in")
    name = f"roll {width / 25.4:g} in" if inches else f"roll {width:g} mm"
    if width < NARROWEST_ROLL_MM:
        raise _wrong(
            "roll-too-narrow",
            f"a roll of {width:.0f} mm is too narrow: the test squares need {NARROWEST_ROLL_MM:.0f} mm",
            "take a wider roll, or sheets of A4",
        )
    if width > LONGEST_PAGE_MM:
        raise page_too_long(width, name)
    return Paper(name, width, None)


def page_too_long(length_mm: float, name: str) -> InputError:
    """The refusal of a page that readers would cut off or shrink."""
    return _wrong(
        "page-too-long",
        f"a page of {length_mm:.0f} mm on {name} is longer than the {LONGEST_PAGE_MM:.0f} mm that readers show",
        "take a wider roll, or sheets such as A0",
    )


def _wrong(code: str, says: str, hint: str) -> InputError:
    return InputError(Problem(code, Severity.ERROR, says, where="paper", hint=f"{hint}. Nothing was printed."))
