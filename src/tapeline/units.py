"""Lengths and angles as makers write them, read and written; millimetres and radians inside.

Only the edges of Tapeline use these: what reads a docket, and what shows a number to a person.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Callable
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from numbers import Real

from tapeline.problems import InputError, Problem, Severity

__all__ = ["Unit", "parse_angle", "parse_length", "show_angle", "show_length"]


class Unit(StrEnum):
    """The unit of a docket: what a bare number means, and how lengths are shown.

    >>> Unit("inch").mm, Unit.CM.sign
    (25.4, 'cm')
    """

    CM = "cm"
    INCH = "inch"

    @property
    def mm(self) -> float:
        """Millimetres in one of it. The inch is 25.4 mm exactly (international yard and pound agreement, 1959)."""
        return 10.0 if self is Unit.CM else 25.4

    @property
    def sign(self) -> str:
        """As written after a number."""
        return "cm" if self is Unit.CM else "in"

    @property
    def other(self) -> Unit:
        """The one that a tape may have been read in by mistake."""
        return Unit.INCH if self is Unit.CM else Unit.CM


LONGEST = 1000
"""Letters of a length or an angle; past some thousands of digits, Python itself refuses to count."""

_METRE = ("m", "metre", "metres", "meter", "meters")
_UNIT_WORDS = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), Fraction(1)),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), Fraction(10)),
    **dict.fromkeys(_METRE, Fraction(1000)),
    **dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "”", "''", "′′", "’’"), Fraction(254, 10)),
}
_ANGLE_WORDS = ("", "°", "º", "deg", "deg.", "degree", "degrees")

_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)\s*
    (?:
        (?P<decimal> \d+[.,]\d+ | [.,]\d+ )
      | (?:(?P<whole>\d+)(?:\s+|\s*-\s*))? (?P<above>\d+)\s*/\s*(?P<below>\d+)
      | (?P<plain>\d+)
    )
    \s*(?P<unit>[^\d\s.,/+-].*)?""",
    re.VERBOSE,
)
_THOUSANDS = re.compile(r"(?<![\d.,])[1-9]\d{0,2},\d{3}(?![\d.,])")
_STROKE = "\N{FRACTION SLASH}"
_MARKS = str.maketrans({"−": "-", "–": "-", "\N{HYPHEN}": "-", "\N{NON-BREAKING HYPHEN}": "-", _STROKE: "/"})


def parse_length(value: object, unit: Unit, *, signed: bool = False) -> float:
    """Millimetres of a length that was written by a person or by a program.

    Numbers and text are understood; a bare number is in `unit`. Halves, quarters and so on may be written with a
    stroke or as one sign; the decimal mark may be a point or a comma.

    >>> [parse_length(text, Unit.CM) for text in (84.5, "84,5 cm", "845 mm", "0.845 m")]
    [845.0, 845.0, 845.0, 845.0]
    >>> [parse_length(text, Unit.INCH) for text in ("33 1/4", '33¼"', '33-1/4"', "33.25 in")]
    [844.55, 844.55, 844.55, 844.55]

    Args:
        value: What stands in the docket.
        unit: What a bare number means.
        signed: A length below zero is understood (a change, an easing); a tape is never below zero.

    Raises:
        InputError: With a problem `length-not-understood` that says what is.
    """

    def refuse(why: str) -> InputError:
        hint = f'lengths read like 84.5, 84,5 cm, 845 mm, 0.5 m, 33 1/4 in or 33¼"; a bare number is in {unit.sign}'
        return InputError(Problem("length-not-understood", Severity.ERROR, f"{_typed(value)} {why}", hint=hint))

    if isinstance(value, str):
        amount, word = _read(value, "a length", refuse)
        if word and word not in _UNIT_WORDS:
            raise refuse(f"has a unit that is not known: {word}")
        if word not in _METRE and _THOUSANDS.search(value):
            # 1,625 m can only be one metre and 625; of 1,625 mm nobody knows.
            raise refuse("can be read in two ways: the comma may divide thousands or be the decimal mark")
        mm = _float(amount * (_UNIT_WORDS[word] if word else Fraction(str(unit.mm))))
    else:
        mm = _number(value, "a length", refuse) * unit.mm
    if not math.isfinite(mm):
        raise refuse("is no length: it is too large")
    if mm < 0 and not signed:
        raise refuse("is below zero")
    return mm + 0.0  # no minus zero


def parse_angle(value: object) -> float:
    """Radians of an angle that was written in degrees.

    >>> round(parse_angle("22,5°"), 6) == round(parse_angle(22.5), 6) == 0.392699
    True

    Raises:
        InputError: With a problem `angle-not-understood` that says what is.
    """

    def refuse(why: str) -> InputError:
        hint = "angles are in degrees and read like 22, 22.5° or 22,5 degrees"
        return InputError(Problem("angle-not-understood", Severity.ERROR, f"{_typed(value)} {why}", hint=hint))

    if isinstance(value, str):
        amount, word = _read(value, "an angle", refuse)
        if word not in _ANGLE_WORDS:
            raise refuse(f"has a unit that is not known: {word}")
        degrees = _float(amount)
    else:
        degrees = _number(value, "an angle", refuse)
    if not 0 <= degrees < 360:
        raise refuse("does not lie between 0 and 360 degrees")
    return math.radians(degrees) + 0.0


def show_length(mm: float, unit: Unit, *, exact: bool = False) -> str:
    """A length for reading: in cm to the nearest millimetre, in inches to the nearest 1/16 as on a tape.

    >>> show_length(255, Unit.CM), show_length(844.55, Unit.INCH), show_length(850, Unit.INCH)
    ('25.5 cm', '33 1/4 in', '≈33 7/16 in')

    Args:
        mm: The length.
        unit: What to show it in.
        exact: Decimals to 0.1 mm or a thousandth of an inch instead; `parse_length` reads them back.
    """
    if not math.isfinite(mm):
        return f"{mm} {unit.sign}"
    if exact:
        return f"{_plain(mm / unit.mm, 2 if unit is Unit.CM else 3)} {unit.sign}"
    if unit is Unit.CM:
        return f"{_plain(mm / 10, 1)} cm"
    sixteenths = round(abs(mm) / 25.4 * 16)
    about = "" if math.isclose(sixteenths * 25.4 / 16, abs(mm), abs_tol=0.01) else "≈"
    whole, part = divmod(sixteenths, 16)
    words = [str(whole)] if whole or not part else []
    if part:
        words.append(str(Fraction(part, 16)))
    return f"{about}{'-' if mm < 0 and sixteenths else ''}{' '.join(words)} in"


def show_angle(radians: float) -> str:
    """An angle for reading, in degrees.

    >>> show_angle(0.3927)
    '22.5°'
    """
    return f"{_plain(math.degrees(radians), 1)}°"


def _read(text: str, what: str, refuse: Callable[[str], InputError]) -> tuple[Fraction, str]:
    """The number in a text and the word after it; the number is exact."""
    # "¼" becomes " 1/4": the space keeps 33¼ from becoming 331/4.
    spread = "".join(f" {plain}" if _STROKE in (plain := unicodedata.normalize("NFKC", c)) else c for c in text)
    tidy = " ".join(spread.translate(_MARKS).split())
    if not tidy:
        raise refuse("is empty")
    if len(tidy) > LONGEST:
        raise refuse("is far too long")
    found = _NUMBER.fullmatch(tidy)
    if found is None:
        if re.search(r"\d[\d.,]*,[\d,]*\.\d|\d[\d.,]*\.[\d.]*,\d", tidy):
            raise refuse("can be read in two ways: leave out the mark between thousands")
        raise refuse(f"is not {what}")
    if found["above"]:
        if not int(found["below"]):
            raise refuse("divides by zero")
        part = Fraction(int(found["above"]), int(found["below"]))
        if found["whole"] and part >= 1:
            raise refuse("has a fraction that is not less than one")
        amount = int(found["whole"] or 0) + part
    else:
        amount = Fraction((found["decimal"] or found["plain"]).replace(",", "."))
    return -amount if found["sign"] == "-" else amount, (found["unit"] or "").casefold().strip()


def _number(value: object, what: str, refuse: Callable[[str], InputError]) -> float:
    if isinstance(value, bool) or not isinstance(value, (Real, Decimal)):
        raise refuse(f"is not {what}")
    if not math.isfinite(number := _float(value)):
        raise refuse(f"is not {what}")
    return number


def _float(number: Real | Decimal) -> float:
    try:
        return float(number)
    except OverflowError:
        return math.inf


def _plain(number: float, places: int) -> str:
    text = f"{number:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def _typed(value: object) -> str:
    """As it stands in a docket, shortened: a stray file must not fill the screen."""
    text = f'"{value}"' if isinstance(value, str) else str(value).lower() if isinstance(value, bool) else repr(value)
    text = "".join(c if c.isprintable() else " " for c in text)
    return text if len(text) <= 60 else text[:57] + "..."
