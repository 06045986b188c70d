"""`tapeline explain`: why a point, line, size or seam is where it is, and which tapes move it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json, docket
from tapeline.cli.show import columns, heading, paragraph, say

if TYPE_CHECKING:
    from tapeline.project import Drafted, Explanation

__all__ = ["COMMAND"]


@command(example="tapeline explain marit.toml back.armhole\ntapeline explain marit.toml armhole_depth")
@docket
@click.argument("what", required=False)
@as_json
def explain(docket: Path, what: str | None, *, as_json: bool) -> None:
    """Say why a point, line, size or seam is there.

    Words, formula, numbers, result, and how far each tape moves it. WHAT is a label such as back.armhole or
    armhole_depth; without it, everything that can be asked about is listed.
    """
    from tapeline.docket import read_docket
    from tapeline.project import draft, explainable
    from tapeline.project import explain as explained

    drafted = draft(read_docket(docket))
    if what is None:
        _list(drafted, explainable(drafted.garment), as_json=as_json)
        return
    found = explained(drafted, what)
    if as_json:
        say(json.dumps(_data(found), ensure_ascii=False, indent=2))
    else:
        _show(drafted, found)


def _list(drafted: Drafted, labels: list[str], *, as_json: bool) -> None:
    says = {step.label: step.says for step in drafted.garment.steps}
    says |= {seam.name: seam.reason or "a seam" for seam in drafted.garment.seams if seam.name not in says}
    if as_json:
        say(json.dumps({label: says[label] for label in labels}, ensure_ascii=False, indent=2))
        return
    say(f"What can be asked about {drafted.docket.wearer.name}'s {drafted.docket.style.name}:")
    say()
    columns([(label, says[label]) for label in labels])


def _show(drafted: Drafted, found: Explanation) -> None:
    from tapeline.measures import TAPES

    say(f"{found.what}, a {found.kind}")
    paragraph(found.says.rstrip(".") + ".", "  ")
    heading("How")
    if found.how:
        paragraph(found.how, "  ", "    ")
    for equation in found.equations:
        paragraph(equation, "  ", "    ")
    paragraph(f"result: {found.result}", "  ")
    if found.source:
        paragraph(f"from: {found.source}", "  ")
    for other in found.others:
        paragraph(other, "  ", "    ")
    if found.needs:
        heading("Needs")
        paragraph(", ".join(found.needs), "  ")
    heading("Moves, in mm for each cm of a tape")
    if not found.movers:
        say("  no tape moves it")
        return
    point = found.kind == "point"
    rows = []
    for mover in found.movers:
        name = mover.tape + (" (per degree)" if TAPES[mover.tape].angle else "")
        towards = f"{mover.dx:+.2f} out, {mover.dy:+.2f} up" if point else ""
        rows.append((name, f"{mover.mm_per_cm:.2f}", towards))
    columns(rows, right=" r")
    if drafted.docket.unit.mm != 10:
        say("  (for each inch: 2.54 times as much)")


def _data(found: Explanation) -> dict[str, Any]:
    return {
        "what": found.what,
        "kind": found.kind,
        "says": found.says,
        "how": found.how,
        "equations": list(found.equations),
        "result": found.result,
        "needs": list(found.needs),
        "source": found.source,
        "others": list(found.others),
        "movers": [
            {"tape": mover.tape, "mm_per_cm": mover.mm_per_cm, "dx": mover.dx, "dy": mover.dy} for mover in found.movers
        ],
    }


COMMAND = explain
