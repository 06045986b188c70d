"""What is doubtful about received pieces, gathered by kind, so that a thousand pieces make no thousand problems."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

from tapeline.problems import Problem, Severity

__all__ = ["Doubts"]


class _Kind(NamedTuple):
    severity: Severity
    one: str
    many: str
    hint: str


_KINDS = {
    "received-open": _Kind(
        Severity.ERROR,
        "an outline is not closed, and is no piece",
        "{} outlines are not closed, and are no pieces",
        "have it closed in the program that wrote it. Nothing was closed by guess.",
    ),
    "received-crosses": _Kind(
        Severity.ERROR,
        "the outline of a piece crosses or touches itself",
        "the outlines of {} pieces cross or touch themselves",
        "mend it in the program that wrote it: nobody can say what is inside.",
    ),
    "received-name": _Kind(
        Severity.DOUBT,
        "a piece has no name; it is called after its block",
        "{} pieces have no names; they are called after their blocks",
        "text on the piece such as Piece Name: FRONT names it.",
    ),
    "received-size": _Kind(
        Severity.DOUBT,
        "a piece says no size",
        "{} pieces say no size",
        "text on the piece such as Size: 38 says it.",
    ),
    "received-twice": _Kind(
        Severity.DOUBT,
        "a piece is there twice, in the same size",
        "{} pieces are there more than once, in the same size",
        "look which of them is meant.",
    ),
    "received-quantity": _Kind(
        Severity.DOUBT,
        "a piece does not say how often it is cut; once is taken",
        "{} pieces do not say how often they are cut; once is taken",
        "text on the piece such as Quantity: 2 says it.",
    ),
    "received-grain": _Kind(
        Severity.DOUBT,
        "a piece has no grain line",
        "{} pieces have no grain lines",
        "a line on layer 7 says which way the cloth runs.",
    ),
    "received-fold": _Kind(
        Severity.DOUBT,
        "a mirror line does not lie along its outline; the piece is taken as drawn, not as half of one",
        "{} mirror lines do not lie along their outlines; the pieces are taken as drawn, not as halves",
        "look whether the piece is drawn whole or half.",
    ),
    "received-notch": _Kind(
        Severity.DOUBT,
        "a piece has notches more than 2 mm from its outline and its sew lines",
        "{} pieces have notches more than 2 mm from their outlines and their sew lines",
        "look at them in the picture.",
    ),
}
SHOWN = 5


@dataclass(slots=True)
class Doubts:
    """Doubts by kind, and the pieces that raise them; it grows while a file is read."""

    found: dict[str, list[str]] = field(default_factory=dict)

    def about(self, code: str, which: str) -> None:
        """One more."""
        self.found.setdefault(code, []).append(which)

    def told(self, name: str) -> list[Problem]:
        """A problem for each kind, that names the first few."""
        problems = []
        for code, kind in _KINDS.items():
            which = self.found.get(code, [])
            if which:
                says = kind.one if len(which) == 1 else kind.many.format(len(which))
                more = f" and {len(which) - SHOWN} more" if len(which) > SHOWN else ""
                shown = f"{says}: {'; '.join(which[:SHOWN])}{more}"
                problems.append(Problem(code, kind.severity, shown, name, kind.hint))
        return problems
