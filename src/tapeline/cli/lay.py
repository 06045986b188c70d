"""`tapeline lay`: how the pieces lie on the cloth, so that little is wasted."""

from __future__ import annotations

import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tapeline.cli.commands import command
from tapeline.cli.lay_options import Asked, lay_options
from tapeline.cli.options import as_json, force
from tapeline.cli.show import columns, heading, paragraph, say, show_problems

if TYPE_CHECKING:
    from collections.abc import Callable

    from tapeline.export import LayFile
    from tapeline.lay import LayPlan
    from tapeline.problems import Problem
    from tapeline.project import LayTask
    from tapeline.units import Unit

__all__ = ["COMMAND"]

SHOWN_S = 1.0
"""So often at most a better plan is told of."""


@command(
    example="tapeline lay marit.toml --seconds 5\ntapeline lay marit.toml --garments 2 --seconds 2 --picture lay.svg"
)
@click.argument("dockets", nargs=-1, type=click.Path(path_type=Path, readable=False))
@lay_options
@as_json
@force
def lay(dockets: tuple[Path, ...], *, as_json: bool, force: bool, **options: Any) -> int:  # noqa: ANN401 - `Asked` has their types
    """Lay the pieces of one or several garments on their cloth.

    Give dockets, or DXF files of another program, of which a garment of every size is laid.

    Every cloth that the pieces are cut from has a lay of its own. A first plan is there at once, and better ones
    follow until the time is over; Ctrl-C stops it and keeps the best. Every plan that is told of has been proved:
    nothing overlaps, and everything faces a way that it may.

    With --instance a strip-packing instance of research is packed in place of garments.
    """
    asked = Asked(**options)
    if asked.instance is not None:
        from tapeline.cli.lay_instance import run_instance

        if dockets:
            raise click.UsageError("--instance is a lay of its own: give no docket with it")
        return run_instance(asked.instance, asked.seconds, asked.seed, as_json=as_json)
    if not dockets:
        raise click.UsageError("tapeline lay needs a docket, a DXF of pieces, or --instance FILE")
    return _run(dockets, asked, as_json=as_json, force=force)


def _run(dockets: tuple[Path, ...], asked: Asked, *, as_json: bool, force: bool) -> int:
    received = [path.suffix.lower() == ".dxf" for path in dockets]
    if any(received) and not all(received):
        raise click.UsageError("dockets and DXF files are laid apart: give only the one or only the other")
    tasks, problems, unit, holds = (_received if all(received) else _drafted)(dockets, asked)
    begun = asked.begun(tasks)
    files = asked.files(tasks)
    for path in files:
        _may_write(path, dockets, force=force)
    from tapeline.export import writable

    writable(files)
    plans: list[LayPlan] = []
    stopped = False
    for task in tasks:
        problems += task.problems
        best, stopped = _best(task, asked, begun.get(task.cloth.name), quiet=as_json)
        if best is not None:
            plans.append(best)
        if stopped:
            break
    problems += _write(plans, files)
    _show(plans, tasks, asked, unit, as_json=as_json, stopped=stopped)
    show_problems(problems)
    return 0 if holds and len(plans) == len(tasks) else 1


def _drafted(dockets: tuple[Path, ...], asked: Asked) -> tuple[tuple[LayTask, ...], list[Problem], Unit, bool]:
    """What dockets ask to be laid, what is worth knowing, the unit, and whether all garments hold."""
    from tapeline.docket import read_docket
    from tapeline.project import draft, lay_tasks

    drafted = [draft(read_docket(path)) for path in dockets]
    unit = drafted[0].docket.unit
    tasks = lay_tasks(
        drafted,
        garments=asked.garments,
        cloths=asked.cloth,
        changed=asked.changed(unit),
        together=asked.blocks,
    )
    # A pattern is not made larger for what the cloth shrinks, but a lay is, and says so itself.
    problems = [problem for one in drafted for problem in one.problems if problem.code != "cloth-shrinks"]
    return tasks, problems, unit, all(one.holds for one in drafted)


def _received(files: tuple[Path, ...], asked: Asked) -> tuple[tuple[LayTask, ...], list[Problem], Unit, bool]:
    """The same for pieces of other programs: a garment of each size."""
    from tapeline.project import read_pieces, received_tasks

    if asked.together:
        raise click.UsageError("--together is about the pieces of a docket: a DXF does not say which belong together")
    found = [read_pieces(path) for path in files]
    unit = found[0].unit
    tasks = received_tasks(found, garments=asked.garments, cloths=asked.cloth, changed=asked.changed(unit))
    return tasks, [problem for one in found for problem in one.problems], unit, True


def _may_write(path: Path, dockets: tuple[Path, ...], *, force: bool) -> None:
    from tapeline.cli.output import may_write

    for docket in dockets:
        may_write(path, docket, force=force)


def _best(task: LayTask, asked: Asked, start: LayPlan | None, *, quiet: bool) -> tuple[LayPlan | None, bool]:
    """The best plan there was time for, and whether it was stopped before that."""
    from tapeline.project import lay_plans

    best: LayPlan | None = None
    told = 0.0
    try:
        for best in lay_plans(task, asked.seconds, start=start, seed=asked.seed):
            now = time.monotonic()
            if not quiet and now - told >= SHOWN_S:
                told = now
                click.echo(f"  {task.cloth.name} {best.seconds:6.1f} s  {best.length_mm / 10:8.1f} cm", err=True)
    except KeyboardInterrupt:
        if best is None:
            raise
        return best, True
    return best, False


def _write(plans: list[LayPlan], files: dict[Path, tuple[str, str]]) -> list[Problem]:
    """Writes the files, and tells which letters of the names they could not hold."""
    from tapeline.export import lay_dxf, lay_pdf, lay_picture, lay_plot, lay_table, write_all
    from tapeline.lay import kept

    texts: dict[str, Callable[[LayPlan], str]] = {"picture": lay_picture, "table": lay_table, "keep": kept}
    makers: dict[str, Callable[[LayPlan], LayFile]] = {
        "pdf": lay_pdf,
        "dxf": lay_dxf,
        "plotter": lambda plan: lay_plot(plan, second=True),
    }
    by_cloth = {plan.cloth.name: plan for plan in plans}
    made: dict[Path, bytes] = {}
    told: dict[Problem, None] = {}
    for path, (kind, cloth) in files.items():
        if cloth not in by_cloth:
            continue
        if kind in texts:
            made[path] = texts[kind](by_cloth[cloth]).encode()
        else:
            file = makers[kind](by_cloth[cloth])
            made[path] = file.data
            told |= dict.fromkeys(file.problems)
    write_all(made)
    return list(told)


def _show(
    plans: list[LayPlan], tasks: tuple[LayTask, ...], asked: Asked, unit: Unit, *, as_json: bool, stopped: bool
) -> None:
    from tapeline.cli.lay_report import as_data, rows, widths_of

    if as_json:
        import json

        say(json.dumps([as_data(plan) for plan in plans], ensure_ascii=False, indent=1))
        return
    for plan in plans:
        task = next(task for task in tasks if task.cloth.name == plan.cloth.name)
        heading(f"{plan.cloth.name}: {task.garments} {'garment' if task.garments == 1 else 'garments'}")
        columns(rows(plan, unit))
        if asked.widths and not stopped:
            columns(widths_of(task, plan, asked, unit), ["cloth wide", "length", "difference", "used"], "rrrr")
    if stopped:
        say()
        paragraph("Stopped; the best plan so far was kept.")
        laid = {plan.cloth.name for plan in plans}
        if missing := [task.cloth.name for task in tasks if task.cloth.name not in laid]:
            paragraph(f"Not laid, and no file of it written: {', '.join(missing)}.")


COMMAND = lay
