"""A `Reader` takes values out of a docket's tables and keeps everything that is wrong with them."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import Any, TypeVar

from tapeline.docket.places import Keys
from tapeline.lengths import Length
from tapeline.pattern import Choice
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.units import Unit, parse_length

__all__ = ["NOTHING_DONE", "Reader", "as_typed", "dotted", "sentences"]

NOTHING_DONE = "Nothing was drafted."
AS_SHOWN = 0.005
"""A limit is met by what is shown as meeting it: 8 cm is shown as 3.15 in, so 3.15 in is not refused."""
LONGEST_TEXT = 80
"""Of a name or a kind of cloth: it has to fit on a piece."""

_NUMBER = re.compile(r"([+-]?\d+(?:[.,]\d+)?)(?:\s*/\s*(\d+))?\s*%?")
_Word = TypeVar("_Word", bound=StrEnum)


@dataclass
class Reader:
    """The reading of one docket. It grows: problems are added, and at the end they are raised together."""

    name: str
    where: Callable[[Keys], str]
    """The place of a key, for a person."""
    unit: Unit = Unit.CM
    problems: list[Problem] = field(default_factory=list)

    def refuse(self, code: str, keys: Keys, says: str, hint: str = "") -> None:
        """Keep an error."""
        self.problems.append(Problem(code, Severity.ERROR, says, self.where(keys), hint))

    def keep(self, error: InputError, keys: Keys, hint: str = "") -> None:
        """Keep what another stage said of the value at `keys`."""
        for problem in error.problems:
            said = sentences(problem.hint, hint)
            self.problems.append(Problem(problem.code, problem.severity, problem.says, self.where(keys), said))

    def keep_unread(self, error: InputError, keys: Keys) -> None:
        """Keep what was said of a value that could not be read, with the key that it stands at."""
        for problem in error.problems:
            self.refuse(problem.code, keys, f"{keys[-1]}: {problem.says}", sentences(problem.hint, NOTHING_DONE))

    def plain(self, value: object, keys: Keys) -> bool:
        """Whether a value is a number or text, as lengths are; keeps an error when it is a date, a list or a table."""
        if isinstance(value, str | int | float):
            return True
        says = f'{dotted(keys)} is {as_typed(value)}; it is a number, or text such as "84.5 cm"'
        self.refuse("docket-type", keys, says)
        return False

    def table(self, parent: Mapping[str, Any], keys: Keys) -> Mapping[str, Any]:
        """The table that the last of the keys opens; empty where it is left out or is something else."""
        value = parent.get(keys[-1], {})
        if isinstance(value, Mapping):
            return value
        self.refuse(
            "docket-type",
            keys,
            f"{dotted(keys)} is {as_typed(value)}; it is a table of its own",
            f"write [{dotted(keys)}] on a line and its keys below, or {keys[-1]} = {{ ... }}",
        )
        return {}

    def unknown(self, table: Mapping[str, Any], keys: Keys, known: Iterable[str]) -> None:
        """Keep an error for every key that nobody reads."""
        known = list(known)
        for key in table:
            if key in known:
                continue
            place = f"[{dotted(keys)}]" if keys else "a docket"
            hint = closest(key, known)
            if key == "allow":
                hint = "allow stands at the top of the docket, above the first [table]"
            self.refuse("docket-key-unknown", (*keys, key), f"{place} has no key {key}", hint)

    def text(self, value: object, keys: Keys) -> str | None:
        """Words for a person: one line, not too long."""
        if not isinstance(value, str):
            self.refuse(
                "docket-type", keys, f"{dotted(keys)} is {as_typed(value)}; it is text", f'write {keys[-1]} = "..."'
            )
        elif odd := next((c for c in value if not c.isprintable()), ""):
            says = f"{dotted(keys)} is {as_typed(value)}; the sign U+{ord(odd):04X} in it cannot be written on a piece"
            self.refuse("docket-text", keys, says, "leave it out, or write a plain space in its place")
        elif not value.strip() or len(value) > LONGEST_TEXT:
            self.refuse(
                "docket-text",
                keys,
                f"{dotted(keys)} is {as_typed(value)}; it is one line of 1 to {LONGEST_TEXT} letters, "
                "for it is written on the pieces",
            )
        else:
            return value.strip()
        return None

    def word(
        self, value: object, keys: Keys, words: Iterable[str], code: str = "choice-unknown", otherwise: str = ""
    ) -> str | None:
        """One of some words; `otherwise` says what else could stand there, and is read elsewhere."""
        words = list(words)
        if isinstance(value, str) and value.strip().casefold() in words:
            return value.strip().casefold()
        says = f"{dotted(keys)} is {as_typed(value)}; it is one of {', '.join(words)}{otherwise}"
        hint = closest(value, words) if isinstance(value, str) else f'write {keys[-1]} = "{words[0]}"'
        self.refuse(code, keys, says, "" if hint.startswith("known are") else hint)
        return None

    def kind(self, value: object, keys: Keys, kinds: type[_Word]) -> _Word | None:
        """The same, of an enumeration."""
        word = self.word(value, keys, [str(kind) for kind in kinds])
        return None if word is None else kinds(word)

    def number(self, value: object, keys: Keys, choice: Choice) -> float | Fraction | None:
        """A number that is not a length: `0.25`, `"1/4"`, `"35 %"`."""
        read: float | Fraction | None = None
        if isinstance(value, str) and (match := _NUMBER.fullmatch(value.strip())):
            whole = Fraction(match[1].replace(",", "."))
            below = int(match[2] or 1)
            read = (whole / below if match[2] else float(whole)) if below else None
        elif isinstance(value, int | float) and not isinstance(value, bool):
            read = _float(value)
        if read is None or not math.isfinite(read):
            hint = 'numbers read like 35, 0.25, or "1/4" in quotes'
            self.refuse(
                "number-not-understood", keys, f"{dotted(keys)} is {as_typed(value)}, which is not a number", hint
            )
            return None
        if not choice.least <= read <= choice.most:
            self._range(keys, value, f"{choice.least:g}", f"{choice.most:g}", choice.says)
            return None
        return read

    def length(self, value: object, keys: Keys, choice: Choice) -> Length | None:
        """A length within its range, which is in cm."""
        if not self.plain(value, keys):
            return None
        try:
            mm = parse_length(value, self.unit, signed=True)
        except InputError as error:
            self.keep_unread(error, keys)
            return None
        slack = AS_SHOWN * self.unit.mm
        if not choice.least * 10 - slack <= mm <= choice.most * 10 + slack:
            least, most = (Length(end * 10).show(self.unit) for end in (choice.least, choice.most))
            self._range(keys, value, least.removesuffix(f" {self.unit.sign}"), most, choice.says)
            return None
        return Length(mm)

    def _range(self, keys: Keys, value: object, least: str, most: str, says: str) -> None:
        shown = value.strip() if isinstance(value, str) else as_typed(value)
        self.refuse(
            "choice-range",
            keys,
            f"{dotted(keys)} is {shown}; it lies between {least} and {most}: {says}",
            f"write a value between them, or leave {keys[-1]} out for the default",
        )


def sentences(*parts: str) -> str:
    """Sentences after each other, each with its end.

    >>> sentences("did you mean hip?", "", "Nothing was drafted.")
    'did you mean hip? Nothing was drafted.'
    """
    return " ".join(part if part[-1] in ".?!" else f"{part}." for part in parts if part)


def dotted(keys: Keys) -> str:
    """`garment.neckline.widen`."""
    return ".".join(keys)


def as_typed(value: object) -> str:
    """A value as it stands in a docket, shortened: a stray file must not fill the screen."""
    match value:
        case str():
            text = f'"{value}"'
        case bool():
            text = str(value).lower()
        case Mapping():
            text = "a table"
        case list():
            text = "a list"
        case int():
            text = str(value) if abs(value) < 10**60 else "a number of more than 60 digits"
        case _:
            text = str(value)
    text = "".join(c if c.isprintable() else " " for c in text)
    return text if len(text) <= 60 else text[:57] + "..."


def _float(number: float) -> float:
    try:
        return float(number)
    except OverflowError:
        return math.inf
