"""The drawing on the page: every piece in its own axes, y down; the browser lays the pieces out for its window.

What belongs to the finished piece alone (cloth, cut line, notches, grain, title) has the class `finish`. Everything
that a step drew is a `mark`, with the step's name and what it needs. Line widths, the sizes of dots and of letters are
the style sheet's, in pixels of the screen.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from html import escape

from tapeline.export.drawing import draw
from tapeline.export.line_kind import LineKind
from tapeline.finish import Finished, FinishedPiece
from tapeline.geometry import Line, Path, Point
from tapeline.pattern import Step, StepKind
from tapeline.web.handles import Handle, handles
from tapeline.web.view import View

__all__ = ["drawing"]

SQUARE_MM = 0.01
"""A way that leaves the level or the upright by less is level or upright."""

CHORDS = 8
"""To a curve, where only room for words is looked for."""


@lru_cache(maxsize=4)
def drawing(view: View) -> str | None:
    """The SVG; None while there is nothing to draw."""
    if view.finished is None or view.docket is None:
        return None
    done, unit = view.finished, view.unit
    by_sheet: dict[str, list[Step]] = {}
    for step in done.garment.steps:
        if step.kind in (StepKind.POINT, StepKind.LINE):
            by_sheet.setdefault(step.sheet, []).append(step)
    grips: dict[str, list[Handle]] = {}
    for handle in handles(done.garment, view.docket.choices):
        grips.setdefault(handle.on, []).append(handle)
    name = f"{done.title.style} for {done.title.wearer}"
    head = (
        f'<svg class="sheet" role="group" aria-labelledby="drawing-title" aria-describedby="drawing-words" '
        f'data-style="{escape(done.title.style)}" data-unit="{unit.mm:g}" data-sign="{escape(unit.sign)}">'
        f'<title id="drawing-title">{escape(name)}</title><desc id="drawing-words">{escape(_words(view, done))}</desc>'
    )
    parts = [head]
    for piece in done.pieces:
        sheet = piece.piece.name
        parts += _piece(piece, by_sheet.get(sheet, ()))
    # Handles lie over every piece, so that none covers another's.
    for sheet, own in grips.items():
        parts += (f'<g class="grips" data-on="{escape(sheet)}">', *(_handle(grip, view) for grip in own), "</g>")
    parts.append("</svg>")
    return "".join(parts)


def _piece(piece: FinishedPiece, steps: Sequence[Step]) -> Iterable[str]:
    outline = list(piece.cut_line.control_points())
    points = [step.point for step in steps if step.point is not None]
    title = escape(piece.piece.title)
    yield (
        f'<g class="piece" data-piece="{escape(piece.piece.name)}" data-title="{title}" '
        f'data-box="{_box(outline)}" data-wide="{_box([*outline, *points])}">'
    )
    yield f'<path class="cloth finish" d="{_course(piece.cut_line)}"/>'
    made = draw(piece, words=False)
    for stroke in made.strokes:
        if stroke.kind in (LineKind.CUT, LineKind.NOTCH, LineKind.GRAIN):
            yield f'<path class="{stroke.kind.label} finish" d="{_course(stroke.path)}"/>'
    for head in made.heads:
        yield f'<path class="head finish" d="{_course(Path.through(*head))}Z"/>'
    yield from _marks(piece, steps)
    at, room = _title_place(piece)
    yield f'<text class="title finish" data-inside="{_place(at)} {room:.0f}">{title}</text>'
    yield "</g>"


def _marks(piece: FinishedPiece, steps: Sequence[Step]) -> Iterable[str]:
    """Lines first, points over them; an edge is drawn as what becomes of it."""
    lines = [(edge.path, "fold-line" if edge.fold else "seam-line") for edge in piece.piece.edges]
    lines += [(mark.path, "mark-line") for mark in piece.piece.marks]
    for step in steps:
        if step.path is None:
            continue
        line = next((line for line in lines if line[0] == step.path), None)
        if line is not None:
            lines.remove(line)
        course = _course(step.path)
        yield (
            f'<g class="mark line{"" if line else " construction"}" {_data(step)}><path class="hit" d="{course}"/>'
            f'<path class="{line[1] if line else "drawn"}" d="{course}"/></g>'
        )
    # What no step drew under its own name is drawn all the same.
    for path, kind in lines:
        yield f'<path class="{kind} finish" d="{_course(path)}"/>'
    points = {step.label: step.point for step in steps if step.point is not None}
    for step in steps:
        if step.point is not None:
            came = _reach(step.point, [points[need] for need in step.needs if need in points])
            # Its looks are made by the page when it is to be seen.
            yield f'<g class="mark point" {_data(step)} data-at="{_place(step.point)}"{came}></g>'


def _reach(point: Point, sources: Sequence[Point]) -> str:
    """The way the hand went, when it went level or straight up or down from a point that the step names first."""
    if not sources:
        return ""
    way = point - sources[0]
    if min(abs(way.x), abs(way.y)) > SQUARE_MM or way.length < SQUARE_MM:
        return ""
    return f' data-from="{_place(sources[0])}"'


def _handle(grip: Handle, view: View) -> str:
    point, unit = grip.at, view.unit
    label = f"{' '.join(grip.keys[1:]).replace('_', ' ')}, on the {grip.on.replace('_', ' ')}"
    now, least, most = (round(mm / unit.mm, 3) for mm in (grip.now_mm, grip.limits.least * 10, grip.limits.most * 10))
    step = 0.1 if unit.mm == 10 else 0.0625  # a millimetre, a sixteenth of an inch
    return (
        f'<g class="handle" role="slider" tabindex="0" id="handle-{escape(grip.label)}-{"-".join(grip.keys[1:])}" '
        f'data-path="{".".join(grip.keys)}" data-way="{grip.way.x:.5f} {-grip.way.y:.5f}" data-step-size="{step}" '
        f'data-says="{escape(grip.limits.says)}" aria-label="{escape(label)}" '
        f'aria-valuemin="{least:g}" aria-valuemax="{most:g}" aria-valuenow="{now:g}" '
        f'aria-valuetext="{now:g} {escape(unit.sign)}" data-at="{_place(point)}">'
        f'<path class="hit" d="M2,-13H46V13H2Z"/><path class="arrow" d="M14,-7H24V-12L40,0L24,12V7H14Z"/></g>'
    )


def _title_place(piece: FinishedPiece) -> tuple[Point, float]:
    """The middle of the widest of some level chords of a piece, and how wide it is there, mm."""
    corners = [place for edge in piece.piece.edges for place in _along(edge.path)]
    low, high = min(p.y for p in corners), max(p.y for p in corners)
    best = (0.0, corners[0])
    for share in (0.5, 0.4, 0.6, 0.3):
        level = low + (high - low) * share
        cut = sorted(
            a.x + (level - a.y) / (b.y - a.y) * (b.x - a.x)
            for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
            if (a.y > level) != (b.y > level)
        )
        for left, right in zip(cut[::2], cut[1::2], strict=False):
            # A wider chord has to be much wider to be worth leaving the middle of the piece.
            if right - left > best[0] * 1.25:
                best = (right - left, Point((left + right) / 2, level))
    return best[1], best[0]


def _along(path: Path) -> Iterable[Point]:
    """Places along a line, near enough together to lay words between."""
    for segment in path.segments:
        yield from [segment.start] if isinstance(segment, Line) else [segment.at(k / CHORDS) for k in range(CHORDS)]


def _words(view: View, done: Finished) -> str:
    """The drawing in words, for who cannot see it."""
    unit = view.unit
    parts = []
    for piece in (one.piece for one in done.pieces):
        edges = ", ".join(f"{e.name.replace('_', ' ')} {e.length / unit.mm:.1f} {unit.sign}" for e in piece.edges)
        half = "half, on the fold" if piece.on_fold else "whole"
        parts.append(f"{piece.title} ({half}; cut {piece.cut.quantity} in {piece.cut.cloth}): {edges}.")
    return f"{len(done.pieces)} pieces, seam line thin and cut line strong. " + " ".join(parts)


def _data(step: Step) -> str:
    return f'data-step="{escape(step.label)}" data-needs="{escape(" ".join(step.needs))}"'


def _course(path: Path) -> str:
    start = path.start
    parts = [f"M{start.x:.2f},{-start.y:.2f}"]
    for segment in path.segments:
        end = segment.end
        if isinstance(segment, Line):
            parts.append(f"L{end.x:.2f},{-end.y:.2f}")
        else:
            out, into = segment.out, segment.into
            parts.append(f"C{out.x:.2f},{-out.y:.2f} {into.x:.2f},{-into.y:.2f} {end.x:.2f},{-end.y:.2f}")
    return "".join(parts)


def _place(point: Point) -> str:
    return f"{_n(point.x)} {_n(-point.y)}"


def _box(points: Iterable[Point]) -> str:
    listed = list(points)
    xs, ys = [p.x for p in listed], [-p.y for p in listed]
    return " ".join(map(_n, (min(xs), min(ys), max(xs), max(ys))))


def _n(value: float) -> str:
    return f"{value + 0.0:.2f}"
