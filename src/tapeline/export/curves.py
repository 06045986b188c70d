"""The curve file: a garment's lines as DXF with true curves, for general drawing programs and machines that cut."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.export.drawing import draw
from tapeline.export.dxf import Dxf, Release, plain_name
from tapeline.finish import Finished
from tapeline.geometry import Line, Path, Rigid, Segment, Vector
from tapeline.units import Unit

__all__ = ["curves"]

GAP_MM = 50.0
SMOOTH = 1e-6
"""Radians; segments that meet at less are one curve."""


def curves(finished: Finished, unit: Unit = Unit.CM) -> bytes:
    """The pieces side by side: each line on the layer of its kind, curves as splines of the very curves drafted.

    Args:
        finished: A garment with its allowances.
        unit: Centimetre writes millimetres, inch writes inches; the file says which.
    """
    file = Dxf.new(Release.R2000, unit)
    layers: dict[str, str] = {}
    across = 0.0
    for piece in finished.pieces:
        outline = piece.cut_line.flattened(1.0)
        left, low = min(p.x for p in outline), min(p.y for p in outline)
        move = Rigid.shift(Vector(across - left, -low))
        across += max(p.x for p in outline) - left + GAP_MM
        for stroke in draw(piece, words=False).strokes:
            kind = stroke.kind.label
            if kind not in layers:
                layers[kind] = plain_name((kind,), layers.values())
                file.layer(layers[kind])
            for run in _runs(stroke.path.moved(move)):
                if len(run.segments) == 1 and isinstance(run.segments[0], Line):
                    file.line(run.start, run.end, layers[kind])
                else:
                    file.curve(run, layers[kind])
    return file.data()


def _runs(path: Path) -> Iterator[Path]:
    """Cut at corners, and where straight turns to curved."""
    run: list[Segment] = []
    for segment in path.segments:
        goes_on = (
            run
            and isinstance(segment, Line) is isinstance(run[-1], Line) is False
            and abs(run[-1].direction(1).turn_to(segment.direction(0))) < SMOOTH
        )
        if run and not goes_on:
            yield Path(tuple(run))
            run = []
        run.append(segment)
    yield Path(tuple(run))
