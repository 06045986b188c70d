"""`tapeline true`: every seam walked, every join and fold looked at, every girth measured."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tapeline.cli.commands import command
from tapeline.cli.options import as_json, docket
from tapeline.cli.show import columns, heading, in_words, say, show_problems
from tapeline.problems import Severity

if TYPE_CHECKING:
    from tapeline.project import Drafted
    from tapeline.truing import Truing
    from tapeline.units import Unit

__all__ = ["COMMAND"]


@command(example="tapeline true marit.toml")
@docket
@as_json
def true_(docket: Path, *, as_json: bool) -> int:
    """True a garment: prove it before cloth is cut.

    Walks every seam against its partner, looks at the lines that run over seams and at the folds, measures the
    girths, the neck opening, a hood and the sleeve. Exit code 1 when the garment may not be cut.
    """
    from tapeline.docket import read_docket
    from tapeline.project import draft

    drafted = draft(read_docket(docket))
    if as_json:
        say(json.dumps(_data(drafted), ensure_ascii=False, indent=2))
    else:
        _show(drafted.truing, drafted.docket.unit, drafted.docket.wearer.name, drafted.docket.style.title)
        say()
        doubts = sum(problem.severity is Severity.DOUBT for problem in drafted.problems)
        passed = f"No check failed; {doubts} in doubt: look again before cutting." if doubts else "Every check passed."
        say(passed if drafted.holds else "A check failed: do not cut yet.")
        show_problems(drafted.problems)
    return 0 if drafted.holds else 1


def _show(truing: Truing, unit: Unit, wearer: str, style: str) -> None:
    say(f"{style} for {wearer}, trued.")
    heading(f"Seams, in {in_words(unit)}")
    rows = [
        (
            _words(walk.seam.name),
            f"{walk.a_mm / unit.mm:.2f}",
            f"{walk.b_mm / unit.mm:.2f}",
            f"{walk.seam.ease.mm / unit.mm:.2f}",
            "fits" if abs(walk.off_mm) < 0.1 else f"off by {walk.off_mm / unit.mm:.2f}",
            " + ".join(f"{a / unit.mm:.1f}" for a, _ in walk.parts) if len(walk.parts) > 1 else "",
        )
        for walk in truing.walks
    ]
    columns(rows, ("seam", "this", "on that", "ease", "", "between notches"), " rrr")
    heading("Lines over seams")
    columns(
        [
            (_words(join.line), f"over the {_words(join.seam)}", _degrees(join.bend), join.meant)
            for join in truing.joins
        ],
        ("line", "seam", "bend", ""),
        "  r ",
    )
    heading("Square to the fold")
    columns([(s.piece, s.edge, _degrees(s.off)) for s in truing.squares], ("piece", "edge", "off"), "  r")
    heading(f"Girths, in {in_words(unit)}")
    columns(
        [
            (
                _words(g.girth.name),
                f"{g.girth.tape.mm / unit.mm:.1f}",
                f"{g.garment_mm / unit.mm:.1f}",
                f"{g.ease_mm / unit.mm:+.1f}",
            )
            for g in truing.girths
        ],
        ("level", "tape", "garment", "ease"),
        " rrr",
    )
    heading("Opening and sleeve")
    if truing.opening is not None:
        opening = truing.opening
        say(
            f"  neck stretched to {opening.stretched_mm / unit.mm:.1f} {unit.sign} ({opening.limit}); "
            f"head {opening.head_mm / unit.mm:.1f} {unit.sign}"
        )
        say(f"  head: {opening.head_is}")
    if truing.hood is not None:
        hood = truing.hood
        inside = (
            ("round the head", hood.round_mm, hood.to_cover_mm),
            ("over the crown", hood.over_mm, hood.over_head_mm),
            ("along the edge round the face", hood.rim_mm, hood.head_mm),
        )
        for where, ours, heads in inside:
            say(f"  hood {where}: {ours / unit.mm:.1f} {unit.sign}, the head wants {heads / unit.mm:.1f} {unit.sign}")
    if truing.hang is not None:
        say(f"  sleeve hangs at {math.degrees(truing.hang.angle):.0f} degrees")
        if truing.hang.lifts_to:
            say(f"  arm lifts to {truing.hang.lifts_to}")


def _data(drafted: Drafted) -> dict[str, Any]:
    truing = drafted.truing
    return {
        "unit": "mm",
        "holds": drafted.holds,
        "seams": [
            {
                "name": walk.seam.name,
                "a": walk.seam.side_text(walk.seam.a),
                "b": walk.seam.side_text(walk.seam.b),
                "a_mm": walk.a_mm,
                "b_mm": walk.b_mm,
                "ease_mm": walk.seam.ease.mm,
                "off_mm": walk.off_mm,
                "parts_mm": [list(part) for part in walk.parts],
            }
            for walk in truing.walks
        ],
        "joins": [
            {
                "line": j.line,
                "seam": j.seam,
                "corners": list(j.corners),
                "bend_degrees": math.degrees(j.bend),
                "meant": j.meant,
            }
            for j in truing.joins
        ],
        "squares": [{"piece": s.piece, "edge": s.edge, "off_degrees": math.degrees(s.off)} for s in truing.squares],
        "girths": {
            g.girth.name: {"tape_mm": g.girth.tape.mm, "garment_mm": g.garment_mm, "ease_mm": g.ease_mm}
            for g in truing.girths
        },
        "opening": None
        if truing.opening is None
        else {
            "stretched_mm": truing.opening.stretched_mm,
            "limit": truing.opening.limit,
            "head_mm": truing.opening.head_mm,
            "head_is": truing.opening.head_is,
        },
        "hood": None
        if truing.hood is None
        else {
            "round_mm": truing.hood.round_mm,
            "to_cover_mm": truing.hood.to_cover_mm,
            "over_mm": truing.hood.over_mm,
            "over_head_mm": truing.hood.over_head_mm,
            "rim_mm": truing.hood.rim_mm,
            "head_mm": truing.hood.head_mm,
        },
        "hang_degrees": None if truing.hang is None else math.degrees(truing.hang.angle),
        "lifts_to_degrees": None
        if truing.hang is None or truing.hang.reach is None
        else math.degrees(truing.hang.reach),
        "problems": [p.data for p in drafted.problems],
    }


def _degrees(radians: float) -> str:
    return f"{abs(math.degrees(radians)):.2f} degrees"


def _words(name: str) -> str:
    return name.replace("_", " ")


COMMAND = true_
