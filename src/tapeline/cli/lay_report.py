"""What is said of a lay plan."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from tapeline.cli.lay_options import Asked
from tapeline.units import Unit, parse_length, show_length

if TYPE_CHECKING:
    from tapeline.lay import LayPlan
    from tapeline.project import LayTask

__all__ = ["as_data", "rows", "widths_of"]


def rows(plan: LayPlan, unit: Unit) -> Iterator[tuple[str, str]]:
    """Length, yield, waste, cost, what is left."""
    from tapeline.lay import remnants

    cloth = plan.cloth
    yield "cloth", f"{show_length(cloth.width_mm, unit)} wide, {cloth.spread}, {cloth.direction}"
    yield "length", f"{show_length(plan.length_mm, unit)}"
    if plan.bought_mm != plan.length_mm:
        yield "off the roll", f"{show_length(plan.bought_mm, unit)}, in two layers"
    yield "no shorter than", f"{show_length(plan.bound_mm, unit)}, all pieces without any waste"
    yield "used", f"{plan.yield_share:.1%} of the cloth; {plan.density:.1%} of the strip that may be used"
    yield "waste", f"{plan.waste_mm2 / 1e6:.3f} m²"
    if plan.cost is not None:
        yield "cost", f"{plan.cost:.2f}"
    for left in remnants(plan):
        place = f"at {show_length(left.x, unit)} along, {show_length(left.y, unit)} across"
        yield "left over", f"{show_length(left.length, unit)} × {show_length(left.width, unit)}, {place}"
    yield "found", f"{plan.found}, after {plan.seconds:.1f} s"


def widths_of(task: LayTask, plan: LayPlan, asked: Asked, unit: Unit) -> Iterator[tuple[str, str, str, str]]:
    """How long the lay gets on other widths: a row for each."""
    from tapeline.project import compared

    widths = [parse_length(part.strip(), unit) for part in (asked.widths or "").split(",") if part.strip()]
    for width, found in compared(task, widths, asked.seconds).items():
        if found is None:
            yield show_length(width, unit), "a piece does not fit", "", ""
            continue
        more = found.bought_mm - plan.bought_mm
        sign = "+" if more > 0 else "−" if more < 0 else ""
        yield (
            show_length(width, unit),
            show_length(found.bought_mm, unit),
            f"{sign}{show_length(abs(more), unit)}",
            f"{found.yield_share:.1%}",
        )


def as_data(plan: LayPlan) -> dict[str, Any]:
    """The plan's figures for a program; the coordinates are in the kept plan."""
    from tapeline.lay import remnants

    return {
        "cloth": plan.cloth.name,
        "width_mm": plan.cloth.width_mm,
        "spread": str(plan.cloth.spread),
        "length_mm": round(plan.length_mm, 2),
        "bought_mm": round(plan.bought_mm, 2),
        "bound_mm": round(plan.bound_mm, 2),
        "density": round(plan.density, 4),
        "yield": round(plan.yield_share, 4),
        "waste_mm2": round(plan.waste_mm2),
        "cost": None if plan.cost is None else round(plan.cost, 2),
        "pieces": len(plan.placements),
        "remnants_mm": [[round(n, 1) for n in (one.x, one.y, one.length, one.width)] for one in remnants(plan)],
        "found": plan.found,
        "seconds": plan.seconds,
    }
