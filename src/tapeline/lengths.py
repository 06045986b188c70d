"""Traced lengths: millimetres that remember the formula they came from.

The text of a step is made from its calculation, so that the words on a drawing can never drift from the numbers.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import overload

from tapeline.problems import InputError, Problem, Severity
from tapeline.units import Unit

__all__ = ["Length", "Phrase", "Proportion", "at_least", "at_most", "cm", "phrase_text"]

_LIMITS = {"at least": "but at least", "at most": "but at most"}


@dataclass(frozen=True, slots=True)
class Length:
    """A length in mm with the calculation behind it.

    A length and a bare number are not added: every number on a pattern has a unit.

    >>> quarter = (Length(940, "bust") + cm(8)) / 4
    >>> quarter.symbols(), quarter.numbers(), quarter.show()
    ('(bust + 8) / 4', '(94 + 8) / 4', '25.5 cm')
    """

    mm: float
    name: str = ""
    """Set for tapes, sizes, choices and whatever a step has named."""
    operator: str = ""
    """`+`, `-`, `*`, `/`, `at least` or `at most`; empty for a length that was simply given."""
    parts: tuple[Length | float | Fraction, ...] = ()

    def __add__(self, other: Length) -> Length:
        other = _length(other, "add")
        return Length(self.mm + other.mm, operator="+", parts=(self, other))

    def __sub__(self, other: Length) -> Length:
        other = _length(other, "take away")
        return Length(self.mm - other.mm, operator="-", parts=(self, other))

    def __mul__(self, times: float | Fraction | Proportion) -> Length:
        if isinstance(times, Proportion):
            scaled = Length(self.mm * times.part.mm, operator="*", parts=(self, times.part))
            return Length(scaled.mm / times.whole.mm, operator="/", parts=(scaled, times.whole))
        return Length(self.mm * float(times), operator="*", parts=(self, times))

    __rmul__ = __mul__

    @overload
    def __truediv__(self, by: float) -> Length: ...
    @overload
    def __truediv__(self, by: Length) -> Proportion: ...
    def __truediv__(self, by: float | Length) -> Length | Proportion:
        """A length over a number is a length; over a length, a proportion."""
        if isinstance(by, Length):
            return Proportion(self, by)
        return Length(self.mm / by, operator="/", parts=(self, by))

    def named(self, name: str) -> Length:
        """The same length under a name; its calculation is kept."""
        return Length(self.mm, name, self.operator, self.parts)

    def show(self, unit: Unit = Unit.CM) -> str:
        """The result, rounded for reading: `25.5 cm`, `10.04 in`."""
        return f"{_number(self.mm, unit)} {unit.sign}"

    def symbols(self, unit: Unit = Unit.CM) -> str:
        """The formula in words: `(bust + 8) / 4`."""
        return self._formula(lambda leaf: leaf.name.replace("_", " ") or _number(leaf.mm, unit), top=True)

    def numbers(self, unit: Unit = Unit.CM) -> str:
        """The formula with the wearer's numbers put in: `(94 + 8) / 4`."""
        return self._formula(lambda leaf: _number(leaf.mm, unit), top=True)

    def equation(self, unit: Unit = Unit.CM) -> str:
        """Formula, numbers, result, without saying the same thing twice.

        >>> (Length(940, "bust") / 4).equation()
        'bust / 4 = 94 / 4 = 23.5 cm'
        >>> cm(8).equation(), Length(80, "hem").equation()
        ('8 cm', 'hem = 8 cm')
        """
        texts = [self.symbols(unit), self.numbers(unit), self.show(unit)]
        if not self.operator:
            texts = [texts[0], texts[2]] if self.name else [texts[2]]
        return " = ".join(dict.fromkeys(texts))

    def brief(self, unit: Unit = Unit.CM) -> str:
        """As `equation`, but a length that has a name is not worked out again.

        >>> (Length(940, "bust") / 4).named("chest_quarter").brief()
        'chest quarter = 23.5 cm'
        """
        return f"{self.name.replace('_', ' ')} = {self.show(unit)}" if self.name else self.equation(unit)

    def needs(self) -> tuple[str, ...]:
        """Names of the tapes, sizes and choices in the formula, in order, once each."""
        found: dict[str, None] = {}
        for part in self.parts:
            if isinstance(part, Length):
                found |= dict.fromkeys((part.name,) if part.name else part.needs())
        return tuple(found)

    def leg(self, other: Length, least: Length) -> Length:
        """Third side of a right-angled triangle with this as its longest; `least` where there is no such triangle.

        >>> cm(5).leg(cm(3), cm(1)).show()
        '4 cm'
        """
        square = self.mm**2 - other.mm**2
        return Length(math.sqrt(square)) if square > least.mm**2 else least

    def slope(self, name: str) -> float:
        """How much the result grows per unit of the named length in it.

        >>> (Length(940, "bust") / 4 - cm(1)).slope("bust")
        0.25
        """
        if self.name == name:
            return 1.0
        if not self.parts:
            return 0.0
        a, b = self.parts
        left = a.slope(name) if isinstance(a, Length) else 0.0
        right = b.slope(name) if isinstance(b, Length) else 0.0
        if self.operator in ("*", "/"):
            # In a product or quotient of lengths mm meet mm; what is returned is still growth per unit of the name.
            size, factor = _plain(a), _plain(b)
            return left * factor + right * size if self.operator == "*" else (left - right * self.mm) / factor
        if self.operator in _LIMITS:
            first_rules = isinstance(a, Length) and self.mm == a.mm
            return left if first_rules else right
        return left + right if self.operator == "+" else left - right

    def leaves(self) -> tuple[str, ...]:
        """All names in the formula, however deep, in order, once each."""
        found: dict[str, None] = {}
        for part in self.parts:
            if isinstance(part, Length):
                found |= dict.fromkeys(((part.name,) if part.name else ()) + part.leaves())
        return tuple(found)

    def _formula(self, leaf: Callable[[Length], str], *, top: bool = False, within: str = "") -> str:
        if not self.operator or (self.name and not top):
            return leaf(self)
        left, right = (
            part._formula(leaf, within=self.operator + side)  # noqa: SLF001 - another of our own
            if isinstance(part, Length)
            else _factor(part)
            for part, side in zip(self.parts, "lr", strict=True)
        )
        if self.operator in _LIMITS:
            text = f"{left}, {_LIMITS[self.operator]} {right}"
            return f"({text})" if within else text
        text = f"{left} {self.operator} {right}"
        loose = self.operator in "+-"
        return f"({text})" if (loose and within[:1] in ("*", "/")) or (loose and within == "-r") else text


@dataclass(frozen=True, slots=True)
class Proportion:
    """One length over another, to take of a third.

    >>> (Length(340, "neck") * (Length(70, "width") / Length(350, "usual_neck"))).equation()
    'neck * width / usual neck = 34 * 7 / 35 = 6.8 cm'
    """

    part: Length
    whole: Length


Phrase = tuple[str | Length, ...]
"""Words with lengths among them, so that they can be read in centimetres or inches."""


def phrase_text(phrase: Phrase, unit: Unit = Unit.CM) -> str:
    """A phrase as it reads in a unit.

    >>> phrase_text(("down by ", Length(235, "armhole_depth")))
    'down by armhole depth'
    """
    return "".join(part if isinstance(part, str) else _in_words(part, unit) for part in phrase)


def cm(value: float) -> Length:
    """A plain length in centimetres.

    >>> cm(1.5)
    Length(mm=15.0, name='', operator='', parts=())
    """
    return Length(value * 10.0)


def at_least(value: Length, least: Length) -> Length:
    """A length that the method does not let fall below another; the formula says so.

    >>> at_least(Length(-5, "drop"), cm(0)).equation()
    'drop, but at least 0 = -0.5, but at least 0 = 0 cm'
    """
    return Length(max(value.mm, least.mm), operator="at least", parts=(value, least))


def at_most(value: Length, most: Length) -> Length:
    """A length that the method does not let rise above another; the formula says so."""
    return Length(min(value.mm, most.mm), operator="at most", parts=(value, most))


def _length(other: object, verb: str) -> Length:
    if isinstance(other, Length):
        return other
    raise InputError(
        Problem(
            "length-without-unit",
            Severity.ERROR,
            f"cannot {verb} the bare number {other!r} and a length",
            hint=f"a length needs a unit: did you mean cm({other!r})?",
        )
    )


def _in_words(length: Length, unit: Unit) -> str:
    if length.name:
        return length.name.replace("_", " ")
    return f"({length.symbols(unit)})" if length.operator else length.show(unit)


def _number(mm: float, unit: Unit) -> str:
    value = round(mm / unit.mm, 2)
    return f"{value + 0.0:g}" if abs(value) < 1e5 else f"{value:.2f}"


def _plain(part: Length | float | Fraction) -> float:
    return part.mm if isinstance(part, Length) else float(part)


def _factor(value: float | Fraction) -> str:
    return str(value) if isinstance(value, Fraction) else f"{value:g}"
