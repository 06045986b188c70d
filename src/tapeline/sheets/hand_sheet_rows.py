"""What the hand sheet says: a group for each section of the construction, with the texts of its steps."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from tapeline.lengths import Length
from tapeline.pattern import Garment, Size, Source, Step, StepKind
from tapeline.sheets.construction import sections
from tapeline.units import Unit, show_length

__all__ = ["EMPTY", "Entry", "Group", "Speaker", "groups", "plain_name"]

EMPTY = "\N{OBJECT REPLACEMENT CHARACTER}"
"""Stands in a text where an empty box is drawn."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One step as it is read: its number is that of `tapeline draft --steps`."""

    number: int
    step: Step
    name: str
    """`back shoulder tip`: without the piece, which stands above."""
    says: str
    how: str
    equations: tuple[str, ...]
    result: str
    """The number of a size, with its unit; empty for a point or a line."""


@dataclass(frozen=True, slots=True)
class Group:
    """The steps below one heading."""

    title: str
    entries: tuple[Entry, ...]

    @property
    def sheets(self) -> tuple[str, ...]:
        """The pieces that are drawn on, in order; none where there is only reckoning."""
        return tuple(dict.fromkeys(e.step.sheet for e in self.entries if e.step.kind is not StepKind.SIZE))


@dataclass(frozen=True, slots=True)
class Speaker:
    """How lengths are told: in a unit, with the wearer's numbers, or with an empty box in place of each."""

    unit: Unit
    blank: bool
    sizes: Mapping[str, Size]

    def fixed(self, length: Length) -> bool:
        """Whether it is the same for every wearer: a number of the method, or of the maker's choices."""
        known = self.sizes.get(length.name)
        if length.name and known is not None and known.source is Source.CHOICE:
            return True
        lengths = [part for part in length.parts if isinstance(part, Length)]
        return all(map(self.fixed, lengths)) if lengths else not length.name

    def equation(self, length: Length, *, whole: bool) -> str:
        """Formula, numbers and result; `whole` works a named length out again."""
        if self.blank and not self.fixed(length):
            formula = length.symbols(self.unit) if whole or not length.name else plain_name(length.name)
            return f"{formula} = {EMPTY} {self.unit.sign}"
        text = length.equation(self.unit) if whole else length.brief(self.unit)
        return text + self.ruler(length.mm)

    def result(self, length: Length) -> str:
        """The number with its unit."""
        if self.blank and not self.fixed(length):
            return f"{EMPTY} {self.unit.sign}"
        return length.show(self.unit)

    def ruler(self, mm: float) -> str:
        """Where inches have decimals, the nearest mark of a ruler that has sixteenths."""
        sixteenths = Fraction(round(abs(mm) / 25.4 * 16), 16)
        if self.unit is Unit.CM or sixteenths == Fraction(f"{abs(mm) / 25.4:.2f}").limit_denominator(4):
            return ""
        return f" (on the ruler {show_length(mm, self.unit).removeprefix('≈')})"

    def entry(self, number: int, step: Step) -> Entry:
        """A step in words."""
        whole = step.kind is StepKind.SIZE
        equations = [self.equation(length, whole=whole) for length in step.lengths]
        if step.path is not None and not self.blank:
            long = Length(step.path.length)
            equations.append(f"Check: it is {long.show(self.unit)} long{self.ruler(long.mm)}.")
        name, how = plain_name(step.label.rpartition(".")[2]), step.how_text(self.unit)
        result = self.result(step.lengths[-1]) if whole and step.lengths else ""
        # "1 cm" alone says nothing that `down by 1 cm` has not said.
        said = tuple(text for text in equations if text not in how)
        return Entry(number, step, name, step.says, how, said, result)


def groups(garment: Garment, unit: Unit, *, blank: bool) -> tuple[Group, ...]:
    """All steps of a garment in their order, below their headings."""
    speaker = Speaker(unit, blank, {size.name: size for size in garment.sizes})
    return tuple(_numbered(garment.steps, speaker))


def _numbered(steps: Iterable[Step], speaker: Speaker) -> Iterable[Group]:
    number = 0
    for title, inside in sections(steps):
        yield Group(title, tuple(speaker.entry(number + n, step) for n, step in enumerate(inside, start=1)))
        number += len(inside)


def plain_name(name: str) -> str:
    """A name as it is read.

    >>> plain_name("back_shoulder_tip")
    'back shoulder tip'
    """
    return name.replace("_", " ").replace(".", " ")
