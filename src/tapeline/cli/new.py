"""`tapeline new`: writes a commented docket."""

from __future__ import annotations

from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.show import say
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["COMMAND"]


@command(example="tapeline new marit.toml --name Marit\ntapeline new trial.toml --size 88")
@click.argument("docket", metavar="NAME.toml", type=click.Path(path_type=Path))
@click.option("--style", "style_name", default="tee", help="What is sewn: tee or block.  [tee]")
@click.option("--unit", "unit_name", default="cm", help="Of bare numbers: cm or inch.  [cm]")
@click.option("--size", help="A standard size in place of tapes: 88, M, ...")
@click.option("--figure", "figure_name", default="woman", help="woman, man or child.  [woman]")
@click.option("--name", default="", help="The wearer's name.")
@click.option("--force", is_flag=True, help="Write over a file that is there.")
def new(  # noqa: PLR0917 - click passes them by name
    docket: Path, style_name: str, unit_name: str, size: str | None, figure_name: str, name: str, *, force: bool
) -> None:
    """Write a commented docket to fill in.

    Every choice stands in it with its default, its range and its reason, and every tape with how to take it.
    """
    from tapeline.docket import template
    from tapeline.docket.reader import Reader
    from tapeline.export import write_whole
    from tapeline.measures import Figure, size_wearer
    from tapeline.styles import STYLES
    from tapeline.units import Unit

    style = STYLES[_known(style_name, "style", list(STYLES))]
    unit = Unit(_known(unit_name, "unit", [str(unit) for unit in Unit]))
    figure = Figure(_known(figure_name, "figure", [str(figure) for figure in Figure]))
    if size is not None:
        size = size.strip().upper()
        size_wearer(size, figure, unit)  # says so when there is no such size
    if name:
        reader = Reader(docket.name, lambda _: "--name")
        reader.text(name, ("wearer", "name"))
        if reader.problems:
            raise InputError(reader.problems)
    if docket.exists() and not force:
        says = f"{docket} is there already"
        hint = "give another name, or add --force to write over it. Nothing was written."
        raise InputError(Problem("would-overwrite", Severity.ERROR, says, str(docket), hint))
    text = template(style, unit, size, figure, name)
    write_whole(docket, text.encode())
    say(f"{docket} is written: {style.title.lower()}, {figure}, {unit}{f', size {size}' if size else ''}.")
    if size is None:
        say(f"Next: fill in the eight tapes in it, then look at them with: tapeline measure {docket}")
    else:
        say(f"Next: tapeline make {docket} --out out")


def _known(word: str, what: str, words: list[str]) -> str:
    if word.casefold() in words:
        return word.casefold()
    says = f"there is no {what} {word}"
    raise InputError(Problem("command-line", Severity.ERROR, says, hint=closest(word, words)))


COMMAND = new
