"""`tapeline drape`: the garment on the wearer's own form, in numbers and pictures; and the solver beside textbooks."""

from __future__ import annotations

import json
import math
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json, force
from tapeline.cli.show import columns, heading, paragraph, say, show_problems

if TYPE_CHECKING:
    from tapeline.drape import Draped

__all__ = ["COMMAND"]


@command(example="tapeline drape marit.toml --washed --side 25 --map air --out marit.png\ntapeline drape --check")
@click.argument("docket", required=False, type=click.Path(path_type=Path, readable=False))
@click.option("--cloth", default="", help="The named cloth it hangs like.  [the docket's kind]")
@click.option("--washed", is_flag=True, help="As it is when the cloth has shrunk by what the docket says.")
@click.option(
    "--side", type=click.FloatRange(min=8, max=30), help="How long the sides of the triangles are, in mm.  [16]"
)
@click.option("--out", type=click.Path(path_type=Path), help="A .png picture, a .glb solid (glTF), or .json data.")
@click.option(
    "--map",
    "shown",
    type=click.Choice(["round", "along", "strongest", "air", "pressure"]),
    default="round",
    help="What the colours of picture and solid show.  [round]",
)
@force
@click.option("--check", "checks", is_flag=True, help="Solve cloths of a known answer, and show both in a table.")
@as_json
def drape(
    docket: Path | None,
    cloth: str,
    side: float | None,
    out: Path | None,
    shown: str,
    *,
    washed: bool,
    checks: bool,
    force: bool,
    as_json: bool,
) -> int:
    """Drape a docket's garment on the wearer's form.

    Says where it pulls, where it stands away, how the hem falls and how the seams run. Refuses when a seam does not
    close, the cloth lies inside the form, or it does not come to rest. With --check, no docket is needed: the solver is
    held against textbooks. A picture shows front, left side and back.
    """
    if checks:
        if out is not None:
            raise click.UsageError("--check writes no file: leave out --out")
        return _check(as_json=as_json)
    if docket is None:
        raise click.UsageError("name a docket, or say --check")
    from tapeline.docket import read_docket
    from tapeline.export import text
    from tapeline.project import draft, drape_document, drape_findings, drape_garment

    if out is not None:
        from tapeline.cli.output import may_write

        if out.suffix.lower() not in _SHOWN:
            raise click.UsageError(f"{out} ends with none of {', '.join(_SHOWN)}: the end says what is written")
        may_write(out, docket, force=force)
    drafted = draft(read_docket(docket))
    draped = drape_garment(drafted, side, cloth, washed=washed, told=lambda words: click.echo(f"{words} ...", err=True))
    found, problems = drape_document(draped), drape_findings(draped)
    if as_json:
        say(text(found, indent=1))
    else:
        _show(drafted.docket.wearer.name, found)
        show_problems(problems)
    if out is not None:
        says = _write(out, draped, shown)
        if not as_json:
            say()
            paragraph(says)
    return 0


_SHOWN = {".png": "from front, left side and back", ".glb": "as a solid", ".json": "as data"}


def _write(out: Path, draped: Draped, shown: str) -> str:
    """Writes the file that its end names; says what it is and what its colours mean."""
    from tapeline.export import write_whole
    from tapeline.project import drape_data, drape_legend, drape_picture, drape_solid

    end = out.suffix.lower()
    if end == ".json":
        write_whole(out, drape_data(draped).encode())
        return f"{out}: the garment {_SHOWN[end]}."
    write_whole(out, (drape_picture if end == ".png" else drape_solid)(draped, shown))
    return f"{out}: the garment {_SHOWN[end]}; {drape_legend(draped, shown)}."


def _show(name: str, found: dict[str, Any]) -> None:
    say(f"{name}'s garment on the form, at rest: {found['nodes']} nodes, seams closed to {found['sewn_to_mm']:.1f} mm.")
    heading("Pull and air")
    columns(
        [
            (
                zone["name"].replace("_", " "),
                f"{zone['round'] * 100:+.1f}",
                f"{zone['along'] * 100:+.1f}",
                f"{zone['strongest'] * 100:.1f}",
                f"{zone['air']:.0f}",
                f"{zone['touching'] * 100:.0f}",
                f"{zone['pressure'] * 1000:.0f}",
            )
            for zone in found["zones"]
        ],
        head=("where", "round %", "along %", "strongest %", "air mm", "touches %", "presses Pa"),
        right=" rrrrrr",
    )
    heading("Hem, seams, neck")
    if hem := found["hem"]:
        parts = [f"{where} {hem[where] / 10:.1f}" for where in ("front", "side", "back") if not math.isnan(hem[where])]
        paragraph(f"hem, cm above the floor: {', '.join(parts)}", "  ")
    for runs in found["seams"]:
        what = (
            "in front of the form's shoulder line"
            if runs["seam"].startswith("shoulder")
            else "forward at its lower end"
        )
        paragraph(f"{runs['seam']}: {runs['forward'] / 10:+.1f} cm {what}", "  ")
    if gap := found["neck_gap"]:
        paragraph(f"neckline: {gap['mean']:.0f} mm off the neck on the mean, {gap['most']:.0f} mm at most", "  ")
    for hand in found["cloths"]:
        paragraph(f"cloth: {hand['name']}, {hand['weight']:g} g/m2 ({hand['source']})", "  ")
    say()
    for words in found["trust"]:
        paragraph(words)


def _check(*, as_json: bool) -> int:
    from tapeline.drape.check import check
    from tapeline.drape.ready import ready

    seconds = ready()
    rows = list(check())
    if as_json:
        data = [{**asdict(row), "off": row.off, "holds": row.holds} for row in rows]
        say(json.dumps({"ready_seconds": round(seconds, 2), "rows": data}, indent=2))
    else:
        say(f"The solver was ready after {seconds:.1f} s; its machine code is kept for the next time.")
        say()
        cells = [
            (
                row.what,
                f"{row.edge:g}",
                f"{row.exact:.3f}",
                f"{row.found:.3f}",
                f"{row.off:+.3f}",
                f"{row.allowed:.3f}",
                row.unit,
                "holds" if row.holds else "DOES NOT HOLD",
            )
            for row in rows
        ]
        columns(cells, head=("cloth", "edge mm", "exact", "found", "off", "allowed", "in", ""), right=" rrrrr")
    return 0 if all(row.holds for row in rows) else 1


COMMAND = drape
