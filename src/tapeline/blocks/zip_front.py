"""A front that opens from hem to neck with a zip: cut twice, with its edge on the centre."""

from __future__ import annotations

from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import Draft, Sheet, sewn
from tapeline.pattern import Cut

__all__ = ["ZIP_FRONT"]


def _zip_front(_d: Draft, _sheet: Sheet, lines: HalfLines) -> Centre:
    return Centre((sewn("centre", lines.centre),), lines.neckline, Cut(2, mirrored=True))


ZIP_FRONT = CentreRule("The centre {}, where the zip is sewn in: both edges meet over its teeth", _zip_front)
"""Common practice, no source: the edges lie on the centre and close over the zip, so the neckline stays as wide."""
