"""Problems: everything that is wrong, doubtful or worth knowing, as data.

Checks and readers yield `Problem` values; text, JSON, the page and the drawing are views of them.
A stage that cannot go on raises `InputError` with all the problems it found, worst first.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from difflib import get_close_matches
from enum import StrEnum

__all__ = ["InputError", "Problem", "Severity", "closest", "worst_first"]


class Severity(StrEnum):
    """How much a problem matters to the cloth.

    >>> Severity.ERROR.rank < Severity.DOUBT.rank < Severity.NOTE.rank
    True
    """

    ERROR = "error"
    """Nothing may be cut: the input cannot be drafted, or the draft does not hold together."""
    DOUBT = "doubt"
    """Possible, but look again before cutting."""
    NOTE = "note"
    """Worth knowing; nothing to mend."""

    @property
    def rank(self) -> int:
        """0 for the worst."""
        return list(Severity).index(self)


@dataclass(frozen=True, slots=True)
class Problem:
    """One finding: what is wrong, where, and what to try.

    >>> print(
    ...     Problem(
    ...         "tape-range",
    ...         Severity.ERROR,
    ...         "hip is 9.8 cm; it lies between 60 and 200 cm",
    ...         where='tapes.hip = "9.8"',
    ...         hint="did you mean 98 cm?",
    ...     )
    ... )
    error: hip is 9.8 cm; it lies between 60 and 200 cm  [tape-range]
      in tapes.hip = "9.8"
      hint: did you mean 98 cm?
    """

    code: str
    """Short name of the kind of problem, such as `tape-range`: what `allow` takes, and its entry in the docs."""
    severity: Severity
    says: str
    """What is wrong, with the value as typed, what is allowed and why."""
    where: str = ""
    """A docket line (`marit.toml, line 7: hip = 9.8`), or a place on the garment (`back.armhole`)."""
    hint: str = ""
    """What to try: names the tape, size or docket line to change, and by how much."""
    change: tuple[str, float] | None = None
    """The hint for a machine: a length of the docket (`garment.waist`), and by how many mm it should grow."""

    def __str__(self) -> str:
        lines = [f"{self.severity}: {self.says}  [{self.code}]"]
        if self.where:
            lines.append(f"  in {self.where}")
        if self.hint:
            lines.append(f"  hint: {self.hint}")
        return "\n".join(lines)

    @property
    def data(self) -> dict[str, str]:
        """For JSON; `change` is left out.

        >>> Problem("tape-range", Severity.DOUBT, "hip is 98 cm").data["severity"]
        'doubt'
        """
        return {
            "code": self.code,
            "severity": str(self.severity),
            "says": self.says,
            "where": self.where,
            "hint": self.hint,
        }

    def at(self, where: str) -> Problem:
        """The same problem, with its place."""
        return replace(self, where=where)


class InputError(ValueError):
    """Something given cannot be used; carries every problem found, worst first, and what was not done.

    >>> error = InputError([Problem("tape-missing", Severity.ERROR, "there is no tape for the hip")])
    >>> print(error)
    error: there is no tape for the hip  [tape-missing]
    """

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        found = (problems,) if isinstance(problems, Problem) else problems
        self.problems: tuple[Problem, ...] = tuple(worst_first(found))
        super().__init__("\n".join(map(str, self.problems)))

    def __reduce__(self) -> tuple[type[InputError], tuple[tuple[Problem, ...]]]:
        """Travels between processes with its problems."""
        return InputError, (self.problems,)


def worst_first(problems: Iterable[Problem]) -> list[Problem]:
    """Sorted by severity, otherwise in the order found."""
    return sorted(problems, key=lambda problem: problem.severity.rank)


def closest(word: str, words: Iterable[str]) -> str:
    """A hint for a word that is not known: the nearest known one, or all of them.

    >>> closest("waste", ["waist", "hip"])
    'did you mean waist?'
    >>> closest("zzz", ["waist", "hip"])
    'known are hip, waist'
    """
    known = sorted(words)
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    return f"did you mean {near[0]}?" if near else "known are " + ", ".join(known)
