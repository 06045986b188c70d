"""`tapeline measure`: the tapes, what they say about each other, and how to take them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json
from tapeline.cli.show import columns, heading, paragraph, say, show_problems
from tapeline.problems import InputError, Problem, Severity, closest

if TYPE_CHECKING:
    from tapeline.measures import Estimate, Figure, Tape, Wearer
    from tapeline.units import Unit

__all__ = ["COMMAND"]


@command(example="tapeline measure marit.toml\ntapeline measure --how hip_depth")
@click.argument("docket", required=False, type=click.Path(path_type=Path, readable=False))
@click.option("--how", metavar="TAPE", help="Say how to take one tape.")
@click.option("--sizes", is_flag=True, help="Show the table of standard sizes.")
@click.option(
    "--figure",
    "figure_name",
    type=click.Choice(["woman", "man", "child"]),
    default="woman",
    help="For --sizes and for the list of tapes.",
)
@click.option("--unit", "unit_name", type=click.Choice(["cm", "inch"]), default="cm", help="For --sizes and --how.")
@as_json
def measure(
    docket: Path | None, how: str | None, figure_name: str, unit_name: str, *, sizes: bool, as_json: bool
) -> int:
    """Look at a wearer's tapes before anything is drafted.

    Each tape is shown with what the wearer's other tapes suggest, and what was not taped with what the survey
    expects. Without a docket: the list of tapes.
    """
    from tapeline.measures import Figure
    from tapeline.units import Unit

    if docket is not None and how is None and not sizes:
        return _docket(docket, as_json=as_json)
    figure, unit = Figure(figure_name), Unit(unit_name)
    if how is not None:
        return _how(how, unit, as_json=as_json)
    if sizes:
        from tapeline.cli.sizes import show_sizes

        show_sizes(figure, unit, as_json=as_json)
        return 0
    return _list(figure, as_json=as_json)


def _docket(path: Path, *, as_json: bool) -> int:
    from tapeline.docket import read_docket
    from tapeline.measures import TAPES, doubts, estimates, suggestion

    read = read_docket(path)
    wearer = read.wearer
    found = [*read.placed(doubts(wearer)), *read.notes]
    others = {name: suggestion(wearer, name) for name in wearer.tapes}
    expected = estimates(wearer)
    if as_json:
        say(json.dumps(_data(wearer, others, expected, found), ensure_ascii=False, indent=2))
    else:
        say(f"{wearer.name}, {wearer.figure}, {len(wearer.tapes)} tapes.")
        heading("Tapes")
        rows = [
            (_words(name), wearer.show(name), _span(TAPES[name], others[name], wearer.unit)) for name in wearer.tapes
        ]
        columns(rows, ("tape", "taken", "the other tapes suggest"), " r")
        if expected:
            heading("Not taped: what the survey expects")
            rows = [
                (_words(n), _value(TAPES[n], e, wearer.unit), _spread(TAPES[n], e, wearer.unit))
                for n, e in expected.items()
            ]
            columns(rows, ("size", "expected", "give or take"), " r")
        else:
            heading("Not taped")
            paragraph("There is no survey of children: nothing is estimated, and no tape is doubted.", "  ")
        say()
        say("Nothing to take again." if not found else f"To look at: {len(found)}, below.")
        show_problems(found)
    return 2 if any(problem.severity is Severity.ERROR for problem in found) else 0


def _data(
    wearer: Wearer, others: dict[str, Estimate | None], expected: dict[str, Estimate], found: list[Problem]
) -> dict[str, Any]:
    """In mm, or radians for an angle."""
    return {
        "wearer": wearer.name,
        "figure": str(wearer.figure),
        "unit": "mm",
        "tapes": {
            name: {"mm": value, "suggested": _numbers(others[name])} if not _angle(name) else {"radians": value}
            for name, value in wearer.tapes.items()
        },
        "estimates": {name: _numbers(estimate) for name, estimate in expected.items()},
        "problems": [p.data for p in found],
    }


def _angle(name: str) -> bool:
    from tapeline.measures import TAPES

    return TAPES[name].angle


def _numbers(estimate: Estimate | None) -> dict[str, float] | None:
    if estimate is None:
        return None
    kind = "radians" if estimate.angle else "mm"
    return {kind: round(estimate.value, 4), f"sd_{kind}": round(estimate.spread, 4)}


def _span(tape: Tape, estimate: Estimate | None, unit: Unit) -> str:
    if estimate is None:
        return "-"
    low, high = (tape.show(end, unit) for end in estimate.span())
    return f"{low.removesuffix(f' {unit.sign}')} to {high}"


def _value(tape: Tape, estimate: Estimate, unit: Unit) -> str:
    return tape.show(estimate.value, unit)


def _spread(tape: Tape, estimate: Estimate, unit: Unit) -> str:
    return tape.show(estimate.spread, unit)


def _words(name: str) -> str:
    return name.replace("_", " ")


def _how(name: str, unit: Unit, *, as_json: bool) -> int:
    from tapeline.measures import TAPES

    tape = TAPES.get(name.strip().replace(" ", "_").casefold())
    if tape is None:
        says = f"there is no tape named {name}"
        raise InputError(Problem("tape-unknown", Severity.ERROR, says, hint=closest(name, TAPES)))
    if as_json:
        say(json.dumps(_tape_data(tape), ensure_ascii=False, indent=2))
        return 0
    say(f"{tape.title} ({tape.name})")
    say()
    paragraph(tape.take, "  ")
    say()
    for figure, limits in tape.limits.items():
        low, high = (tape.show(end, unit) for end in (limits.low, limits.high))
        say(f"  {figure}: {low} to {high}")
    paragraph(f"Limits: {tape.reason}.", "  ")
    if tape.iso_name:
        differs = f"; {tape.iso_differs}" if tape.iso_differs else ""
        paragraph(f"ISO 8559-1:2017, {tape.iso_clause}: {tape.iso_name}{differs}.", "  ")
    return 0


def _list(figure: Figure, *, as_json: bool) -> int:
    from tapeline.measures import tapes_of

    tapes = tapes_of(figure)
    if as_json:
        say(json.dumps([_tape_data(tape) for tape in tapes], ensure_ascii=False, indent=2))
        return 0
    say(f"Tapes of a {figure}, in the order in which they are best taken.")
    for required, title in ((True, "Needed"), (False, "Taken when you can; each replaces an estimate")):
        heading(title)
        columns(
            [(tape.name, tape.take.partition(". ")[0].rstrip(".") + ".") for tape in tapes if tape.required is required]
        )
    say()
    say("More about one of them: tapeline measure --how hip_depth")
    return 0


def _tape_data(tape: Tape) -> dict[str, Any]:
    return {
        "name": tape.name,
        "title": tape.title,
        "take": tape.take,
        "required": tape.required,
        "iso_clause": tape.iso_clause,
        "iso_name": tape.iso_name,
    }


COMMAND = measure
