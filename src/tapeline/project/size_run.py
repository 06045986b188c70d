"""One docket in several sizes: each size drafted by the rules from its own tapes, none scaled from another."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from tapeline.docket import Docket, read_docket
from tapeline.docket.places import Keys
from tapeline.docket.size_table import size_table
from tapeline.finish import Finished
from tapeline.grade import (
    ChartRow,
    Departure,
    GradedPoint,
    GradedSize,
    Meet,
    departures,
    grade_table,
    measurement_chart,
    measures,
)
from tapeline.measures import TAPES, Wearer, size_labels, size_wearer
from tapeline.problems import InputError, Problem, Severity, worst_first
from tapeline.project.drafted import Drafted, draft, draw_garment
from tapeline.project.products import finished

__all__ = ["RunSize", "SizeRun", "size_run", "standard_sizes", "table_sizes", "wearers_of"]

PROBE_MM = 1.0
PROBE_RADIANS = math.radians(0.1)
"""A tape is changed by so much to both sides, and the garment drafted anew: what moves is measured, not guessed."""

_OF_THE_WEARER = ("size-standard", "tape-", "tapes-")
"""Codes of what reading said of the docket's own wearer, which is not about the sizes."""


@dataclass(frozen=True, slots=True)
class RunSize:
    """One size, drafted and finished."""

    label: str
    """`88`, `M`, `Marit`."""
    drafted: Drafted
    finished: Finished

    @property
    def wearer(self) -> Wearer:
        """Whose tapes it is drafted from."""
        return self.drafted.docket.wearer


@dataclass(frozen=True)
class SizeRun:
    """Sizes of one garment, in their order, and what there is to say of them."""

    docket: Docket
    """The docket whose style, choices, cloth and finish all sizes share."""
    sizes: tuple[RunSize, ...]
    left_out: Mapping[str, tuple[Problem, ...]]
    """Sizes that could not be made, and why."""
    problems: tuple[Problem, ...]
    """What is worth knowing of the run, worst first, each saying which sizes it is about."""
    persons: bool = False
    """Whether the sizes are people: then nobody expects even steps."""

    @property
    def labels(self) -> tuple[str, ...]:
        """Of the sizes that were made."""
        return tuple(size.label for size in self.sizes)

    @property
    def title(self) -> str:
        """What it is: the style, and the sizes that were made."""
        count = len(self.sizes)
        sizes = "1 size" if count == 1 else f"{count} sizes"
        return f"{self.docket.style.title} in {sizes}: {', '.join(self.labels)}."

    @property
    def holds(self) -> bool:
        """Whether every size that was asked for was made."""
        return not self.left_out

    @property
    def base(self) -> int:
        """The index of the size that the others are looked at from: the middle one."""
        return (len(self.sizes) - 1) // 2

    @cached_property
    def chart(self) -> tuple[ChartRow, ...]:
        """What the finished garment measures in every size."""
        return measurement_chart([size.drafted.garment for size in self.sizes])

    def grades(self, meet: Meet = Meet.CHEST) -> tuple[GradedPoint, ...]:
        """How every named point moves from size to size."""
        return grade_table([size.drafted.garment for size in self.sizes], meet)

    @cached_property
    def uneven(self) -> tuple[Departure, ...]:
        """Steps of the chart that are not the usual ones, and why; nothing for fewer than three sizes and for people.

        Each tape of the middle size is drafted a little shorter and longer, which takes a while.
        """
        if self.persons or len(self.sizes) < 3:
            return ()
        sizes = [GradedSize(size.label, size.wearer, size.drafted.garment) for size in self.sizes]
        return departures(self.chart, sizes, _slopes(self.sizes[self.base]), self.docket.unit)


def standard_sizes(docket: Docket, text: str) -> dict[str, Wearer]:
    """Standard wearers of the docket's figure, for a list such as `84-104` or `S, M, L`; see `size_labels`."""
    wearer = docket.wearer
    return {
        label: replace(size_wearer(label, wearer.figure, docket.unit), allow=docket.allow)
        for label in size_labels(text, wearer.figure)
    }


def table_sizes(docket: Docket, path: Path) -> dict[str, Wearer]:
    """The sizes of a file with tapes by size, for the docket's figure and unit; see `size_table`."""
    return size_table(path, docket.wearer.figure, docket.unit, docket.allow)


def wearers_of(docket: Docket, paths: Sequence[Path]) -> dict[str, Wearer]:
    """The wearers of other dockets by their names, shown in this docket's unit.

    Raises:
        InputError: What is wrong with any of them, and `size-twice` for two of one name.
    """
    found: dict[str, Wearer] = {}
    problems: list[Problem] = []
    for path in paths:
        try:
            wearer = replace(read_docket(path).wearer, unit=docket.unit)
        except InputError as error:
            problems += error.problems
            continue
        if wearer.name in found:
            says = f"{wearer.name} is there twice"
            hint = "give each wearer a name of their own. Nothing was drafted."
            problems.append(Problem("size-twice", Severity.ERROR, says, str(path), hint))
        found[wearer.name] = wearer
    if problems:
        raise InputError(problems)
    return found


def size_run(
    docket: Docket,
    wearers: Mapping[str, Wearer],
    date: str = "",
    *,
    go_on: bool = False,
    persons: bool = False,
    told: Callable[[Iterable[str]], Iterable[str]] | None = None,
) -> SizeRun:
    """Draft, true and finish a docket for each of several wearers.

    >>> from tapeline.docket import docket_from_text
    >>> docket = docket_from_text('wearer = { figure = "woman", size = "88" }')
    >>> run = size_run(docket, standard_sizes(docket, "84-92"))
    >>> run.labels, [round(mm) for mm in run.chart[0].mm]
    (('84', '88', '92'), [920, 960, 1000])

    Args:
        docket: Style, choices, corrections, cloth and finish of all sizes; its own wearer is not drafted.
        wearers: By label, from size to size.
        date: Written on the pieces.
        go_on: Leave out a size that cannot be made, and make the others.
        persons: The wearers are people, not sizes of a table.
        told: What the labels run through, for a bar that shows how far it is.

    Raises:
        InputError: With the problems of every size that cannot be made or may not be cut, unless `go_on`; with
            `go_on` only when no size can be made.
    """
    labels: Iterable[str] = wearers if told is None else told(wearers)
    sizes: list[RunSize] = []
    left_out: dict[str, tuple[Problem, ...]] = {}
    for label in labels:
        try:
            sizes.append(_size(docket, label, wearers[label], date))
        except InputError as error:
            left_out[label] = tuple(p for p in error.problems if p.severity is Severity.ERROR) or error.problems
    if left_out and (not go_on or not sizes):
        raise InputError([_of_size(label, p) for label, problems in left_out.items() for p in problems])
    return SizeRun(docket, tuple(sizes), left_out, tuple(_problems(docket, sizes, left_out)), persons)


def _size(docket: Docket, label: str, wearer: Wearer, date: str) -> RunSize:
    own = _for_wearer(docket, label, wearer)
    drafted = draft(own)
    if not drafted.holds:
        raise InputError(drafted.problems)
    return RunSize(label, drafted, finished(drafted, date))


def _for_wearer(docket: Docket, label: str, wearer: Wearer) -> Docket:
    """The docket with another wearer; what it says of its own one is not said of them."""

    def where(keys: Keys) -> str:
        return f"size {label}: {'.'.join(keys[1:])}" if keys[:1] == ("wearer",) else docket.where(keys)

    notes = tuple(note for note in docket.notes if not note.code.startswith(_OF_THE_WEARER))
    return replace(docket, wearer=wearer, notes=notes, where=where)


def _problems(docket: Docket, sizes: Sequence[RunSize], left_out: Mapping[str, Sequence[Problem]]) -> list[Problem]:
    """Of the run: sizes that were left out and why, what all sizes share, and what each says, told once."""
    found = [_of_size(label, p) for label, problems in left_out.items() for p in problems]
    if left_out:
        made = ", ".join(size.label for size in sizes)
        says = f"not made: {', '.join(left_out)}; made: {made}"
        found.append(Problem("size-left-out", Severity.DOUBT, says, docket.name, "mend these sizes, and run it again"))
    if docket.by_hand:
        says = f"set by hand and the same in every size: {', '.join(docket.by_hand).replace('_', ' ')}"
        hint = "a size that is to grow with the tapes must not stand below garment.sizes"
        found.append(Problem("run-by-hand", Severity.DOUBT, says, docket.where(("garment", "sizes")), hint))
    if made_for := [correction.name.replace("_", " ") for correction in docket.corrections.made()]:
        says = f"corrected for one body, and the same in every size: {', '.join(made_for)}"
        hint = "leave [garment.corrections] out for sizes that many people will wear"
        found.append(Problem("run-corrected", Severity.DOUBT, says, docket.where(("garment", "corrections")), hint))
    told: dict[Problem, list[str]] = {}
    for size in sizes:
        for problem in size.drafted.problems:
            told.setdefault(problem, []).append(size.label)
    found += [
        replace(problem, says=f"size {', '.join(labels)}: {problem.says}") if len(labels) < len(sizes) else problem
        for problem, labels in told.items()
    ]
    middle = sizes[(len(sizes) - 1) // 2]
    if middle.wearer.made_from:
        says = f"size {middle.label}, and the others likewise, is made from {middle.wearer.made_from}"
        found.append(Problem("size-standard", Severity.NOTE, says, docket.name))
    return worst_first(found)


def _of_size(label: str, problem: Problem) -> Problem:
    says = problem.says if problem.where.startswith(f"size {label}:") else f"size {label}: {problem.says}"
    return replace(problem, says=says)


def _slopes(size: RunSize) -> dict[str, dict[str, float]]:
    """By tape and measure, the growth for each mm or radian of the tape."""
    found: dict[str, dict[str, float]] = {}
    for tape in size.wearer.tapes:
        probe = PROBE_RADIANS if TAPES[tape].angle else PROBE_MM
        try:
            low, high = (_measured(size, tape, by) for by in (-probe, probe))
        except InputError:
            continue  # at the end of what can be drafted: what this tape moves is told as not in proportion
        found[tape] = {name: (high[name] - low[name]) / (2 * probe) for name in high if name in low}
    return found


def _measured(size: RunSize, tape: str, by: float) -> dict[str, float]:
    changed = size.wearer.with_tape(tape, size.wearer[tape] + by)
    garment, _ = draw_garment(size.drafted.docket, changed)
    return {measure.name: measure.mm for measure in measures(garment)}
