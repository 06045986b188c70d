"""Truing: everything that can be checked on a drafted garment before cloth is cut."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.measures import Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import Problem, Severity, worst_first
from tapeline.truing.girths import Meaning, MeasuredGirth, girth_problems, measured_girths
from tapeline.truing.hood import HoodFit, hood_fit, hood_problems
from tapeline.truing.joins import JoinAngle, SquareAngle, join_angles, joins_problems, square_angles
from tapeline.truing.opening import Opening, neck_opening, opening_problems
from tapeline.truing.outlines import outline_problems
from tapeline.truing.reach import Hang, hang_note, sleeve_hang
from tapeline.truing.walk import SeamWalk, walk, walk_problems
from tapeline.truing.waves import wave_problems
from tapeline.units import Unit

__all__ = ["Truing", "true"]


@dataclass(frozen=True, slots=True)
class Truing:
    """What was measured on the garment, and what was found."""

    walks: tuple[SeamWalk, ...]
    joins: tuple[JoinAngle, ...]
    squares: tuple[SquareAngle, ...]
    girths: tuple[MeasuredGirth, ...]
    opening: Opening | None
    hood: HoodFit | None
    hang: Hang | None
    findings: tuple[Problem, ...]

    @property
    def holds(self) -> bool:
        """Whether the garment may be cut: no finding is an error."""
        return all(finding.severity is not Severity.ERROR for finding in self.findings)


def true(
    garment: Garment,
    wearer: Wearer,
    cloth: Cloth,
    *,
    meaning: Meaning,
    pull_on: bool,
    unit: Unit = Unit.CM,
) -> Truing:
    """Walk the seams, look at joins, folds and outlines, measure girths, opening, hood and hang.

    `meaning` says between which eases (mm) the style is what it is called; `pull_on` whether it goes over the head.
    """
    walks = walk(garment)
    joins, squares = join_angles(garment), square_angles(garment)
    girths = measured_girths(garment)
    # A front that opens lets the head through: there is no opening to measure.
    opening = neck_opening(garment, wearer, cloth) if pull_on else None
    hood = hood_fit(garment, wearer)
    hang = sleeve_hang(garment)

    def findings() -> Iterator[Problem]:
        yield from outline_problems(garment)
        yield from walk_problems(walks)
        yield from joins_problems(joins, squares)
        yield from wave_problems(garment)
        yield from girth_problems(girths, cloth, meaning, unit)
        yield from opening_problems(opening, wearer, pull_on=pull_on, unit=unit)
        yield from hood_problems(hood, unit)
        if hang is not None:
            yield hang_note(hang)

    return Truing(
        tuple(walks), tuple(joins), tuple(squares), tuple(girths), opening, hood, hang, tuple(worst_first(findings()))
    )
