"""`tapeline cut`: files for other programs, plotters and machines that cut."""

from __future__ import annotations

from pathlib import Path

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import say, show_problems

__all__ = ["COMMAND"]

KINDS = ("exchange", "curves", "plotter", "cutter")


@command(
    example="tapeline cut marit.toml --as exchange\ntapeline cut marit.toml --as curves --out marit-curves.dxf\n"
    "tapeline cut marit.toml --as plotter --roll 'roll 1067 mm' --narrow\n"
    "tapeline cut marit.toml --as cutter --bed 1600"
)
@docket
@click.option(
    "--as",
    "kind",
    type=click.Choice(KINDS),
    required=True,
    help="exchange: DXF by the layers of ASTM D6673, for pattern programs and cutting tables. "
    "curves: DXF with true curves, for drawing programs. plotter: HP-GL on a roll. "
    "cutter: SVG with a colour for each of the docket's tools.",
)
@click.option(
    "--release", type=click.Choice(["R12", "R2000"]), help="Of the exchange file's format.  [R12, read by most]"
)
@click.option("--roll", default="", help="The plotter's roll.  [the docket's, or 914 mm]")
@click.option("--narrow", is_flag=True, help="A plotter that holds 16 bits: a file for each 1.6 m of the roll.")
@click.option(
    "--hpgl2", is_flag=True, help="As HP-GL/2, for current plotters: it says how long the plot is, and counts further."
)
@click.option("--bed", type=float, help="Width of the cutter's bed in mm.  [1400]")
@click.option("--out", type=click.Path(path_type=Path), help="The file to write.  [the docket's name, here]")
@force
def cut(  # noqa: PLR0917 - each is an option, and click gives them by name
    docket: Path,
    kind: str,
    release: str | None,
    roll: str,
    bed: float | None,
    out: Path | None,
    *,
    narrow: bool,
    hpgl2: bool,
    force: bool,
) -> int:
    """Write a garment's pieces for a machine or another program.

    Check one piece against its size in the cutting list before cloth is cut. Blades: keep to the machine's manual and
    to your local rules.
    """
    from tapeline.cli.output import may_write
    from tapeline.docket import read_docket
    from tapeline.export import write_all
    from tapeline.project import curve_file, cutter_files, draft, exchange_file, plotter_files, today

    if release is not None and kind != "exchange":
        raise click.UsageError("--release is about the exchange file: add --as exchange")
    if (roll or narrow or hpgl2) and kind != "plotter":
        raise click.UsageError("--roll, --narrow and --hpgl2 are about the plotter: add --as plotter")
    if narrow and hpgl2:
        raise click.UsageError("--narrow is about old plotters, and --hpgl2 about current ones: leave one out")
    if bed is not None and kind != "cutter":
        raise click.UsageError("--bed is about the cutter: add --as cutter")
    read = read_docket(docket)
    drafted = draft(read)
    problems = list(drafted.problems)
    said = ""
    if kind == "plotter":
        plot = plotter_files(drafted, roll, narrow=narrow, second=hpgl2)
        out = out or Path(f"{docket.stem}.plt")
        names = (
            [out]
            if len(plot.frames) == 1
            else [out.with_stem(f"{out.stem}-{n}") for n in range(1, len(plot.frames) + 1)]
        )
        files = dict(zip(names, plot.frames, strict=True))
        problems += plot.problems
        said = f", {plot.layout.size_mm[1] / 1000:.2f} m of {plot.layout.paper.name}"
    elif kind == "curves":
        files = {out or Path(f"{docket.stem}-curves.dxf"): curve_file(drafted)}
    elif kind == "cutter":
        drawn = cutter_files(drafted, 1400.0 if bed is None else bed)
        out = out or Path(f"{docket.stem}-cutter.svg")
        files = {
            out if len(drawn) == 1 else out.with_stem(f"{out.stem}-{_plain(one.cloth)}"): one.data for one in drawn
        }
        problems += drawn[0].problems
        said = ", " + "; ".join(
            f"{one.pieces} pieces of {one.cloth} on {one.size_mm[0]:.0f} x {one.size_mm[1]:.0f} mm" for one in drawn
        )
    else:
        made = exchange_file(drafted, today(), release or "R12")
        files = {out or Path(f"{docket.stem}.dxf"): made.data}
        problems += made.problems
        said = f", {len(made.blocks)} pieces"
    for path in files:
        may_write(path, docket, force=force)
    write_all(files)
    for path in files:
        say(f"{path}: {read.style.title.lower()} for {read.wearer.name}{said}.")
    show_problems(problems)
    return 0 if drafted.holds else 1


def _plain(cloth: str) -> str:
    return "".join(letter if letter.isalnum() else "-" for letter in cloth.lower())


COMMAND = cut
