"""A `Drawing` is one piece as it is drawn: strokes, arrow heads and words, in the piece's own axes, for any writer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tapeline.export.labels import Label, labels
from tapeline.export.line_kind import LineKind
from tapeline.finish import FinishedPiece
from tapeline.geometry import Line, Path, Point, Segment, Vector
from tapeline.pattern import Edge

__all__ = ["Drawing", "Stroke", "draw"]

ARROW_MM = 5.0
"""Length of an arrow head."""
BRACKET_MM = 12.0
"""How far from the fold its bracket lies."""
GRAIN_CLEAR_MM = 25.0
"""From a fold to a grain line beside it: past the bracket and its words."""
PARALLEL = 0.1
"""Sine of the angle up to which two lines run the same way, to the eye."""
ON_FOLD_MM = 0.05
"""A straight part of the cut line this close to the fold lies on it."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line to draw."""

    kind: LineKind
    path: Path
    name: str = ""
    """The edge, mark or notch it shows: `armhole`, `chest line`."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """All that is drawn for one piece."""

    piece: FinishedPiece
    strokes: tuple[Stroke, ...]
    heads: tuple[tuple[Point, Point, Point], ...]
    """Filled arrow heads: they belong to the grain line and the fold's bracket."""
    labels: tuple[Label, ...]


def draw(finished: FinishedPiece, joints: Sequence[Path] = (), *, words: bool = True) -> Drawing:
    """Cut line, seam line, fold, notches, marks, grain and words of a piece.

    `joints` are where sheets of paper meet, in the piece's own axes: words keep clear of them if they can.
    Without `words` no room is looked for them, which takes most of the time.
    """
    piece = finished.piece
    folds = [edge for edge in piece.edges if edge.fold]
    strokes = [Stroke(LineKind.SEAM, edge.path, edge.name) for edge in piece.edges if not edge.fold]
    strokes += [Stroke(LineKind.MARK, mark.path, mark.name) for mark in piece.marks]
    strokes += _cut_strokes(finished, folds)
    strokes += [Stroke(LineKind.NOTCH, Path((line,)), tick.edge) for tick in finished.ticks for line in tick.lines]
    grain = _clear_of_folds(piece.grain, folds)
    size = min(ARROW_MM, grain.length / 4)
    way = grain.direction(0)
    heads = [_head(grain.end, way, size), _head(grain.start, -way, size)]
    # A stroke ends inside its arrow head, so that the tip stays sharp.
    shaft = Line(grain.start + way * (size / 2), grain.end + way * (-size / 2))
    strokes.append(Stroke(LineKind.GRAIN, Path((shaft,)), "grain"))
    for fold in folds:
        bracket, tips = _bracket(fold)
        strokes.append(Stroke(LineKind.GRAIN, bracket, f"{fold.name} bracket"))
        heads += tips
    lines = [stroke.path for stroke in strokes]
    said = labels(finished, grain, lines, joints) if words else ()
    return Drawing(finished, tuple(strokes), tuple(heads), said)


def _clear_of_folds(grain: Line, folds: list[Edge]) -> Line:
    """The grain line, moved sideways into the piece when it lies on a fold or its bracket: only its way counts."""
    for fold in folds:
        line = Line(fold.path.start, fold.path.end)
        inward = line.direction(0).right
        near = inward.dot(grain.at(0.5) - line.start)
        if near < GRAIN_CLEAR_MM and abs(inward.dot(grain.direction(0))) < PARALLEL:
            move = inward * (GRAIN_CLEAR_MM - near)
            return Line(grain.start + move, grain.end + move)
    return grain


def _cut_strokes(finished: FinishedPiece, folds: list[Edge]) -> list[Stroke]:
    """The cut line in runs: unbroken where the blade goes, dashed and dotted where the cloth is folded."""
    runs: list[tuple[bool, list[Segment]]] = []
    for segment in finished.cut_line.segments:
        lies = any(_lies_on(segment, fold) for fold in folds)
        if runs and runs[-1][0] == lies:
            runs[-1][1].append(segment)
        else:
            runs.append((lies, [segment]))
    if len(runs) > 1 and runs[0][0] == runs[-1][0]:
        runs[0] = (runs[0][0], runs.pop()[1] + runs[0][1])
    return [
        Stroke(LineKind.FOLD if lies else LineKind.CUT, Path(tuple(segments)), "fold" if lies else "cut line")
        for lies, segments in runs
    ]


def _lies_on(segment: Segment, fold: Edge) -> bool:
    start, side = fold.path.start, fold.path.leaves.left
    return isinstance(segment, Line) and all(
        abs(side.dot(place - start)) < ON_FOLD_MM for place in segment.control_points
    )


def _head(tip: Point, way: Vector, size: float) -> tuple[Point, Point, Point]:
    foot = tip + way * -size
    return tip, foot + way.left * (size / 3), foot + way.right * (size / 3)


def _bracket(fold: Edge) -> tuple[Path, list[tuple[Point, Point, Point]]]:
    """Two arrows to the fold, held together: lay this side on the fold of the cloth."""
    line = Line(fold.path.start, fold.path.end)
    inward = line.direction(0).right
    deep = min(BRACKET_MM, line.length / 4)
    size = min(ARROW_MM, deep / 2)
    one, other = line.at(0.15), line.at(0.85)
    bar = inward * deep
    path = Path.through(one + inward * (size / 2), one + bar, other + bar, other + inward * (size / 2))
    return path, [_head(one, -inward, size), _head(other, -inward, size)]
