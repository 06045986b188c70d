"""The cutter's drawing: every piece as often as it is cut, at true size, in one colour for each tool.

Programs of cutters and lasers tell tools apart by the colour of a line, read no style sheets, and cut what is drawn as
a hairline (common practice, no source). So colours stand on groups, lines are hairlines, nothing is filled, and what
draws comes before what cuts, so that the cloth has not moved when it is drawn on.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tapeline.export.drawing import Drawing, draw
from tapeline.export.line_kind import LineKind
from tapeline.export.xml_text import xml_text
from tapeline.finish import Finished, FinishedPiece, Title
from tapeline.finish.tools import Lines, Tool
from tapeline.geometry import Line, Path, Point, Rigid, Vector
from tapeline.problems import InputError, Problem, Severity
from tapeline.received.piece import whole_outline

__all__ = ["BED_MM", "CutDrawing", "cutter_drawings"]

BED_MM = 1400.0
GAP_MM = 10.0
HAIRLINE_MM = 0.01
KINDS = {
    LineKind.CUT: Lines.CUT,
    LineKind.NOTCH: Lines.NOTCH,
    LineKind.SEAM: Lines.SEAM,
    LineKind.GRAIN: Lines.GRAIN,
    LineKind.MARK: Lines.MARK,
}
CAUTION = (
    "Blades and lasers cut more than cloth: stay beside the machine, keep to its manual and to your local rules. "
    "Do not put cloth of PVC, or cloth whose coating is not known, under a laser: its fumes are poisonous."
)


@dataclass(frozen=True, slots=True)
class CutDrawing:
    """The file, its cloth, how large it is, how many pieces it cuts, and what is worth knowing about it."""

    cloth: str
    data: bytes
    size_mm: tuple[float, float]
    pieces: int
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class _Copy:
    """A piece as it is cut once: what each kind of line draws, in the axes of the bed, y up."""

    paths: dict[Lines, list[Path]]
    words: tuple[tuple[str, Point, float, float], ...]
    """Text, beginning of its base line, size, angle."""
    size_mm: tuple[float, float]


def cutter_drawings(finished: Finished, tools: Sequence[Tool], bed_mm: float = BED_MM) -> tuple[CutDrawing, ...]:
    """A drawing for each cloth: its pieces in rows, half of a pair turned over, a piece on the fold unfolded.

    Raises:
        InputError: `cutter-bed` for a width that is none, or that a piece does not fit.
    """
    if not 50 <= bed_mm <= 20_000:
        raise _bed(f"a bed {bed_mm:g} mm wide is none: 50 to 20000 mm are")
    cloths: dict[str, list[FinishedPiece]] = {}
    for piece in finished.pieces:
        cloths.setdefault(piece.piece.cut.cloth, []).append(piece)
    return tuple(_drawing(finished.title, cloth, pieces, tools, bed_mm) for cloth, pieces in cloths.items())


def _drawing(
    title: Title, cloth: str, pieces: Sequence[FinishedPiece], tools: Sequence[Tool], bed_mm: float
) -> CutDrawing:
    copies = [copy for piece in pieces for copy in _copies(piece)]
    widest = max(copies, key=lambda copy: copy.size_mm[0])
    if widest.size_mm[0] > bed_mm:
        raise _bed(f"a piece is {widest.size_mm[0]:.0f} mm wide, and the bed {bed_mm:g} mm")
    corners, size = _rows(copies, bed_mm)
    groups = [line for tool in _in_order(tools) for line in _group(tool, copies, corners, size[1])]
    name = f"{title.style} for {title.wearer}, {cloth}"
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{size[0]:.3f}mm" height="{size[1]:.3f}mm" '
            f'viewBox="0 0 {size[0]:.3f} {size[1]:.3f}">'
        ),
        f"<title>{xml_text(name)}</title>",
        f"<desc>{xml_text(CAUTION)}</desc>",
        *groups,
        "</svg>",
        "",
    ]
    return CutDrawing(cloth, "\n".join(lines).encode(), size, len(copies), tuple(_problems(tools)))


def _problems(tools: Sequence[Tool]) -> Iterator[Problem]:
    given = {line for tool in tools for line in tool.lines}
    left = [line.value for line in Lines if line not in given]
    if left:
        says = f"no tool follows {', '.join(left)}: they are not in the drawing"
        yield Problem(
            "cutter-left-out", Severity.NOTE, says, "cutter.tools", "name a tool for them, if they are wanted."
        )
    yield Problem("cutter-safety", Severity.NOTE, CAUTION, "cutter")


def _bed(says: str) -> InputError:
    hint = "give the width of the machine's bed with --bed, such as --bed 1600. Nothing was written."
    return InputError(Problem("cutter-bed", Severity.ERROR, says, "cutter", hint))


def _in_order(tools: Sequence[Tool]) -> list[Tool]:
    """What cuts the outline comes last; otherwise as they are named."""
    return sorted(tools, key=lambda tool: Lines.CUT in tool.lines)


def _copies(piece: FinishedPiece) -> Iterator[_Copy]:
    drawing = draw(piece)
    cut = piece.piece.cut
    for number in range(cut.quantity):
        over = cut.mirrored and number % 2 == 1
        yield _copy(drawing, Rigid(a=-1.0) if over else Rigid())


def _copy(drawing: Drawing, turn: Rigid) -> _Copy:
    piece = drawing.piece
    folds = [Line(edge.path.start, edge.path.end) for edge in piece.piece.edges if edge.fold]
    fold = folds[0] if folds else None
    outline = piece.cut_line if fold is None else whole_outline(piece.cut_line, fold)
    paths: dict[Lines, list[Path]] = {lines: [] for lines in Lines}
    paths[Lines.CUT].append(outline)
    for stroke in drawing.strokes:
        kind = KINDS.get(stroke.kind)
        if kind in (None, Lines.CUT) or stroke.name.endswith("bracket"):
            continue
        paths[kind].append(stroke.path)
        if fold is not None and kind is not Lines.GRAIN:
            paths[kind].append(stroke.path.moved(_about(fold)))
    moved = {kind: [path.moved(turn) for path in found] for kind, found in paths.items()}
    knots = moved[Lines.CUT][0].flattened(0.1)
    corner = Vector(-min(p.x for p in knots), -min(p.y for p in knots))
    shift = Rigid.shift(corner)
    size = max(p.x for p in knots) + corner.x, max(p.y for p in knots) + corner.y
    named = [label for label in drawing.labels if label.text in piece.words[:2]]
    words = tuple((label.text, *_read(label.outline(), turn.then(shift)), label.size_mm) for label in named)
    return _Copy({k: [path.moved(shift) for path in v] for k, v in moved.items()}, words, size)


def _about(fold: Line) -> Rigid:
    return Rigid.over(fold.start, fold.direction(0))


def _read(outline: Sequence[Point], move: Rigid) -> tuple[Point, float]:
    """Where a text begins and which way it runs after a move; turned over it is read from its other end."""
    start, end = (move.point(p) for p in outline[:2])
    if move.turns_over:
        start, end = end, start
    return start, math.atan2(end.y - start.y, end.x - start.x)


def _rows(copies: Sequence[_Copy], bed_mm: float) -> tuple[list[Point], tuple[float, float]]:
    """Lower left corners, y up from the top of the bed downwards, and the size of the whole."""
    corners: list[tuple[float, float, float]] = []
    x = y = high = wide = 0.0
    for copy in copies:
        width, height = copy.size_mm
        if x > 0 and x + width > bed_mm:
            x, y, high = 0.0, y + high + GAP_MM, 0.0
        corners.append((x, y, height))
        wide, high = max(wide, x + width), max(high, height)
        x += width + GAP_MM
    whole = y + high
    return [Point(left, whole - top - height) for left, top, height in corners], (wide, whole)


def _group(tool: Tool, copies: Sequence[_Copy], corners: Sequence[Point], high: float) -> Iterator[str]:
    yield (f'<g id="{tool.name}" fill="none" stroke="{tool.colour}" stroke-width="{HAIRLINE_MM}">')
    # Small cuts before the outline: a piece that is cut out moves.
    order = sorted(tool.lines, key=lambda lines: lines is Lines.CUT)
    for copy, corner in zip(copies, corners, strict=True):
        place = Rigid.shift(Vector(corner.x, corner.y)).then(Rigid(1, 0, 0, -1, 0, high))
        for lines in order:
            for path in copy.paths[lines]:
                end = " Z" if path.start.distance_to(path.end) < 1e-6 else ""
                yield f'<path d="{path.moved(place).svg()}{end}"/>'
            if lines is Lines.WORDS:
                yield from (_label(*word, place) for word in copy.words)
    yield "</g>"


def _label(text: str, at: Point, angle: float, size: float, place: Rigid) -> str:
    to = place.point(at)
    turn = f' transform="rotate({-math.degrees(angle):.3f} {to.x:.3f} {to.y:.3f})"' if angle else ""
    looks = f'font-family="sans-serif" font-size="{size:.3f}"'
    return f'<text x="{to.x:.3f}" y="{to.y:.3f}" {looks}{turn}>{xml_text(text)}</text>'
