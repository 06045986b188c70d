"""Limits in a draft's formulas: where `at least` or `at most` speaks, and which of the two sides rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from tapeline.lengths import Length
from tapeline.pattern import Garment, StepKind

__all__ = ["rulings", "upstream"]

LIMITS = ("at least", "at most")


def upstream(garment: Garment, labels: Iterable[str]) -> frozenset[str]:
    """Every label of the draft that some come from, themselves included, however far back."""
    needs = {step.label: step.needs for step in garment.steps if step.kind is not StepKind.SECTION}
    found: set[str] = set()
    waiting = list(labels)
    while waiting:
        label = waiting.pop()
        if label not in found:
            found.add(label)
            waiting += [*needs.get(label, ()), *(_parts(garment, label))]
    return frozenset(found)


def _parts(garment: Garment, label: str) -> Iterator[str]:
    """Names in the formula of a size: those that were given without a step of their own reach further back."""
    for size in garment.sizes:
        if size.name == label:
            yield from size.length.leaves()


def rulings(garment: Garment, labels: Iterable[str]) -> Mapping[str, bool]:
    """Each limit in the formulas of some labels, as its text, and whether the limit itself rules.

    >>> from tapeline.lengths import at_least, cm
    >>> from tapeline.pattern import Step
    >>> drop = at_least(Length(-5.0, "drop"), cm(0)).named("front_drop")
    >>> step = Step(StepKind.SIZE, "front_drop", "The front hangs lower", lengths=(drop,))
    >>> rulings(Garment("tee", (), (), (), (), (), (step,)), ["front_drop"])
    {'front drop = drop, but at least 0': True}
    """
    wanted = set(labels)
    found: dict[str, bool] = {}
    for step in garment.steps:
        if step.label in wanted and step.kind is not StepKind.SECTION:
            for length in step.lengths:
                name = (length.name or step.label.rpartition(".")[2]).replace("_", " ")
                found |= {f"{name} = {limit.symbols()}": rules for limit, rules in _limits(length)}
    return found


def _limits(length: Length) -> Iterator[tuple[Length, bool]]:
    if length.operator in LIMITS:
        first = length.parts[0]
        yield length, isinstance(first, Length) and length.mm != first.mm
    for part in length.parts:
        if isinstance(part, Length):
            yield from _limits(part)
