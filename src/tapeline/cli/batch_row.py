"""One order of a batch, drafted: what a worker process does."""

from __future__ import annotations

import json
from dataclasses import dataclass

from tapeline.docket import Order
from tapeline.export import text
from tapeline.problems import InputError, Problem, Severity
from tapeline.project import document, draft

__all__ = ["Answer", "answer"]


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of an order."""

    row: int
    name: str
    holds: bool
    """Whether it may be cut."""
    says: str
    """One line for a person."""
    line: str
    """One JSON object; empty when nobody asked for it."""


def answer(order: Order, *, json_lines: bool) -> Answer:
    """Draft an order. Whatever is wrong with it is its answer, so that the others go on."""
    try:
        drafted = draft(order.docket())
        made = {"row": order.row, "name": order.name, **document(drafted)}
        line = text(made) if json_lines else ""
    except InputError as error:
        return _refused(order, error.problems)
    except Exception as error:  # noqa: BLE001 - one order must not stop the night's others
        says = f"Tapeline itself failed: {type(error).__name__}: {error}"
        return _refused(order, (Problem("own-fault", Severity.ERROR, says),))
    chest = next(girth for girth in drafted.truing.girths if girth.girth.name == "chest")
    unit = drafted.docket.unit
    ease = f"chest {chest.garment_mm / unit.mm:.1f} {unit.sign}, ease {chest.ease_mm / unit.mm:.1f}"
    doubts = sum(problem.severity is not Severity.NOTE for problem in drafted.problems)
    looked = f"; {doubts} to look at" if doubts else ""
    return Answer(order.row, order.name, drafted.holds, f"{drafted.docket.style.name}, {ease}{looked}", line)


def _refused(order: Order, problems: tuple[Problem, ...]) -> Answer:
    made = {
        "row": order.row,
        "name": order.name,
        "problems": [p.data for p in problems],
    }
    says = "; ".join(f"{p.says} [{p.code}]" for p in problems if p.severity is Severity.ERROR)
    says = f"not drafted: {says}"
    return Answer(order.row, order.name, holds=False, says=says, line=json.dumps(made, ensure_ascii=False))
