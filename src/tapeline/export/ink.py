"""Puts drawings on a page of the print: paths, words and layers, in mm from the lower left."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from tapeline.export.drawing import Drawing
from tapeline.export.fonts import BOLD, REGULAR, register, writable
from tapeline.export.labels import Label
from tapeline.export.layers import PrintLayer
from tapeline.export.line_kind import Layer, LineKind
from tapeline.geometry import Cubic, Path, Point, Rigid

__all__ = ["GREY", "UNIT", "Ink"]

UNIT = 72 / 25.4
"""Units of a PDF page in a millimetre (ISO 32000-1, 8.3.2.3: 1/72 in)."""
GREY = 0.45
"""For what helps with the paper and is not part of the pattern; dark enough for a weak printer."""


class Ink:
    """A page, or a form that is replayed on pages."""

    def __init__(self, canvas: Any) -> None:  # noqa: ANN401 - reportlab has no types
        register()
        self.canvas = canvas
        self.replaced: dict[str, None] = {}
        """Letters that the print does not have, in the order met."""

    @contextmanager
    def at(self, x: float, y: float, angle: float = 0.0) -> Iterator[None]:
        """Draw from another origin, in mm, turned to the left by an angle in radians."""
        self.canvas.saveState()
        self.canvas.translate(x * UNIT, y * UNIT)
        if angle:
            self.canvas.rotate(math.degrees(angle))
        yield
        self.canvas.restoreState()

    @contextmanager
    def within(self, width: float, height: float) -> Iterator[None]:
        """Show nothing outside a rectangle at the origin, in mm."""
        self.canvas.saveState()
        edge = self.canvas.beginPath()
        edge.rect(0, 0, width * UNIT, height * UNIT)
        self.canvas.clipPath(edge, stroke=0, fill=0)
        yield
        self.canvas.restoreState()

    @contextmanager
    def layer(self, layer: Layer | PrintLayer) -> Iterator[None]:
        """Draw on a layer, which a reader can hide; one inside another is shown where both are."""
        key = layer.name if isinstance(layer, Layer) else layer.key
        self.canvas._code.append(f"/OC /{key} BDC")  # noqa: SLF001 - reportlab has no call for it
        yield
        self.canvas._code.append("EMC")  # noqa: SLF001 - the same

    def pen(
        self, width_mm: float, dashes_mm: Sequence[float] = (), grey: float = 0.0, *, round_ends: bool = True
    ) -> None:
        """How the lines that follow look."""
        self.canvas.setLineWidth(width_mm * UNIT)
        self.canvas.setDash([d * UNIT for d in dashes_mm])
        self.canvas.setStrokeGray(grey)
        self.canvas.setLineCap(1 if round_ends and not dashes_mm else 0)
        self.canvas.setLineJoin(1 if round_ends else 0)

    def path(self, path: Path) -> None:
        """A line."""
        self._draw([path], stroke=True)

    def lines(self, *pairs: tuple[float, float, float, float]) -> None:
        """Straight lines: x, y, x, y."""
        self._draw([Path.through(Point(a, b), Point(c, d)) for a, b, c, d in pairs], stroke=True)

    def box(self, x: float, y: float, width: float, height: float) -> None:
        """The outline of a rectangle."""
        self.canvas.rect(x * UNIT, y * UNIT, width * UNIT, height * UNIT, stroke=1, fill=0)

    def dot(self, at: Point, radius_mm: float, grey: float = 0.0) -> None:
        """A point, filled with grey: 0 black, 1 white."""
        self.canvas.setFillGray(grey)
        self.canvas.circle(at.x * UNIT, at.y * UNIT, radius_mm * UNIT, stroke=0, fill=1)
        self.canvas.setFillGray(0)

    def tint(self, x: float, y: float, width: float, height: float, grey: float) -> None:
        """A rectangle filled with grey: 0 black, 1 white."""
        self.canvas.setFillGray(grey)
        self.canvas.rect(x * UNIT, y * UNIT, width * UNIT, height * UNIT, stroke=0, fill=1)
        self.canvas.setFillGray(0)

    def area(self, outline: Path, grey: float, *, stroke: bool = True) -> None:
        """A closed line, filled."""
        self.canvas.setFillGray(grey)
        self._draw([outline], stroke=stroke, fill=True)
        self.canvas.setFillGray(0)

    def heads(self, triangles: Iterable[Sequence[Point]], grey: float = 0.0) -> None:
        """Filled corners, such as arrow heads."""
        self.canvas.setFillGray(grey)
        self._draw([Path.through(*corners, corners[0]) for corners in triangles], stroke=False, fill=True)
        self.canvas.setFillGray(0)

    def _draw(self, paths: Iterable[Path], *, stroke: bool, fill: bool = False) -> None:
        pencil = self.canvas.beginPath()
        for path in paths:
            pencil.moveTo(path.start.x * UNIT, path.start.y * UNIT)
            for segment in path.segments:
                flat = [v * UNIT for p in segment.control_points[1:] for v in (p.x, p.y)]
                (pencil.curveTo if isinstance(segment, Cubic) else pencil.lineTo)(*flat)
            if path.start.distance_to(path.end) < 1e-9:
                pencil.close()
        self.canvas.drawPath(pencil, stroke=int(stroke), fill=int(fill))

    def words(
        self,
        text: str,
        x: float,
        y: float,
        size_mm: float,
        *,
        bold: bool = False,
        grey: float = 0.0,
        middle: bool = False,
    ) -> None:
        """One line of text from the left end (or the middle) of its base line."""
        shown, replaced = writable(text)
        self.replaced |= dict.fromkeys(replaced)
        self.canvas.setFillGray(grey)
        self.canvas.setFont(BOLD if bold else REGULAR, size_mm * UNIT)
        (self.canvas.drawCentredString if middle else self.canvas.drawString)(x * UNIT, y * UNIT, shown)
        self.canvas.setFillGray(0)

    def width(self, text: str, size_mm: float, *, bold: bool = False) -> float:
        """How wide a line of text is, in mm."""
        shown, _ = writable(text)
        return float(self.canvas.stringWidth(shown, BOLD if bold else REGULAR, size_mm * UNIT)) / UNIT

    def paragraph(self, text: str, x: float, y: float, width: float, size_mm: float, *, indent: float = 0.0) -> float:
        """Lines of text no wider than a width; the first base line lies at y. Returns the base line after the last."""
        line = ""
        for word in text.split():
            longer = f"{line} {word}".strip()
            if line and self.width(longer, size_mm) > width - indent:
                self.words(line, x + indent, y, size_mm)
                y -= 1.35 * size_mm
                longer = word
            line = longer
        self.words(line, x + indent, y, size_mm)
        return y - 1.35 * size_mm

    def drawing(self, drawing: Drawing, move: Rigid, layer: Layer, *, widths: float = 1.0, grey: float = 0.0) -> None:
        """What a piece has on a layer, moved to its place; its lines so many times their width, in black or grey."""
        for stroke in drawing.strokes:
            if stroke.kind.layer is layer:
                self.pen(stroke.kind.width_mm * widths, [dash * widths for dash in stroke.kind.dashes_mm], grey)
                self.path(stroke.path.moved(move))
        if layer is Layer.MARKS:
            self.heads([[move.point(p) for p in head] for head in drawing.heads], grey)
        if layer is Layer.WORDS:
            for label in drawing.labels:
                self.label(label, move, grey)

    def label(self, label: Label, move: Rigid, grey: float = 0.0) -> None:
        """Words of a piece, moved to its place."""
        place = move.point(label.at)
        with self.at(place.x, place.y, label.angle + math.atan2(move.b, move.a)):
            self.words(label.text, 0, 0, label.size_mm, bold=label.bold, grey=grey)

    def sample(self, kind: LineKind, x: float, y: float, length: float) -> None:
        """A line of a kind, to explain it."""
        self.pen(kind.width_mm, kind.dashes_mm)
        self.lines((x, y, x + length, y))
