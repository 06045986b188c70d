"""Draft: the construction step by step, and the sizes of the frame with what each rule would say."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape
from typing import Any

from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.pattern import Size, StepKind
from tapeline.web.view import View

__all__ = ["StepRow", "construction"]


@dataclass(frozen=True, slots=True)
class StepRow:
    """One step as it is shown."""

    number: int
    label: str
    kind: str
    says: str
    how: str
    equations: tuple[str, ...]
    needs: tuple[str, ...]
    sheet: str


def construction(view: View) -> dict[str, Any]:
    """Steps by section, and the sizes that can be set by hand."""
    if view.drafted is None:
        typed = view.section("garment", "sizes")
        written = [
            {
                "name": name,
                "label": _label(name),
                "says": choice.says,
                "range": _range(name, view),
                "typed": typed[name],
            }
            for name, choice in HAND_SIZES.items()
            if name in typed
        ]
        return {"sections": [], "frame": [], "written": written, "rows": _rows}
    sections: list[tuple[str, list[StepRow]]] = []
    number = 0
    for step in view.drafted.garment.steps:
        if step.kind is StepKind.SECTION:
            sections.append((step.says, []))
            continue
        if not sections:
            sections.append(("", []))
        number += 1
        sections[-1][1].append(
            StepRow(
                number,
                step.label,
                step.kind.value,
                step.says,
                step.how_text(view.unit),
                step.equations(view.unit),
                step.needs,
                step.sheet,
            )
        )
    return {
        "sections": [s for s in sections if s[1]],
        "frame": [_frame_row(view, size) for size in view.drafted.garment.sizes if size.name in HAND_SIZES],
        "rows": _rows,
    }


def _rows(steps: Iterable[StepRow]) -> str:
    """The steps of a section as list items: written here, for a template takes three times as long over so many."""
    parts = []
    for step in steps:
        label, kind, sheet = escape(step.label), escape(step.kind), escape(step.sheet)
        says = [f'<span class="says">{escape(step.says)}.</span>']
        if step.how:
            says.append(f'<span class="how">{escape(step.how)}</span>')
        says += [f'<span class="formula">{escape(equation)}</span>' for equation in step.equations]
        name = escape(step.label.replace("_", " ").replace(".", ": "))
        parts.append(
            f'<li data-number="{step.number}" data-label="{label}" data-kind="{kind}" data-sheet="{sheet}" '
            f'data-needs="{escape(" ".join(step.needs))}"><button type="button" class="step">{name}</button> '
            f"{' '.join(says)}</li>"
        )
    return "\n".join(parts)


def _label(name: str) -> str:
    return name.replace("_", " ").capitalize()


def _range(name: str, view: View) -> str:
    limits, unit = HAND_SIZES[name], view.unit
    least, most = (f"{edge * 10 / unit.mm:.1f}".removesuffix(".0") for edge in (limits.least, limits.most))
    return f"By hand it may be {least} to {most} {unit.sign}"


def _frame_row(view: View, size: Size) -> dict[str, Any]:
    typed = view.section("garment", "sizes").get(size.name)
    return {
        "name": size.name,
        "label": _label(size.name),
        "says": size.says,
        "typed": "" if typed is None else str(typed),
        "now": size.length.show(view.unit),
        "source": size.source.value,
        "spread": "" if size.sd_mm is None else f"{size.sd_mm / view.unit.mm:.1f} {view.unit.sign}",
        "equation": size.length.equation(view.unit),
        "range": _range(size.name, view),
        "others": [(other.name, other.show(view.unit)) for other in size.others],
    }
