"""Girths: the garment measured round the drafted pieces, against the tape and the ease that is meant."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.pattern import Cloth, Garment, Girth, width_along, width_at
from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["GIRTH_TOLERANCE_MM", "Meaning", "MeasuredGirth", "girth_problems", "measured_girths"]

GIRTH_TOLERANCE_MM = 0.1


@dataclass(frozen=True, slots=True)
class _Kind:
    code: str
    severity: Severity
    why: str


_TOO_TIGHT = _Kind("too-tight", Severity.ERROR, "more than half of what the cloth stretches")
_NOT_THE_STYLE = _Kind("looseness-outside", Severity.DOUBT, "not what this style means")

_DOES_NOT_GIVE = _Kind("close-for-woven", Severity.DOUBT, "little, as the cloth hardly stretches")
HARDLY_STRETCHES = 10
"""Per cent; woven cloth stretches 1 to 5 per cent on the grain (from memory, no source at hand)."""
LEAST_WOVEN_MM = {"chest": 100.0, "upper_arm": 50.0}
"""Ease without which a garment that does not stretch binds when the arms move.

At the chest the upper end of what a paper-pattern chart calls fitted, 7.6 to 10 cm (from memory); round the upper arm
about 5 cm (Armstrong, quoted at second hand). A style that means to be closer, as the bare block does, is not asked.
"""

Meaning = dict[str, tuple[float, float]]
"""By girth, between which eases in mm a style is what it is called."""

_GOVERNED_BY = {
    "chest": ("garment.looseness.side", 4),
    "waist": ("garment.waist", -4),
    "hip": ("garment.looseness.side", 4),
    "upper_arm": ("garment.looseness.drop", 2),
    "wrist": ("garment.sleeve.wrist_ease", 1),
}
"""The docket line that governs a girth, and by how much it grows for each unit of the line (upper arm: about)."""


@dataclass(frozen=True, slots=True)
class MeasuredGirth:
    """One girth, measured on the pieces."""

    girth: Girth
    garment_mm: float

    @property
    def ease_mm(self) -> float:
        """Garment less tape."""
        return self.garment_mm - self.girth.tape.mm


def measured_girths(garment: Garment) -> list[MeasuredGirth]:
    """All girths of a garment."""
    points, drawn = garment.points, garment.lines
    found = []
    for girth in garment.girths:
        total = 0.0
        for name, level, times in girth.across:
            piece = garment.piece(name)
            label = f"{name}.{level}"
            if label in points:
                width = width_at(piece, points[label])
            elif label in drawn and not any(edge.name.startswith(level) for edge in piece.edges):
                width = width_along(piece, drawn[label])
            else:
                width = piece.along(level)
            total += times * width
        found.append(MeasuredGirth(girth, total))
    return found


def girth_problems(girths: list[MeasuredGirth], cloth: Cloth, meaning: Meaning, unit: Unit) -> Iterator[Problem]:
    """Girths that are not what the method meant, too tight for the cloth, or not what the style is called."""
    for found in girths:
        name, ease, off = found.girth.name, found.ease_mm, found.ease_mm - found.girth.ease.mm
        if abs(off) > GIRTH_TOLERANCE_MM:
            yield Problem(
                "girth-mismatch",
                Severity.ERROR,
                f"the garment at the {name.replace('_', ' ')} is {off:.1f} mm off what was meant",
                f"girth {name}",
                "tell us of the docket: this is a fault of the method",
            )
        least, most = meaning.get(name, (-math.inf, math.inf))
        tight = -found.girth.tape.mm * cloth.stretch_across / 100 / 2
        if ease < tight:
            yield _outside(_TOO_TIGHT, found, tight, unit)
        elif cloth.stretch_across < HARDLY_STRETCHES and ease < (woven := LEAST_WOVEN_MM.get(name, -math.inf)) < most:
            yield _outside(_DOES_NOT_GIVE, found, woven, unit)
        elif ease < least - GIRTH_TOLERANCE_MM:
            yield _outside(_NOT_THE_STYLE, found, least, unit)
        elif ease > most + GIRTH_TOLERANCE_MM:
            yield _outside(_NOT_THE_STYLE, found, most, unit)


def _outside(kind: _Kind, found: MeasuredGirth, limit_mm: float, unit: Unit) -> Problem:
    name = found.girth.name
    words = name.replace("_", " ")
    line, grows = _GOVERNED_BY[name]
    more = (limit_mm - found.ease_mm) / grows
    ease, change = (f"{mm / unit.mm:+.1f} {unit.sign}" for mm in (found.ease_mm, more))
    tape = f"{found.girth.tape.mm / unit.mm:.1f} {unit.sign}"
    return Problem(
        kind.code,
        kind.severity,
        f"the garment is {ease} on the {words} tape of {tape}: {kind.why}",
        f"girth {name}",
        f"change {line} by about {change}, or take the tape {words} again",
        (line, more),
    )
