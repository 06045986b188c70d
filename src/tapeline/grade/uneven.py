"""Which sizes depart from even steps, and why: the step of a tape, a limit in a rule, or a curve."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from statistics import median

from tapeline.grade.chart import ChartRow
from tapeline.grade.rulings import rulings, upstream
from tapeline.measures import TAPES, Wearer
from tapeline.pattern import Garment
from tapeline.units import Unit

__all__ = ["EVEN_MM", "Cause", "Departure", "GradedSize", "Uneven", "departures", "told_together"]

EVEN_MM = 1.0
"""Steps that differ by less are even: nobody cuts that (our own choice)."""
TOLD_SHARE = 0.15
"""A tape that is behind less of a departure than this is not named."""
LEAST_TOLD_MM = 0.5


@dataclass(frozen=True, slots=True)
class Cause:
    """What is behind a part of a departure."""

    kind: str
    """`tape`, `limit` or `curve`."""
    name: str
    """Of the tape; the limit's formula; empty for a curve."""
    mm: float | None
    """How much of the departure it is behind; None where that is not known for it alone."""
    says: str


@dataclass(frozen=True, slots=True)
class Departure:
    """A step of a measure that is not the usual one."""

    row: str
    title: str
    index: int
    """Of the size that the step goes to."""
    step_mm: float
    usual_mm: float
    """The run's middle step of this measure."""
    causes: tuple[Cause, ...]


@dataclass(frozen=True, slots=True)
class GradedSize:
    """One size of a run."""

    label: str
    wearer: Wearer
    garment: Garment


def departures(
    rows: Sequence[ChartRow],
    sizes: Sequence[GradedSize],
    slopes: Mapping[str, Mapping[str, float]],
    unit: Unit = Unit.CM,
) -> tuple[Departure, ...]:
    """Every uneven step of a chart, from size to size, with its causes.

    Args:
        rows: The measurement chart.
        sizes: From size to size, as the chart has them.
        slopes: By tape and measure, how much a measure grows for each mm (radian) of the tape, as measured by
            drafting anew.
        unit: In which lengths are told.
    """
    found: list[Departure] = []
    for row in rows:
        values = [value for value in row.mm if value is not None]
        if len(values) != len(row.mm) or len(values) < 3:
            continue  # two sizes have one step, and nothing to hold it against
        steps = [after - before for before, after in pairwise(values)]
        usual = median(steps)
        uneven = [number for number, step in enumerate(steps, 1) if abs(step - usual) > EVEN_MM]
        if not uneven:
            continue
        from_ = upstream(sizes[0].garment, row.drawn)
        ruled = [rulings(size.garment, from_) for size in sizes]
        for index in uneven:
            off = steps[index - 1] - usual
            tapes = _tapes(row.name, index, sizes, slopes, unit)
            rest = off - sum(cause.mm or 0.0 for cause in tapes)
            limits = _limits(ruled, index, [size.label for size in sizes])
            causes = [*_told(tapes, off), *limits]
            if abs(rest) > LEAST_TOLD_MM and abs(rest) > TOLD_SHARE * abs(off) and not limits:
                says = f"{_signed(rest, unit)} {unit.sign} of lines whose length is not in proportion to the tapes"
                causes.append(Cause("curve", "", rest, says))
            found.append(Departure(row.name, row.title, index, steps[index - 1], usual, tuple(causes)))
    return tuple(sorted(found, key=lambda departure: departure.index))


@dataclass(frozen=True, slots=True)
class Uneven:
    """Departures of one measure that follow each other and have the same causes, told as one."""

    title: str
    first: int
    """Of the departures: the size that the first step goes to."""
    last: int
    steps_mm: tuple[float, ...]
    usual_mm: float
    causes: tuple[Cause, ...]
    """Of the first of them."""


def told_together(found: Sequence[Departure]) -> tuple[Uneven, ...]:
    """Departures gathered: a measure by its steps, one entry where neighbouring steps have the same causes."""
    gathered: list[Uneven] = []
    for row in dict.fromkeys(departure.row for departure in found):
        last: Departure | None = None
        for departure in (d for d in found if d.row == row):
            if last is not None and departure.index == last.index + 1 and _kinds(departure) == _kinds(last):
                before = gathered[-1]
                gathered[-1] = replace(before, last=departure.index, steps_mm=(*before.steps_mm, departure.step_mm))
            else:
                steps = (departure.step_mm,)
                gathered.append(
                    Uneven(
                        departure.title, departure.index, departure.index, steps, departure.usual_mm, departure.causes
                    )
                )
            last = departure
    return tuple(gathered)


def _kinds(departure: Departure) -> set[tuple[str, str]]:
    return {(cause.kind, cause.name) for cause in departure.causes}


def _tapes(
    row: str, index: int, sizes: Sequence[GradedSize], slopes: Mapping[str, Mapping[str, float]], unit: Unit
) -> list[Cause]:
    """Each tape, and what its own uneven step makes of the measure's, all of them."""
    found = []
    for tape, grows in slopes.items():
        if not all(size.wearer.given(tape) for size in sizes):
            continue
        steps = [after.wearer[tape] - before.wearer[tape] for before, after in pairwise(sizes)]
        usual = median(steps)
        mm = (steps[index - 1] - usual) * grows.get(row, 0.0)
        title = tape.replace("_", " ")
        if TAPES[tape].angle:
            says = f"the tape {title} steps otherwise"
        else:
            says = f"the tape {title} steps {_signed(steps[index - 1], unit)}, usually {_signed(usual, unit)}"
        found.append(Cause("tape", tape, mm, says))
    return sorted(found, key=lambda cause: -abs(cause.mm or 0.0))


def _told(tapes: Sequence[Cause], off: float) -> list[Cause]:
    least = max(LEAST_TOLD_MM, TOLD_SHARE * abs(off))
    return [cause for cause in tapes if abs(cause.mm or 0.0) >= least]


def _limits(ruled: Sequence[Mapping[str, bool]], index: int, labels: Sequence[str]) -> list[Cause]:
    """Limits that rule, or do not, at either end of a step otherwise than in most sizes."""
    found = []
    for formula in ruled[index]:
        if not all(formula in size for size in ruled):
            continue
        usually = 2 * sum(size[formula] for size in ruled) > len(ruled)
        if all(ruled[end][formula] is usually for end in (index - 1, index)):
            continue
        where = [label for label, size in zip(labels, ruled, strict=True) if size[formula] is not usually]
        does = "does not rule" if usually else "rules"
        span = where[0] if len(where) == 1 else f"{where[0]} to {where[-1]}"
        found.append(Cause("limit", formula, None, f"a limit {does} in size {span}: {formula}"))
    return found


def _signed(mm: float, unit: Unit) -> str:
    return f"{mm / unit.mm:+.2f}"
