"""A `Step` is one thing done on the paper, with the reason for it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from tapeline.geometry import Path, Point
from tapeline.lengths import Length, Phrase, phrase_text
from tapeline.units import Unit

__all__ = ["Step", "StepKind"]


class StepKind(StrEnum):
    """What a step leaves on the paper."""

    SECTION = "section"
    """A heading: nothing is drawn."""
    SIZE = "size"
    """A length worked out before drawing: a tape, an estimate, a rule."""
    POINT = "point"
    LINE = "line"


@dataclass(frozen=True, slots=True)
class Step:
    """One line of the construction: label, reason, how, formula, and what it needs."""

    kind: StepKind
    label: str
    """`back.nape`, `armhole_depth`; unique in a draft."""
    says: str
    """Why it is there, in the trade's words."""
    how: Phrase = ()
    """What the hand does: `from nape, down by (armhole depth + armhole drop)`."""
    lengths: tuple[Length, ...] = ()
    """The calculations it uses; their text is the formula."""
    needs: tuple[str, ...] = ()
    """Labels of the points, lines, sizes and tapes it comes from."""
    source: str = ""
    """Where the rule comes from."""
    point: Point | None = None
    path: Path | None = None

    @property
    def sheet(self) -> str:
        """The piece it is drawn on; empty for a size."""
        return self.label.rpartition(".")[0]

    def how_text(self, unit: Unit = Unit.CM) -> str:
        """What the hand does, in a unit."""
        return phrase_text(self.how, unit)

    def equations(self, unit: Unit = Unit.CM) -> tuple[str, ...]:
        """`armhole depth = upper chest / 4 - 1 = 86 / 4 - 1 = 20.5 cm`, one for each calculation.

        A size is worked out in its own step; where a point uses it, only its result is told.
        """
        if self.kind is StepKind.SIZE:
            return tuple(length.equation(unit) for length in self.lengths)
        return tuple(length.brief(unit) for length in self.lengths)
