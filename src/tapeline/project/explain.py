"""Why a point, line, size or seam is where it is, and which tapes move it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from tapeline.geometry import Path
from tapeline.lengths import phrase_text
from tapeline.measures import TAPES, Wearer
from tapeline.pattern import Garment, Seam, Step, StepKind
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.project.drafted import Drafted, draw_garment

__all__ = ["Explanation", "Mover", "explain", "explainable"]

PROBE_MM = 1.0
"""Each tape is changed by this much to both sides and the garment drafted anew; what moves is measured, not guessed."""
PROBE_RADIANS = math.radians(0.1)
STILL_MM = 1e-3
"""Less than this per centimetre does not move."""


@dataclass(frozen=True, slots=True)
class Mover:
    """One tape, and what it moves."""

    tape: str
    mm_per_cm: float
    """How far the point moves, or the furthest part of a line (never negative); by how much a size or seam grows.

    For an angle: per degree.
    """
    dx: float = 0.0
    """Of a point: how much of that goes out to the side, mm per cm."""
    dy: float = 0.0
    """Of a point: how much of that goes up."""


@dataclass(frozen=True)
class Explanation:
    """One thing on the paper, explained."""

    what: str
    kind: str
    """`point`, `line`, `size`, `seam` or `tape`."""
    says: str
    how: str
    equations: tuple[str, ...]
    result: str
    needs: tuple[str, ...]
    source: str
    others: tuple[str, ...]
    """What other rules or the survey would have said, for a size."""
    _measure: Callable[[], tuple[Mover, ...]]

    @cached_property
    def movers(self) -> tuple[Mover, ...]:
        """The tapes that move it, the strongest first; each drafted anew when asked."""
        return self._measure()


def explainable(garment: Garment) -> list[str]:
    """Everything that can be asked about, in the order it was drawn."""
    labels = [step.label for step in garment.steps if step.kind is not StepKind.SECTION]
    return list(dict.fromkeys([*labels, *(seam.name for seam in garment.seams)]))


def explain(drafted: Drafted, what: str) -> Explanation:
    """Explain a label: `back.nape`, `back.armhole`, `armhole_depth`, `shoulder`, or a tape.

    A point or line may be named without its piece where only one piece has it. Raises `InputError` (`not-explained`).
    """
    garment = drafted.garment
    label = _label(garment, what)
    steps = {step.label: step for step in garment.steps if step.kind is not StepKind.SECTION}
    if label in steps:
        return _of_step(drafted, steps[label])
    return _of_seam(drafted, next(seam for seam in garment.seams if seam.name == label))


def _label(garment: Garment, what: str) -> str:
    asked = what.strip().replace(" ", "_")
    known = explainable(garment)
    if asked in known:
        return asked
    short = [label for label in known if label.rpartition(".")[2] == asked]
    if len(short) == 1:
        return short[0]
    hint = f"say which: {', '.join(short)}" if short else closest(asked, known)
    tape = TAPES.get(asked)
    if tape and not short:
        hint = f"that is a tape: {tape.take} {hint}"
    raise InputError(Problem("not-explained", Severity.ERROR, f"nothing on this garment is called {what}", hint=hint))


def _of_step(drafted: Drafted, step: Step) -> Explanation:
    unit = drafted.docket.unit
    size = next((size for size in drafted.garment.sizes if size.name == step.label), None)
    if step.point is not None:
        result = f"{step.point.x / unit.mm:.2f} {unit.sign} out, {step.point.y / unit.mm:.2f} {unit.sign} up"
    elif step.path is not None:
        result = f"{step.path.length / unit.mm:.2f} {unit.sign} long"
    else:
        spread = f", give or take {size.sd_mm / unit.mm:.2f}" if size and size.sd_mm else ""
        result = f"{step.lengths[0].show(unit)}{spread}"
    others = tuple(f"by {o.name}: {o.equation(unit)}" for o in size.others) if size else ()
    return Explanation(
        step.label,
        step.kind.value,
        step.says,
        phrase_text(step.how, unit),
        step.equations(unit),
        result,
        step.needs,
        step.source,
        others,
        lambda: _movers(drafted, lambda garment: _traits(garment.step(step.label))),
    )


def _of_seam(drafted: Drafted, seam: Seam) -> Explanation:
    unit = drafted.docket.unit
    a, b = (drafted.garment.run_length(side) for side in (seam.a, seam.b))
    return Explanation(
        seam.name,
        "seam",
        seam.reason or "both edges are equally long",
        f"{seam.side_text(seam.a)} is sewn to {seam.side_text(seam.b)}",
        (f"ease = {seam.ease.equation(unit)}",),
        f"{a / unit.mm:.2f} {unit.sign} on {b / unit.mm:.2f} {unit.sign}",
        tuple(str(ref) for ref in (*seam.a, *seam.b)),
        "",
        (),
        lambda: _movers(drafted, lambda garment: [garment.run_length(seam.b)]),
    )


def _traits(step: Step) -> list[float]:
    """What of a step can move, mm: x and y of a point, control points of a line, the length of a size."""
    if step.point is not None:
        return [step.point.x, step.point.y]
    if isinstance(step.path, Path):
        return [value for p in step.path.control_points() for value in (p.x, p.y)]
    return [length.mm for length in step.lengths]


def _movers(drafted: Drafted, traits: Callable[[Garment], list[float]]) -> tuple[Mover, ...]:
    wearer = drafted.docket.wearer
    found = []
    for tape in wearer.tapes:
        probe, per = (PROBE_RADIANS, math.radians(1)) if TAPES[tape].angle else (PROBE_MM, 10.0)
        low, high = (_traits_with(drafted, wearer, tape, by, traits) for by in (-probe, probe))
        growth = [(after - before) / (2 * probe) * per for before, after in zip(low, high, strict=True)]
        if len(growth) == 1:
            found.append(Mover(tape, growth[0]))
        else:
            moves = list(zip(growth[::2], growth[1::2], strict=True))
            dx, dy = max(moves, key=lambda move: math.hypot(*move))
            found.append(Mover(tape, math.hypot(dx, dy), dx, dy))
    moving = [mover for mover in found if abs(mover.mm_per_cm) > STILL_MM]
    return tuple(sorted(moving, key=lambda mover: -abs(mover.mm_per_cm)))


def _traits_with(
    drafted: Drafted, wearer: Wearer, tape: str, by: float, traits: Callable[[Garment], list[float]]
) -> list[float]:
    changed = wearer.with_tape(tape, wearer[tape] + by)
    return traits(draw_garment(drafted.docket, changed)[0])
