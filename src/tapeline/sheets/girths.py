"""Round the garment: tape, garment and ease at every level, with a ring for each."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tapeline.measures import Wearer
from tapeline.sheets.html import paragraph, part, table, words
from tapeline.sheets.numbers import change, length, plain
from tapeline.truing.girths import MeasuredGirth
from tapeline.units import Unit

__all__ = ["girths"]

MARGIN = 1.06
"""The largest ring is drawn this much inside its picture."""


def girths(measured: Sequence[MeasuredGirth], wearer: Wearer, unit: Unit) -> str:
    """Rings, all to one scale, and the numbers; a girth that was not taped says so."""
    if not measured:
        return ""
    largest = max(max(found.garment_mm, found.girth.tape.mm) for found in measured) / math.tau * MARGIN
    rings = "\n".join(_ring(found, largest, unit) for found in measured)
    rows = [
        [
            _name(found) + ("" if wearer.given(found.girth.name) else " (body estimated)"),
            plain(found.girth.tape.mm, unit),
            plain(found.garment_mm, unit),
            change(found.ease_mm, unit),
            change(found.girth.ease.mm, unit),
        ]
        for found in measured
    ]
    head = ["level", f"body, {unit.sign}", f"garment, {unit.sign}", "ease", "ease meant"]
    return part(
        "girths",
        "Round the body",
        paragraph("Each pair of rings shows body and garment as if both were round, all to one scale."),
        f'<div class="rings">{rings}</div>',
        table("Girths: body, garment and the ease between them", head, rows, numbers=range(1, 5)),
    )


def _name(found: MeasuredGirth) -> str:
    return found.girth.name.replace("_", " ")


def _ring(found: MeasuredGirth, largest: float, unit: Unit) -> str:
    body, garment = found.girth.tape.mm / math.tau, found.garment_mm / math.tau
    tight = " tight" if garment < body else ""
    says = (
        f"{_name(found)}: the body measures {length(found.girth.tape.mm, unit)}, "
        f"the garment {length(found.garment_mm, unit)}"
    )
    box = f"{-largest:.1f} {-largest:.1f} {2 * largest:.1f} {2 * largest:.1f}"
    return (
        f'<figure><svg viewBox="{box}" role="img" aria-label="{words(says)}">'
        f'<circle class="body" r="{body:.1f}"/><circle class="garment{tight}" r="{garment:.1f}"/></svg>'
        f"<figcaption>{words(_name(found))} {words(change(found.ease_mm, unit))}</figcaption></figure>"
    )
