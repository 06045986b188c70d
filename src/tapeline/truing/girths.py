"""Girths: the garment measured round the drafted pieces, against the tape and the ease that is meant."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.geometry import Line, Point
from tapeline.pattern import Cloth, Garment, Girth, Piece
from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["GIRTH_TOLERANCE_MM", "Meaning", "MeasuredGirth", "girth_problems", "measured_girths"]

GIRTH_TOLERANCE_MM = 0.1
ON_THE_LEVEL_MM = 1e-6

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
    points = garment.points
    found = []
    for girth in garment.girths:
        total = 0.0
        for name, level, times in girth.across:
            piece = garment.piece(name)
            label = f"{name}.{level}"
            width = _width(piece, points[label]) if label in points else piece.edge(level).length
            total += times * width
        found.append(MeasuredGirth(girth, total))
    return found


def _width(piece: Piece, level: Point) -> float:
    """Across a piece at a level, from its outermost crossing to its innermost."""
    outline = piece.seam_line
    xs = [p.x for p in outline.crossings(Line(level, Point(level.x + 1, level.y)))]
    xs += [p.x for p in outline.knots if abs(p.y - level.y) < ON_THE_LEVEL_MM]
    sides = [edge.path for edge in piece.edges if edge.name == "side"]
    if sides and sides[0].end.y > level.y:
        # The hem rises to the side so that it meets it square: the side is run on down to the level.
        way = sides[0].arrives
        xs.append(sides[0].end.x + way.x * (level.y - sides[0].end.y) / way.y)
    return max(xs) - min(xs)


def girth_problems(girths: list[MeasuredGirth], cloth: Cloth, meaning: Meaning, unit: Unit) -> Iterator[Problem]:
    """Girths that are not what the method meant, too tight for the cloth, or not what the style is called."""
    for found in girths:
        girth, ease = found.girth, found.ease_mm
        words = girth.name.replace("_", " ")
        line, grows = _GOVERNED_BY[girth.name]
        if abs(ease - girth.ease.mm) > GIRTH_TOLERANCE_MM:
            yield Problem(
                "girth-mismatch",
                Severity.ERROR,
                f"the garment at the {words} is {found.garment_mm - girth.tape.mm - girth.ease.mm:.1f} mm off what was meant",
                f"girth {girth.name}",
                "tell us of the docket: this is a fault of the method",
            )
        least, most = meaning.get(girth.name, (-1e9, 1e9))
        tight = -girth.tape.mm * cloth.stretch_across / 100 / 2
        if ease < tight:
            yield _outside(
                "too-tight",
                Severity.ERROR,
                found,
                tight,
                line,
                grows,
                unit,
                "more than half of what the cloth stretches",
            )
        elif not least - GIRTH_TOLERANCE_MM <= ease <= most + GIRTH_TOLERANCE_MM:
            edge = least if ease < least else most
            yield _outside(
                "looseness-outside", Severity.DOUBT, found, edge, line, grows, unit, "not what this style means"
            )


def _outside(
    code: str, severity: Severity, found: MeasuredGirth, edge: float, line: str, grows: float, unit: Unit, why: str
) -> Problem:
    def show(mm: float) -> str:
        return f"{mm / unit.mm:+.1f} {unit.sign}"

    words = found.girth.name.replace("_", " ")
    change = (edge - found.ease_mm) / grows
    return Problem(
        code,
        severity,
        f"the garment is {show(found.ease_mm)} on the {words} tape of {found.girth.tape.mm / unit.mm:.1f} {unit.sign}: {why}",
        f"girth {found.girth.name}",
        f"change {line} by about {show(change)}, or take the tape {words} again",
    )
