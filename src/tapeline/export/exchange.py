"""The exchange file: pieces as DXF by the open layer convention of garment patterns, for other programs and cutters.

The convention is ASTM D6673-10 (withdrawn in 2019, still the common way to hand patterns on); its layers are read from
second-hand summaries, its labels of text from memory. One block for each piece and size: a closed outline on layer 1,
with a point on layer 2 at every corner and on layer 3 at every place of a curve; notches 4, mirror line 6, grain 7,
lines inside 8, drill holes 13, sew lines 14, words 15. Text is `Label: value`, in 7-bit letters.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby, pairwise

from tapeline.export.drawing import draw
from tapeline.export.dxf import Dxf, Release, plain_name
from tapeline.export.fonts import in_ascii, letters_problem
from tapeline.finish import Finished, FinishedPiece, Title
from tapeline.geometry import Path, Point, Vector
from tapeline.problems import Problem
from tapeline.received.words import TURNED_OVER
from tapeline.units import Unit

__all__ = ["CHORD_MM", "Exchanged", "Layer", "exchange"]

CHORD_MM = 0.01
"""Chords leave the curve by no more: a tenth of the thinnest pencil line."""
CORNER = 1e-3
"""Radians; where a line turns more at a knot it has a corner there."""
GAP_MM = 50.0
"""Between pieces."""
LINE_MM = 8.0
"""From line to line of the text about a piece; its letters are half as high."""
DRILLED = "eyelet"
"""Marks of this name are holes, at the middle of the mark."""


class Layer(StrEnum):
    """Layers of the convention that are written."""

    BOUNDARY = "1"
    TURN = "2"
    CURVE = "3"
    NOTCH = "4"
    MIRROR = "6"
    GRAIN = "7"
    INSIDE = "8"
    DRILL = "13"
    SEW = "14"
    WORDS = "15"


@dataclass(frozen=True, slots=True)
class Exchanged:
    """The file, the names of its blocks, and what is worth knowing about it."""

    data: bytes
    blocks: tuple[str, ...]
    problems: tuple[Problem, ...]


def exchange(sizes: Sequence[Finished], unit: Unit = Unit.CM, release: Release = Release.R12) -> Exchanged:
    """One file of garments: a block for each piece of each, named after piece and wearer.

    Args:
        sizes: Garments, each for a wearer or a size.
        unit: Centimetre writes millimetres, as the convention does for `METRIC`; inch writes inches.
        release: Of the format; the older is understood by more readers.
    """
    file = Dxf.new(release, unit)
    replaced: list[str] = []
    names: list[str] = []
    for layer in Layer:
        file.layer(layer)

    def ascii_of(text: str) -> str:
        done, lost = in_ascii(text)
        replaced.append(lost)
        return done

    across = 0.0
    for finished in sizes:
        for piece in finished.pieces:
            size = ascii_of(finished.title.wearer)
            name = plain_name((ascii_of(piece.piece.title), size), names)
            names.append(name)
            outline = piece.cut_line.flattened(1.0)
            left, low = min(p.x for p in outline), min(p.y for p in outline)
            _piece(file.block(name), piece, [ascii_of(line) for line in _about(piece, size)], ascii_of)
            file.place(name, Point(across - left, -low))
            across += max(p.x for p in outline) - left + GAP_MM
    for number, line in enumerate(_about_style(sizes[0].title, unit)):
        file.words(ascii_of(line), Point(0.0, -(number + 2) * LINE_MM), LINE_MM / 2, Layer.BOUNDARY)
    lost = "".join(dict.fromkeys("".join(replaced)))
    return Exchanged(file.data(), tuple(names), (letters_problem(lost, "exchange file"),) if lost else ())


def _piece(block: Dxf, finished: FinishedPiece, about: Sequence[str], ascii_of: Callable[[str], str]) -> None:
    piece = finished.piece
    _chain(block, finished.cut_line, Layer.BOUNDARY, closed=True)
    for tick in finished.ticks:
        for line in tick.lines:
            block.point(line.start, Layer.NOTCH)
    for edge in piece.edges:
        if edge.fold:
            block.line(edge.path.start, edge.path.end, Layer.MIRROR)
    block.line(piece.grain.start, piece.grain.end, Layer.GRAIN)
    for mark in piece.marks:
        if DRILLED in mark.name:
            block.point(_middle(mark.path), Layer.DRILL)
        else:
            _chain(block, mark.path, Layer.INSIDE, closed=False)
    for seam in _sewn(finished):
        _chain(block, seam, Layer.SEW, closed=seam.start.distance_to(seam.end) < CHORD_MM)
    drawn = draw(finished)
    for label in drawn.labels:
        block.words(ascii_of(label.text), label.at, label.size_mm * 0.7, Layer.WORDS, math.degrees(label.angle))
    corner = Point(min(p.x for p in finished.cut_line.knots), min(p.y for p in finished.cut_line.knots))
    for number, said in enumerate(about):
        block.words(said, corner + Vector(0, (len(about) - number) * LINE_MM), LINE_MM / 2, Layer.BOUNDARY)


def _chain(block: Dxf, path: Path, layer: Layer, *, closed: bool) -> None:
    """A path as chords, with what each of their ends is said by a point: a corner, or a place of a curve."""
    corners = set(_corners(path, closed=closed))
    points = path.flattened(CHORD_MM)
    if closed:
        points = points[:-1]
    block.chain(points, layer, closed=closed)
    for point in points:
        block.point(point, Layer.TURN if point in corners else Layer.CURVE)


def _corners(path: Path, *, closed: bool) -> Iterable[Point]:
    """Knots at which the path turns at once, and the ends of one that is not closed."""
    segments = path.segments
    if closed and abs(segments[-1].direction(1).turn_to(segments[0].direction(0))) > CORNER:
        yield path.start
    for before, after in pairwise(segments):
        if abs(before.direction(1).turn_to(after.direction(0))) > CORNER:
            yield after.start
    if not closed:
        yield path.start
        yield path.end


def _sewn(finished: FinishedPiece) -> Iterable[Path]:
    """The seam line in runs between the folds."""
    edges = list(finished.piece.edges)
    folds = [edge.fold for edge in edges]
    if any(folds):
        # Begin behind a fold, so that no run is cut in two.
        first = folds.index(True) + 1
        edges = edges[first:] + edges[:first]
    for fold, run in groupby(edges, key=lambda edge: edge.fold):
        if not fold:
            yield Path(tuple(segment for edge in run for segment in edge.path.segments))


def _middle(path: Path) -> Point:
    points = path.flattened(0.1)
    return Point(
        (min(p.x for p in points) + max(p.x for p in points)) / 2,
        (min(p.y for p in points) + max(p.y for p in points)) / 2,
    )


def _about(finished: FinishedPiece, size: str) -> list[str]:
    cut = finished.piece.cut
    return [
        f"Piece Name: {finished.piece.title}",
        f"Size: {size}",
        f"Quantity: {cut.quantity}",
        f"Material: {cut.cloth}",
        *([f"Annotation: {TURNED_OVER}"] if cut.mirrored else []),
        *(["Annotation: half a piece, to be mirrored about its mirror line"] if finished.piece.on_fold else []),
    ]


def _about_style(title: Title, unit: Unit) -> list[str]:
    return [
        f"Style Name: {title.style}",
        *([f"Creation Date: {title.date}"] if title.date else []),
        f"Author: Tapeline {title.version}",
        f"Sample Size: {title.wearer}",
        f"Units: {'METRIC' if unit is Unit.CM else 'ENGLISH'}",
    ]
