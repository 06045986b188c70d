"""What there is to read about a run of sizes: tables, for text, files, pages and print alike."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Any

import tapeline
from tapeline.grade import Meet, told_together
from tapeline.measures import TAPES
from tapeline.project.size_run import SizeRun
from tapeline.units import Unit, show_angle

if TYPE_CHECKING:
    from tapeline.export import RunTable

__all__ = ["chart_csv", "grade_csv", "run_document", "run_tables"]

CLOSE = 2
"""Decimals of a chart: tenths of a millimetre, or hundredths of an inch."""


def run_tables(run: SizeRun, meet: Meet = Meet.CHEST) -> tuple[RunTable, ...]:
    """The tapes, the measurement chart, the uneven steps and the grade table, with words above each."""
    from tapeline.export import RunTable

    unit = run.docket.unit
    sizes = run.labels
    tapes = RunTable(
        f"Tapes, {unit.sign}",
        (f"What each size is drafted from. {_from(run)}",),
        ("tape", *sizes),
        tuple(_tape_rows(run, unit)),
    )
    chart = RunTable(
        f"The finished garment, {unit.sign}",
        ("Measured on the pieces along their seam lines, before stretching; what laps over is counted once.",),
        ("measure", *sizes),
        tuple((row.title, *(_shown(mm, unit) for mm in row.mm)) for row in run.chart),
    )
    return (chart, _uneven(run), tapes, _grade(run, meet))


def _from(run: SizeRun) -> str:
    """Where the tapes of the sizes are from."""
    middle = run.sizes[run.base]
    made_from = middle.wearer.made_from
    return f"Size {middle.label} is made from {made_from}." if made_from else "People were measured."


def _tape_rows(run: SizeRun, unit: Unit) -> list[tuple[str, ...]]:
    rows = []
    for name, tape in TAPES.items():
        taken = [size.wearer.tapes.get(name) for size in run.sizes]
        if any(value is not None for value in taken):
            cells = [_angle(value) if tape.angle else _shown(value, unit) for value in taken]
            rows.append((tape.title, *cells))
    return rows


def _angle(radians: float | None) -> str:
    return "-" if radians is None else show_angle(radians)


def _uneven(run: SizeRun) -> RunTable:
    from tapeline.export import RunTable

    unit, labels = run.docket.unit, run.labels
    rows = []
    for found in told_together(run.uneven):
        steps = [f"{mm / unit.mm:+.2f}" for mm in found.steps_mm]
        says = "; ".join(cause.says for cause in found.causes) or "no tape and no limit alone"
        span = f"{labels[found.first - 1]} to {labels[found.last]}"
        rows.append((found.title, span, _span(steps), f"{found.usual_mm / unit.mm:+.2f}", says))
    says = (
        "A step is even when it differs by less than 1 mm from the run's middle step of its measure. What is behind a "
        "departure was found by drafting with each tape a little shorter and longer, and from the formulas."
    )
    if run.persons:
        says = "The sizes are people: nobody expects even steps, and none were looked for."
    elif len(run.sizes) < 3:
        says = "Fewer than three sizes have no steps to compare."
    elif not rows:
        says = "Every measure steps evenly, to a millimetre."
    head = ("measure", "sizes", f"step, {unit.sign}", "usual", "because")
    return RunTable("Steps that are not even", (says,), head, tuple(rows), left=5)


def _span(steps: Sequence[str]) -> str:
    return steps[0] if len(set(steps)) == 1 else f"{min(steps, key=float)} to {max(steps, key=float)}"


def _grade(run: SizeRun, meet: Meet) -> RunTable:
    from tapeline.export import RunTable

    points = run.grades(meet)
    steps = tuple(f"{a} to {b}" for a, b in pairwise(run.labels))
    met = dict.fromkeys(f"{point.piece.replace('_', ' ')}: {point.meets}" for point in points)
    return RunTable(
        "Grade table, mm",
        (
            "How corners of the seam lines, named by their two edges, and points of the draft move: to the side / up.",
            f"From where the sizes meet: {'; '.join(met)}.",
        ),
        ("piece", "point", *steps),
        tuple(
            (
                point.piece.replace("_", " "),
                point.name,
                *(f"{round(move.x, 1) + 0.0:.1f} / {round(move.y, 1) + 0.0:.1f}" for move in point.moves),
            )
            for point in points
        ),
        left=2,
    )


def chart_csv(run: SizeRun) -> str:
    """The measurement chart as CSV: a row for each measure, a column for each size, in the docket's unit."""
    unit = run.docket.unit
    rows = [["measure", "unit", *run.labels]]
    rows += [[row.title, unit.sign, *("" if mm is None else _shown(mm, unit) for mm in row.mm)] for row in run.chart]
    return _csv(rows)


def grade_csv(run: SizeRun, meet: Meet = Meet.CHEST) -> str:
    """The grade table as CSV: a row for each point, two columns in mm for each step."""
    pairs = list(pairwise(run.labels))
    steps = [f"{a} to {b} {way}" for a, b in pairs for way in ("to the side", "up")]
    rows = [["piece", "point", "kind", "sizes meet at", *steps]]
    for point in run.grades(meet):
        kind = "corner" if point.corner else "point"
        moves = [f"{round(value, 3) + 0.0:.3f}" for move in point.moves for value in (move.x, move.y)]
        rows.append([point.piece, point.name, kind, point.meets, *moves])
    return _csv(rows)


def _csv(rows: Sequence[Sequence[str]]) -> str:
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(rows)
    return out.getvalue()


def run_document(run: SizeRun, meet: Meet = Meet.CHEST) -> dict[str, Any]:
    """The run as one JSON object: sizes and their tapes, chart, uneven steps, grade table, problems; all in mm."""
    labels = run.labels
    return {
        "made_by": f"Tapeline {tapeline.__version__}",
        "docket": run.docket.name,
        "style": run.docket.style.name,
        "unit": "mm",
        "meet": str(meet),
        "sizes": [
            {"label": size.label, "name": size.wearer.name, "figure": str(size.wearer.figure)}
            | {"made_from": size.wearer.made_from, "tapes": dict(size.wearer.tapes)}
            for size in run.sizes
        ],
        "left_out": {label: [p.data for p in problems] for label, problems in run.left_out.items()},
        "chart": [{"name": row.name, "title": row.title, "mm": list(row.mm)} for row in run.chart],
        "uneven": [
            {
                "measure": found.row,
                "from": labels[found.index - 1],
                "to": labels[found.index],
                "step_mm": found.step_mm,
                "usual_mm": found.usual_mm,
                "causes": [
                    {"kind": cause.kind, "name": cause.name, "mm": cause.mm, "says": cause.says}
                    for cause in found.causes
                ],
            }
            for found in run.uneven
        ],
        "points": [
            {
                "piece": point.piece,
                "name": point.name,
                "kind": "corner" if point.corner else "point",
                "meets": point.meets,
                "places": [[place.x, place.y] for place in point.places],
                "moves": [[move.x, move.y] for move in point.moves],
            }
            for point in run.grades(meet)
        ],
        "problems": [p.data for p in run.problems],
    }


def _shown(mm: float | None, unit: Unit) -> str:
    return "-" if mm is None else f"{mm / unit.mm:.{CLOSE}f}"
