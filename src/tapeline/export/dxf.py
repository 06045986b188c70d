"""DXF files, written by ezdxf, which is imported here and nowhere else.

The same file whenever the same is asked for: ezdxf would write the hour and a random mark into it.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from enum import StrEnum
from io import StringIO
from typing import TYPE_CHECKING

from tapeline.geometry import Cubic, Path, Point
from tapeline.units import Unit

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.base import BaseLayout

__all__ = ["Dxf", "Release", "plain_name"]

LONGEST_NAME = 31
"""Letters in a name that release 12 allows."""
_INSUNITS = {Unit.CM: 4, Unit.INCH: 1}
"""What a unit of the file is, as the DXF reference counts them: 4 a millimetre, 1 an inch."""


class Release(StrEnum):
    """Releases of the format: the oldest is read by the most programs, the other knows units and curves."""

    R12 = "R12"
    R2000 = "R2000"


@dataclass(frozen=True, slots=True)
class Dxf:
    """A file in the making, or a block of it; coordinates come in mm, y up. It grows until `data` is asked for."""

    _file: Drawing
    _drawn: BaseLayout
    """Where marks go: the sheet of the file, or a block."""
    _scale: float
    """Units of the file in a millimetre."""

    @classmethod
    def new(cls, release: Release, unit: Unit) -> Dxf:
        """An empty file; centimetre writes millimetres, inch writes inches."""
        from ezdxf.filemanagement import new

        with _quiet():
            file = new(release.value, setup=False)
        if release is not Release.R12:
            file.header["$INSUNITS"] = _INSUNITS[unit]
            file.header["$MEASUREMENT"] = int(unit is Unit.CM)
        return cls(file, file.modelspace(), 1.0 if unit is Unit.CM else 1 / Unit.INCH.mm)

    def layer(self, name: str) -> None:
        """A layer of that name."""
        self._file.layers.add(name)

    def block(self, name: str) -> Dxf:
        """A block to draw into: the same file, with its marks in the block."""
        return replace(self, _drawn=self._file.blocks.new(name))

    def place(self, block: str, at: Point) -> None:
        """A block, put down."""
        self._drawn.add_blockref(block, self._at(at))

    def chain(self, points: Sequence[Point], layer: str, *, closed: bool) -> None:
        """Straight from point to point."""
        self._drawn.add_polyline2d([self._at(p) for p in points], close=closed, dxfattribs={"layer": layer})

    def line(self, start: Point, end: Point, layer: str) -> None:
        """A straight line."""
        self._drawn.add_line(self._at(start), self._at(end), dxfattribs={"layer": layer})

    def point(self, at: Point, layer: str) -> None:
        """A point."""
        self._drawn.add_point(self._at(at), dxfattribs={"layer": layer})

    def words(self, text: str, at: Point, size_mm: float, layer: str, angle_degrees: float = 0.0) -> None:
        """A line of text; its capitals are `size_mm` high."""
        looks = {"layer": layer, "height": size_mm * self._scale, "rotation": angle_degrees}
        self._drawn.add_text(text, dxfattribs=looks).set_placement(self._at(at))

    def curve(self, path: Path, layer: str) -> None:
        """A path without corners as one spline, exactly: its Bezier curves, end to end."""
        controls = [path.start]
        for segment in path.segments:
            if isinstance(segment, Cubic):
                controls += segment.control_points[1:]
            else:
                controls += [segment.at(1 / 3), segment.at(2 / 3), segment.end]
        count = len(path.segments)
        knots = [0.0] * 4 + [float(k) for k in range(1, count) for _ in range(3)] + [float(count)] * 4
        spline = self._drawn.add_spline(degree=3, dxfattribs={"layer": layer})
        spline.control_points = [(*self._at(p), 0.0) for p in controls]
        spline.knots = knots

    def data(self) -> bytes:
        """The whole file."""
        written = StringIO()
        with _quiet():
            self._file.write(written)
        return written.getvalue().encode("ascii")

    def _at(self, point: Point) -> tuple[float, float]:
        # Millionths of a millimetre: what lies below is rounding, and differs from machine to machine.
        return round(point.x * self._scale, 6) + 0.0, round(point.y * self._scale, 6) + 0.0


def plain_name(words: Iterable[str], taken: Iterable[str]) -> str:
    """A name that every release allows: capitals, figures, `_` and `-`, not too long, and not taken.

    >>> plain_name(("Neck band", "Zoe 2"), {"NECK_BAND_ZOE_2"})
    'NECK_BAND_ZOE_2-2'
    """
    whole = re.sub(r"[^A-Z0-9-]+", "_", "_".join(words).upper()).strip("_") or "PIECE"
    taken = set(taken)
    for count in range(1, len(taken) + 2):
        end = "" if count == 1 else f"-{count}"
        name = whole[: LONGEST_NAME - len(end)] + end
        if name not in taken:
            return name
    raise AssertionError("of so many names one is free")


@contextmanager
def _quiet() -> Iterator[None]:
    """Let ezdxf write neither the hour into the file nor a remark that release 12 has no units."""
    from ezdxf._options import options

    told, before = logging.getLogger("ezdxf"), options.write_fixed_meta_data_for_testing
    level = told.level
    options.write_fixed_meta_data_for_testing = True
    told.setLevel(logging.ERROR)
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before
        told.setLevel(level)
