"""`tapeline lay --instance`: a strip-packing instance of research, and the density that is reached."""

from __future__ import annotations

import json
import time
from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.lay_options import text_of
from tapeline.cli.show import columns, say

if TYPE_CHECKING:
    from tapeline.lay import Packed

__all__ = ["run_instance"]

SHOWN_S = 1.0


def run_instance(path: Path, seconds: float, seed: int, *, as_json: bool) -> int:
    """Pack it, and say how densely; Ctrl-C keeps the best."""
    from tapeline.lay import pack, read_instance

    instance = read_instance(text_of(path), str(path))
    best: Packed | None = None
    told = 0.0
    try:
        for best in pack(instance, seconds, seed=seed):
            now = time.monotonic()
            if not as_json and now - told >= SHOWN_S:
                told = now
                click.echo(f"  {best.seconds:6.1f} s  {best.density:7.2%}  length {best.length:.4f}", err=True)
    except KeyboardInterrupt:
        if best is None:
            raise
    if best is None:  # pack gives one or raises
        return 1
    if as_json:
        data = {
            "name": instance.name,
            "width": instance.width,
            "pieces": len(best.placed),
            "length": best.length,
            "density": best.density,
            "seconds": best.seconds,
            "seed": best.seed,
            "placed": [[int(name), turn, x, y] for name, turn, x, y in best.placed],
        }
        say(json.dumps(data))
        return 0
    columns(
        [
            ("instance", f"{instance.name or path.name}: {len(best.placed)} pieces on a strip of {instance.width:g}"),
            ("length", f"{best.length:.4f}"),
            ("density", f"{best.density:.2%}"),
            ("found", f"after {best.seconds:.1f} s, start {best.seed}"),
        ]
    )
    return 0
