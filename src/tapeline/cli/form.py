"""`tapeline form`: a dress stand with the wearer's tapes, as solid, picture or data."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.commands import command
from tapeline.cli.options import docket, force
from tapeline.cli.show import columns, say

if TYPE_CHECKING:
    from tapeline.form import Form

__all__ = ["COMMAND"]


@command(
    example="tapeline form marit.toml\ntapeline form marit.toml --out marit.png\n"
    "tapeline form marit.toml --out marit.glb"
)
@docket
@click.option("--out", type=click.Path(path_type=Path), help="A .png picture, a .glb solid (glTF), or .json data.")
@click.option("--arms", type=float, help="So many degrees the arms stand off from hanging down.  [40]")
@force
def form(docket: Path, out: Path | None, arms: float | None, *, force: bool) -> None:
    """Make a plain dress stand that has the wearer's tapes.

    Shows each tape as it is read on the stand. For grown-ups; a tape that was not taken stays near its estimate.
    """
    from tapeline.docket import read_docket
    from tapeline.project import form as form_of
    from tapeline.project import form_document, form_glb, form_png

    writers: dict[str, Callable[[Form], bytes]] = {
        ".png": form_png,
        ".glb": form_glb,
        ".json": lambda made: form_document(made).encode(),
    }
    if out is not None:
        from tapeline.cli.output import may_write

        if out.suffix.lower() not in writers:
            raise click.UsageError(f"{out} ends with none of {', '.join(writers)}: the end says what is written")
        may_write(out, docket, force=force)
    read = read_docket(docket)
    made = form_of(read) if arms is None else form_of(read, math.radians(arms))
    from tapeline.measures import TAPES

    say(f"A stand for {read.wearer.name}, {len(made.triangles):,} triangles, {made.volume_litres:.1f} litres.")
    rows = []
    for name, reading in made.readings.items():
        known = reading.given or reading.wanted != reading.read
        wanted, found = (TAPES[name].show(value, read.unit) for value in (reading.wanted, reading.read))
        source = "taken" if reading.given else "estimate" if known else "neither"
        rows.append((name.replace("_", " "), wanted if known else "", found, source))
    columns(rows, ("tape", "wanted", "on the stand", "from"), " rr")
    if out is not None:
        from tapeline.export import write_whole

        write_whole(out, writers[out.suffix.lower()](made))
        say()
        shown = {".png": "from front, side and back", ".glb": "as a solid", ".json": "as data"}
        say(f"{out}: the stand {shown[out.suffix.lower()]}.")


COMMAND = form
