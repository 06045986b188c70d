"""The construction, step by step, for drawing along or for asking why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tapeline.pattern import Step, StepKind
from tapeline.sheets.html import heading, paragraph, part, words
from tapeline.units import Unit

__all__ = ["construction", "sections"]


def construction(steps: Iterable[Step], unit: Unit) -> str:
    """Every section with its steps: name, reason, what the hand does, and the calculation."""
    inside = []
    for title, group in sections(steps):
        inside += [
            heading(title),
            '<ol class="steps">',
            *(_step(step, unit) for step in group),
            "</ol>",
        ]
    return part(
        "construction",
        "The construction, step by step",
        paragraph(
            "Out is away from the centre, up is towards the head. Every name can be asked about: tapeline explain."
        ),
        *inside,
    )


def sections(steps: Iterable[Step]) -> Iterator[tuple[str, list[Step]]]:
    """Steps under the heading that they follow; headings without steps are left out."""
    title, group = "Beginning", list[Step]()
    for step in steps:
        if step.kind is StepKind.SECTION:
            if group:
                yield title, group
            title, group = step.says, []
        else:
            group.append(step)
    if group:
        yield title, group


def _step(step: Step, unit: Unit) -> str:
    how = step.how_text(unit)
    parts = [f"<p><code>{words(step.label)}</code> {words(step.says)}.</p>"]
    if how:
        parts.append(f'<p class="how">{words(how)}</p>')
    parts += [f'<p class="equation">{words(equation)}</p>' for equation in step.equations(unit)]
    return f'<li class="{step.kind}">{"".join(parts)}</li>'
