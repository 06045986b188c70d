"""`tapeline draft`: what is drafted from a docket, in numbers, in steps, as data or as a drawing."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json, docket, force
from tapeline.cli.show import columns, heading, paragraph, say, show_problems

if TYPE_CHECKING:
    from tapeline.project import Drafted
    from tapeline.units import Unit

__all__ = ["COMMAND"]


@command(
    example="tapeline draft marit.toml\ntapeline draft marit.toml --steps\ntapeline draft marit.toml --svg marit.svg\n"
    "tapeline draft marit.toml --hand-sheet --out marit-hand-sheet.pdf"
)
@docket
@as_json
@click.option("--steps", is_flag=True, help="Print the construction in order, for drawing along by hand.")
@click.option("--svg", type=click.Path(path_type=Path), help="Write the drawing into this file.")
@click.option("--hand-sheet", is_flag=True, help="Write the construction to draw along on paper, as a PDF.")
@click.option(
    "--scale",
    type=click.IntRange(min=1),
    help="The hand sheet's drawings are so many times smaller: 4, 5.  [4, or the first that fits]",
)
@click.option("--blank", is_flag=True, help="Empty boxes for the numbers in the hand sheet: a sheet for a class.")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The hand sheet's file.  [the docket's name with -hand-sheet.pdf, here]",
)
@force
def draft(
    docket: Path,
    svg: Path | None,
    scale: int | None,
    out: Path | None,
    *,
    as_json: bool,
    steps: bool,
    hand_sheet: bool,
    blank: bool,
    force: bool,
) -> int:
    """Draft a docket's garment.

    Shows its pieces, girths and sizes, with where each size is from.
    """
    from tapeline.cli.output import may_write

    if hand_sheet:
        if as_json or steps or svg is not None:
            raise click.UsageError("--hand-sheet is made alone: ask for --json, --steps or --svg another time")
        return _hand_sheet(docket, out, scale, blank=blank, force=force)
    if scale is not None or blank or out is not None:
        raise click.UsageError("--scale, --blank and --out are about the hand sheet: add --hand-sheet")
    from tapeline.docket import read_docket
    from tapeline.project import document, drawing, today
    from tapeline.project import draft as drafted_from

    if svg is not None:
        may_write(svg, docket, force=force)
    drafted = drafted_from(read_docket(docket))
    if svg is not None:
        from tapeline.export import write_whole

        write_whole(svg, drawing(drafted, today()).encode())
    if as_json:
        from tapeline.export import text

        say(text(document(drafted), indent=2))
    elif steps:
        _steps(drafted)
    else:
        _summary(drafted)
    if svg is not None and not as_json:
        say()
        say(f"The drawing is in {svg}.")
    if not as_json:
        show_problems(drafted.problems)
    return 0 if drafted.holds else 1


def _hand_sheet(docket: Path, out: Path | None, scale: int | None, *, blank: bool, force: bool) -> int:
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import write_whole
    from tapeline.project import draft as drafted_from
    from tapeline.project import hand_sheet, today

    out = out or Path(f"{docket.stem}-{'class' if blank else 'hand'}-sheet.pdf")
    may_write(out, docket, force=force)
    drafted = drafted_from(read_docket(docket))
    made = hand_sheet(drafted, today(), scale=scale, blank=blank)
    write_whole(out, made.data)
    what = f"{drafted.docket.style.title.lower()}" + ("" if blank else f" for {drafted.docket.wearer.name}")
    say(f"{out}: {'class' if blank else 'hand'} sheet, {what}, {made.pages} pages.")
    say("Print at 100 per cent" + (": black and white will do." if blank else "; each drawing has a bar to measure."))
    show_problems([*drafted.problems, *made.problems])
    return 0 if drafted.holds else 1


def _summary(drafted: Drafted) -> None:
    from tapeline.pattern import Source
    from tapeline.project import finished

    read, unit = drafted.docket, drafted.docket.unit
    cutting_list = finished(drafted).cutting_list  # before anything is said: an allowance may be refused
    frame = "survey" if read.surveyed else "proportional"
    say(f"{read.style.title} for {read.wearer.name}, {frame} frame.")
    heading("Pieces, as cut")
    rows = [
        (
            row.title,
            f"{row.quantity} in {row.cloth}",
            f"{_number(row.width_mm, unit)} x {_number(row.length_mm, unit)} {unit.sign}",
            _laid(on_fold=row.on_fold, mirrored=row.mirrored),
        )
        for row in cutting_list
    ]
    columns(rows, ("piece", "cut", "across x along", "laid"))
    heading("Girths")
    columns(
        [
            (
                _words(girth.girth.name),
                _number(girth.girth.tape.mm, unit),
                _number(girth.garment_mm, unit),
                f"{girth.ease_mm / unit.mm:+.1f} {unit.sign}",
            )
            for girth in drafted.truing.girths
        ],
        ("level", "tape", "garment", "ease"),
        " rr",
    )
    heading("Sizes")
    columns(
        [
            (
                _words(size.name),
                size.length.show(unit),
                str(size.source),
                f"{size.sd_mm / unit.mm:.1f} {unit.sign}" if size.sd_mm else "",
            )
            for size in drafted.garment.sizes
            if size.source is not Source.CHOICE
        ],
        ("size", "length", "from", "give or take"),
        " r",
    )


def _steps(drafted: Drafted) -> None:
    from tapeline.pattern import StepKind

    unit = drafted.docket.unit
    say(f"{drafted.docket.style.title} for {drafted.docket.wearer.name}, step by step.")
    number = 0
    for step in drafted.garment.steps:
        if step.kind is StepKind.SECTION:
            heading(step.says)
            continue
        number += 1
        paragraph(f"{number:>4}. {step.label}: {step.says}.", "", "      ")
        how = step.how_text(unit)
        if how:
            paragraph(how, "      ")
        for equation in step.equations(unit):
            paragraph(equation, "      ", "        ")


def _laid(*, on_fold: bool, mirrored: bool) -> str:
    return "on the fold" if on_fold else "one turned over" if mirrored else ""


def _number(mm: float, unit: Unit) -> str:
    return f"{mm / unit.mm:.1f}"


def _words(name: str) -> str:
    return name.replace("_", " ")


COMMAND = draft
