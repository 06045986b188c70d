"""Pieces and cloths for tests of the lay, drafted from examples and from random wearers."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from tapeline.docket import read_docket
from tapeline.finish import Finished
from tapeline.lay import Direction, LayCloth, Spread
from tapeline.measures import Wearer
from tapeline.project import draft, finished

__all__ = ["CLOTHS", "example", "of_wearer"]

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"

CLOTHS = {
    "open": LayCloth(width_mm=1700, selvedge_mm=10),
    "folded": LayCloth(width_mm=1900, spread=Spread.FOLDED, gap_mm=4),
    "tubular": LayCloth(width_mm=1900, spread=Spread.TUBULAR),
    "face to face": LayCloth(width_mm=1700, spread=Spread.FACE_TO_FACE, gap_mm=2),
    "nap, tilted": LayCloth(width_mm=1700, direction=Direction.ONE_WAY, tilt=0.03),
    "by garment": LayCloth(width_mm=1700, direction=Direction.BY_GARMENT),
    "stripes": LayCloth(width_mm=1700, repeat_along_mm=40, line_along_mm=12),
    "checks": LayCloth(width_mm=1900, repeat_along_mm=30, repeat_across_mm=25, gap_mm=3),
    "striped, folded": LayCloth(width_mm=1900, repeat_along_mm=35, spread=Spread.FOLDED),
    "shrinks": LayCloth(width_mm=1800, shrink_length=5, shrink_width=3),
}
"""By what is special about each."""


@cache
def example(name: str) -> Finished:
    """An example docket's garment, finished."""
    return finished(draft(read_docket(EXAMPLES / f"{name}.toml")))


def of_wearer(style: str, wearer: Wearer) -> Finished:
    """The example's style and choices for another wearer, by the rules of the example's frame."""
    docket = read_docket(EXAMPLES / f"{style}.toml")
    return finished(draft(replace(docket, wearer=wearer)))
