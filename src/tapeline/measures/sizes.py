"""Sizes from tables, and the standard wearers that stand for them."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from tapeline.measures.figures import Figure
from tapeline.measures.survey import survey_of
from tapeline.measures.tapes import TAPES, required_tapes
from tapeline.measures.wearer import Wearer
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.units import Unit

__all__ = ["LETTER_CODES", "WOMEN_INTERVALS", "SizeInterval", "letter_code", "size_wearer", "women_size"]


@dataclass(frozen=True, slots=True)
class SizeInterval:
    """A size: its label and the girths it is for, from `low_mm` up to but not including `high_mm`."""

    label: str
    low_mm: float
    high_mm: float

    @property
    def middle_mm(self) -> float:
        """Half way between its ends."""
        return (self.low_mm + self.high_mm) / 2

    def holds(self, girth_mm: float) -> bool:
        """Whether a girth belongs to it."""
        return self.low_mm <= girth_mm < self.high_mm


def _run(labels: str, borders: tuple[int, ...]) -> tuple[SizeInterval, ...]:
    return tuple(
        SizeInterval(label, low * 10, high * 10)
        for label, (low, high) in zip(labels.split(), pairwise(borders), strict=True)
    )


_LETTERS = "XXS XS S M L XL XXL 3XL"
LETTER_CODES = {
    Figure.WOMAN: _run(_LETTERS, (66, 74, 82, 90, 98, 107, 119, 131, 143)),
    Figure.MAN: _run(_LETTERS, (70, 78, 86, 94, 102, 110, 118, 129, 141)),
}
"""EN 13402-3 letter codes by women's bust and men's chest, read in a secondary text."""

WOMEN_INTERVALS = {
    "bust": _run(
        "76 80 84 88 92 96 100 104 110 116 122 128 134 140 146 152",
        (74, 78, 82, 86, 90, 94, 98, 102, 107, 113, 119, 125, 131, 137, 143, 149, 155),
    ),
    "waist": _run("60 64 68 72 76 80 84 88 94 100 106 112", (58, 62, 66, 70, 74, 78, 82, 86, 91, 97, 103, 109, 115)),
    "hip": _run(
        "84 88 92 96 100 104 108 112 117 122 127 132", (82, 86, 90, 94, 98, 102, 106, 110, 115, 120, 125, 130, 135)
    ),
}
"""EN 13402-3 sizes of women. Bust borders 74 to 131 were read in a secondary text; the rest is from memory of it."""

_MEN = range(74, 138, 4)
"""Chests in cm of men's standard wearers: a step of 4, common practice, no source."""


def letter_code(girth_mm: float, figure: Figure) -> str | None:
    """The letter code of a bust or chest; None outside the table and for children, who have none.

    >>> letter_code(940, Figure.WOMAN), letter_code(940, Figure.MAN), letter_code(2000, Figure.WOMAN)
    ('M', 'M', None)
    """
    return next((size.label for size in LETTER_CODES.get(figure, ()) if size.holds(girth_mm)), None)


def women_size(tape: str, girth_mm: float) -> str | None:
    """The label of a woman's bust, waist or hip: the middle of its interval in cm; None outside the table.

    >>> women_size("bust", 1060), women_size("waist", 900)
    ('104', '88')
    """
    return next((size.label for size in WOMEN_INTERVALS[tape] if size.holds(girth_mm)), None)


def size_wearer(label: str, figure: Figure = Figure.WOMAN, unit: Unit = Unit.CM) -> Wearer:
    """A standard wearer: the bust or chest of a size, and the mean of the seven other tapes in the survey given it.

    Nobody was measured for it; `made_from` says so. Far from the survey's people its lines are continued.

    >>> standard = size_wearer("88")
    >>> standard["bust"], round(standard["waist"]), standard.made_from
    (880.0, 702, 'the survey, given a bust of 88 cm: mean tapes of a standard size, nobody was measured')

    Args:
        label: A letter code, taken at the middle of its interval, or a bust or chest in cm that is in the table.
        figure: A woman or a man.
        unit: In which the maker reads lengths.

    Raises:
        InputError: With a problem `size-unknown`.
    """
    survey = survey_of(figure)
    if survey is None:
        says = f"there is no standard wearer of the figure {figure}: no survey and no size table stands behind it"
        raise InputError(Problem("size-unknown", Severity.ERROR, says, hint="give the eight tapes"))
    sizes = {size.label: size.middle_mm for size in LETTER_CODES[figure]}
    centimetres = [size.label for size in WOMEN_INTERVALS["bust"]] if figure is Figure.WOMAN else map(str, _MEN)
    sizes |= {name: float(name) * 10 for name in centimetres}
    if label not in sizes:
        says = f"there is no size {label} for the figure {figure}"
        raise InputError(Problem("size-unknown", Severity.ERROR, says, hint=closest(label, sizes)))
    girth = sizes[label]
    # Every tape is the mean of those with this girth: the girth alone is known, so it alone predicts.
    means = survey.conditional({figure.fullest: girth})
    tapes = {tape.name: means[tape.name].mm for tape in required_tapes(figure) if tape.name != figure.fullest}
    shown = TAPES[figure.fullest].show(girth, Unit.CM)
    made_from = f"the survey, given a {figure.fullest} of {shown}: mean tapes of a standard size, nobody was measured"
    return Wearer(f"Size {label}", figure, {figure.fullest: girth, **tapes}, frozenset(), unit, made_from)
