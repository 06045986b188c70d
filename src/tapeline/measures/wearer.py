"""The noun: a wearer's tapes, complete and believable."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from tapeline.measures.figures import Figure
from tapeline.measures.slips import other_unit, suggested, swapped_by_limits, value_slip
from tapeline.measures.tapes import TAPES, required_tapes, tapes_of
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.units import Unit

__all__ = ["Wearer", "allowed", "wearer_problems"]

_FULLEST = frozenset({"bust", "chest"})
"""The words for the fullest girth."""


@dataclass(frozen=True, slots=True)
class Wearer:
    """Somebody's tapes on a day.

    `wearer["bust"]` answers the fullest girth of every figure, so that drafting has one word for it.

    >>> tapes = dict(chest=1000, upper_chest=1010, waist=860, hip=1000, shoulder_width=440)
    >>> tapes |= dict(back_length=445, hip_depth=190, arm_length=625)
    >>> arne = Wearer("Arne", Figure.MAN, tapes)
    >>> arne["bust"], arne.given("neck"), arne.with_tape("chest", 1010)["chest"]
    (1000, False, 1010)

    Raises:
        InputError: With all the errors of `wearer_problems`.
    """

    name: str
    figure: Figure
    tapes: Mapping[str, float] = field(hash=False)
    """By name, in mm, or radians for an angle. A child's chest is kept as bust."""
    allow: frozenset[str] = frozenset()
    """Codes of problems that the maker has looked at and lets pass: `tape-unlikely`, or for one tape
    `tape-unlikely:waist`."""
    unit: Unit = Unit.CM
    """In which the maker reads lengths."""
    made_from: str = ""
    """Empty for a person who was measured; otherwise where the tapes are from."""

    def __post_init__(self) -> None:
        tapes = _one_word(self.figure, self.tapes)
        found = wearer_problems(self.figure, self.tapes, self.unit, self.allow)
        if any(problem.severity is Severity.ERROR for problem in found):
            raise InputError(found)
        object.__setattr__(self, "tapes", MappingProxyType({name: tapes[name] for name in TAPES if name in tapes}))

    def __getitem__(self, name: str) -> float:
        """A tape in mm, or radians for an angle.

        Raises:
            KeyError: It was not taken.
        """
        return self.tapes[self._ours(name)]

    def given(self, name: str) -> bool:
        """Whether the tape was taken."""
        return self._ours(name) in self.tapes

    def with_tape(self, name: str, value: float) -> Wearer:
        """The same wearer with one tape changed or added."""
        return replace(self, tapes={**self.tapes, self._ours(name): value})

    def show(self, name: str) -> str:
        """A tape as its maker reads it."""
        return TAPES[self._ours(name)].show(self[name], self.unit)

    def __reduce__(self) -> tuple[type[Wearer], tuple[Any, ...]]:
        """Travels between processes."""
        return Wearer, (self.name, self.figure, dict(self.tapes), self.allow, self.unit, self.made_from)

    def _ours(self, name: str) -> str:
        return self.figure.fullest if name in {"bust", "chest"} else name


def wearer_problems(
    figure: Figure, tapes: Mapping[str, float], unit: Unit = Unit.CM, allow: frozenset[str] = frozenset()
) -> list[Problem]:
    """All that keeps tapes from being a wearer's: missing, unknown, or outside what a tape can be.

    Each problem stands at `tapes.NAME`, or at `tapes` when it is about all; a reader puts its own place there.

    >>> [problem.code for problem in wearer_problems(Figure.CHILD, {"waste": 600})]
    ['tape-missing', 'tape-unknown']
    """
    ours = _one_word(figure, tapes)
    words = {tape.name: tape for tape in tapes_of(figure)}
    problems = []
    # Somebody who wrote bust for a man is told the word, not that something is missing.
    there = ours.keys() | ({figure.fullest} if ours.keys() & _FULLEST else set())
    if missing := [tape for tape in required_tapes(figure) if tape.name not in there]:
        names = ", ".join(tape.name for tape in missing)
        how = f"how to take the {missing[0].title.lower()}: {missing[0].take}" if len(missing) == 1 else ""
        problems.append(Problem("tape-missing", Severity.ERROR, f"there is no tape for: {names}", "tapes", how))
    if figure is Figure.CHILD and tapes.keys() >= _FULLEST:
        says = "bust and chest are two words for one tape of a child, and both are there"
        problems.append(Problem("tape-unknown", Severity.ERROR, says, "tapes.chest", "leave one of them out"))
    problems += [_unknown(name, figure) for name in ours if name not in words]
    known = {name: value for name, value in ours.items() if name in words}
    if not missing and (slip := other_unit(figure, known, unit)):
        return [Problem("tapes-unit", Severity.ERROR, slip.says, "tapes", slip.hint), *problems]
    outside = [name for name, value in known.items() if not words[name].limits[figure].hold(value)]
    swap = swapped_by_limits(figure, known, outside, unit)
    if swap:
        problems.append(Problem("tapes-swapped", Severity.ERROR, swap.says, f"tapes.{swap.names[0]}", swap.hint))
    alone = [name for name in outside if not (swap and name in swap.names)]
    return problems + [_outside(figure, known, name, unit, allow) for name in alone]


def allowed(problem: Problem, name: str, allow: frozenset[str]) -> Problem:
    """A problem that the maker lets pass becomes a note; others stay as they are."""
    if problem.code not in allow and f"{problem.code}:{name}" not in allow:
        return problem
    return replace(problem, severity=Severity.NOTE, says=f"{problem.says}; allowed", hint="")


def _one_word(figure: Figure, tapes: Mapping[str, float]) -> dict[str, float]:
    """A child's chest is kept as bust; when both are there, the bust."""
    if figure is not Figure.CHILD or "chest" not in tapes:
        return dict(tapes)
    return {"bust": tapes["chest"], **{name: value for name, value in tapes.items() if name != "chest"}}


def _unknown(name: str, figure: Figure) -> Problem:
    if name in TAPES:
        says = f"wearers of the figure {figure} have no tape {name}"
        hint = f"did you mean {figure.fullest}?" if name in _FULLEST else "leave it out, or set the figure"
    else:
        says = f"there is no tape named {name}"
        hint = closest(name, [tape.name for tape in tapes_of(figure)])
    return Problem("tape-unknown", Severity.ERROR, says, f"tapes.{name}", hint)


def _outside(figure: Figure, tapes: Mapping[str, float], name: str, unit: Unit, allow: frozenset[str]) -> Problem:
    tape = TAPES[name]
    limits = tape.limits[figure]
    low, high, shown = (tape.show(value, unit) for value in (limits.low, limits.high, tapes[name]))
    says = f"{name} is {shown}; for the figure {figure} it lies between {low} and {high}: {tape.reason}"
    slip = value_slip(figure, tapes, name, unit)
    keep = f'to keep {shown}, allow "tape-range:{name}"'
    span = suggested(figure, tapes, name, unit)
    again = "take it again" + (f": {span}" if span else "") + f"; {keep}"
    hint = f"{slip.hint} Otherwise {again}" if slip else again
    return allowed(Problem("tape-range", Severity.ERROR, says, f"tapes.{name}", hint), name, allow)
