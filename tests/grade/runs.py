"""Runs of sizes to look at, each drafted once."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tapeline.docket import Docket, docket_from_text, read_docket
from tapeline.project import SizeRun, size_run, standard_sizes

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"


@cache
def docket(name: str = "tee") -> Docket:
    """An example docket."""
    return read_docket(EXAMPLES / f"{name}.toml")


@cache
def run_of(sizes: str, name: str = "tee") -> SizeRun:
    """An example docket in standard sizes; those that cannot be made are left out."""
    return size_run(docket(name), standard_sizes(docket(name), sizes), "2031-05-02", go_on=True)


def alone(size: str) -> Docket:
    """The docket of the example tee with a standard size written into it by hand, as a maker of one size would."""
    text = (EXAMPLES / "tee.toml").read_text(encoding="utf-8")
    head, _, rest = text.partition("[wearer.tapes]")
    kept = head.replace('name = "Marit"', f'size = "{size}"')
    return docket_from_text(kept + rest[rest.index("[garment]") :], "tee.toml")
