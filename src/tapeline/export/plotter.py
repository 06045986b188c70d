r"""The plotter file: a garment's pieces on a roll in HP-GL, which pen plotters and cutting tables read.

HP-GL counts 40 units to a millimetre. `IN` begins, `SP` takes a pen, `PU` and `PD` move with the pen up and down, `LB`
writes words up to the sign ETX. The roll runs along x. Readers that hold 16 bits take numbers from -32768 to 32767,
which is 819 mm to either side of the origin: for them the plot is cut into frames, each a file of its own.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tapeline.export.arrange import Layout, arrange
from tapeline.export.drawing import Drawing, draw
from tapeline.export.fonts import in_ascii, letters_problem
from tapeline.export.line_kind import LineKind
from tapeline.export.paper import Paper
from tapeline.finish import Finished
from tapeline.geometry import Point
from tapeline.problems import InputError, Problem, Severity

__all__ = ["FRAME_MM", "PENS", "UNITS", "Plot", "hpgl", "plotted"]

UNITS = 40
"""To a millimetre."""
CHORD_MM = 0.0125
"""Half a unit: a chord leaves its curve by no more."""
FRAME_MM = 1600.0
"""Length of a frame for readers that hold 16 bits; they reach 819 mm to either side."""
PENS = {LineKind.CUT: 1, LineKind.NOTCH: 1}
"""Pens by kind of line: the first cuts, or draws what is cut; the second draws everything else."""
DRAWS = 2
ETX = "\x03"
ESC = "\x1b"


@dataclass(frozen=True, slots=True)
class Plot:
    """The files, one for each frame in order along the roll, how the pieces lie, and what is worth knowing."""

    frames: tuple[bytes, ...]
    layout: Layout
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class _Chain:
    """Straight from point to point by one pen; on the roll, mm."""

    pen: int
    points: tuple[Point, ...]


def plotted(finished: Finished, roll: Paper, *, narrow: bool = False, second: bool = False) -> Plot:
    """The pieces of a garment on a roll, the same bytes whenever the same is asked for.

    Args:
        finished: A garment with its allowances.
        roll: Its width and margin.
        narrow: For readers that hold 16 bits: in frames `FRAME_MM` long, x from their middle and y from the middle of
            the roll, so that no number is too large.
        second: As HP-GL/2, which counts further and is told how long the plot is and how wide its pens are.

    Raises:
        InputError: `not-a-roll`, and what `arrange` says of pieces that do not fit.
    """
    if not roll.is_roll:
        raise InputError(
            Problem(
                "not-a-roll",
                Severity.ERROR,
                f"a plotter draws on a roll, and {roll.name} is a sheet",
                hint="say how wide the roll is: roll 914 mm, roll 36 in. Nothing was written.",
            )
        )
    layout = arrange(finished.pieces, roll)
    drawings = [draw(placed.piece) for placed in layout.placements]
    width, length = layout.size_mm
    chains = sorted(_chains(layout, drawings, width), key=lambda chain: chain.pen)
    count = math.ceil(length / FRAME_MM) if narrow else 1
    frames, lost = [], ""
    for frame in range(count):
        low, high = (frame * FRAME_MM, (frame + 1) * FRAME_MM) if narrow else (0.0, length)
        zero = Point((low + high) / 2, width / 2) if narrow else Point(0, 0)
        inside = [part for chain in chains for part in _between(chain, low, high)]
        words, replaced = _words(layout, drawings, width, (low, high), zero)
        lost += replaced
        frames.append(
            "".join(
                [*_start((length, width) if second else None), *_lines(inside, zero), *words, *_end(second=second)]
            ).encode("ascii")
        )
    told = (letters_problem("".join(dict.fromkeys(lost)), "plotter file"),) if lost else ()
    return Plot(tuple(frames), layout, told)


def hpgl(
    chains: Iterable[tuple[int, Sequence[Point]]],
    words: Iterable[tuple[str, Point, float, float]],
    size_mm: tuple[float, float],
    *,
    second: bool = False,
) -> tuple[bytes, str]:
    """Any drawing on a roll as one plot, and the letters that had to be replaced.

    Args:
        chains: Pen, and the points it runs through, in mm along and across the roll.
        words: Text, where it begins, its angle in radians and the height of its capitals in mm.
        size_mm: Length and width of the whole.
        second: As HP-GL/2.
    """
    zero = Point(0, 0)
    drawn = sorted((_Chain(pen, tuple(points)) for pen, points in chains), key=lambda chain: chain.pen)
    made, lost = [f"SP{DRAWS};"], ""
    for said, at, angle, high in words:
        text, replaced = in_ascii(said)
        lost += replaced
        size = f"SI{high / 10 * 0.6:.3f},{high / 10:.3f};DI{math.cos(angle):.4f},{math.sin(angle):.4f};"
        made.append(f"{size}PU{_units(at, zero)};LB{text}{ETX}")
    start, end = _start(size_mm if second else None), _end(second=second)
    return "".join([*start, *_lines(drawn, zero), *made, *end]).encode("ascii"), lost


def _start(size_mm: tuple[float, float] | None) -> Iterator[str]:
    """How a plot begins; HP-GL/2 is entered from the printer's own language, and is told its size (from memory)."""
    if size_mm is not None:
        yield f"{ESC}E{ESC}%0B"
    yield "IN;"
    if size_mm is not None:
        length, width = (math.ceil(side * UNITS) for side in size_mm)
        wide = (f"PW{line.width_mm:g},{pen};" for line, pen in ((LineKind.CUT, 1), (LineKind.SEAM, DRAWS)))
        yield f"PS{length},{width};NP2;{''.join(wide)}"
    yield f"DT{ETX};"


def _end(*, second: bool) -> Iterator[str]:
    yield "SP0;"
    if second:
        yield f"PG;{ESC}%0A{ESC}E"


def _chains(layout: Layout, drawings: Sequence[Drawing], width: float) -> Iterator[_Chain]:
    """Every line of every piece where it lies."""
    for placed, drawing in zip(layout.placements, drawings, strict=True):
        for stroke in drawing.strokes:
            points = stroke.path.moved(placed.move).flattened(CHORD_MM)
            yield _Chain(PENS.get(stroke.kind, DRAWS), tuple(_along(p, width) for p in points))
        for head in drawing.heads:
            tip = [placed.move.point(p) for p in (*head, head[0])]
            yield _Chain(DRAWS, tuple(_along(p, width) for p in tip))


def _along(point: Point, width: float) -> Point:
    """From the sheet, y up, to the roll, which runs along x: turned by a quarter, never mirrored."""
    return Point(point.y, width - point.x)


def _between(chain: _Chain, low: float, high: float) -> Iterator[_Chain]:
    """The parts of a chain between two places along the roll."""
    run: list[Point] = []
    for a, b in pairwise(chain.points):
        enters, leaves = _shares(a.x, b.x, low, high)
        if enters > leaves:
            continue
        if run and enters > 0:
            yield _Chain(chain.pen, tuple(run))
            run = []
        run = run or [a.toward(b, enters) if enters else a]
        run.append(a.toward(b, leaves) if leaves < 1 else b)
        if leaves < 1:
            yield _Chain(chain.pen, tuple(run))
            run = []
    if run:
        yield _Chain(chain.pen, tuple(run))


def _shares(a: float, b: float, low: float, high: float) -> tuple[float, float]:
    """Between which shares of the way from a to b one is between low and high; the first is greater where never."""
    if a == b:
        return (0.0, 1.0) if low <= a < high else (1.0, 0.0)
    at = sorted(((low - a) / (b - a), (high - a) / (b - a)))
    return max(0.0, at[0]), min(1.0, at[1])


def _lines(chains: Iterable[_Chain], zero: Point) -> Iterator[str]:
    pen = 0
    for chain in chains:
        if chain.pen != pen:
            pen = chain.pen
            yield f"SP{pen};"
        first, *rest = (_units(point, zero) for point in chain.points)
        yield f"PU{first};PD{','.join(rest)};"


def _words(
    layout: Layout, drawings: Sequence[Drawing], width: float, reach: tuple[float, float], zero: Point
) -> tuple[list[str], str]:
    """Words that begin in a frame, and letters that had to be replaced."""
    made, lost = [], ""
    for placed, drawing in zip(layout.placements, drawings, strict=True):
        for label in drawing.labels:
            at = _along(placed.move.point(label.at), width)
            if not reach[0] <= at.x < reach[1]:
                continue
            text, replaced = in_ascii(label.text)
            lost += replaced
            way = Point(math.cos(label.angle), math.sin(label.angle))
            run = placed.move.point(way) - placed.move.point(Point(0, 0))
            high = label.size_mm / 10 * 0.7
            made.append(f"SI{high * 0.6:.3f},{high:.3f};DI{run.y:.4f},{-run.x:.4f};PU{_units(at, zero)};LB{text}{ETX}")
    return ([f"SP{DRAWS};", *made] if made else []), lost


def _units(point: Point, zero: Point) -> str:
    return f"{round((point.x - zero.x) * UNITS)},{round((point.y - zero.y) * UNITS)}"
