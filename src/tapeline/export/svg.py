"""The drawing: an SVG in mm, every line with its name and its reason."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from xml.sax.saxutils import quoteattr

from tapeline.export.drawing import Drawing, Stroke, draw
from tapeline.export.labels import Label
from tapeline.export.line_kind import LineKind
from tapeline.export.xml_text import digits, xml_text
from tapeline.finish import Finished
from tapeline.geometry import Path, Point, Rigid
from tapeline.pattern import Step, StepKind
from tapeline.units import Unit

__all__ = ["svg"]

GAP_MM = 30.0
"""Between pieces, and round them."""
DOT_MM = 1.4
"""Radius of the mark of a point."""

_STYLE = """
text { font-family: "DejaVu Sans", Verdana, Arial, sans-serif; fill: #1a1a1a }
.title { font-weight: bold }
path { fill: none; stroke: #1a1a1a; stroke-linejoin: round }
.ground { fill: #ffffff; stroke: none }
.cloth { fill: #f6f4ef; stroke: none }
.head { fill: #1a1a1a; stroke: none }
.construction { stroke: #5b6b7a; stroke-width: 0.25; stroke-dasharray: 1 1 }
.point circle { fill: #9a3412; stroke: #ffffff; stroke-width: 0.4 }
.point text { fill: #9a3412 }
.seam-line:hover, .cut-line:hover, .fold-line:hover, .construction:hover { stroke: #9a3412; stroke-width: 1 }
"""


@dataclass(frozen=True, slots=True)
class _Reader:
    """Where a piece lies on the page, and what is known about its lines."""

    piece: str
    flip: Rigid
    steps: Mapping[str, Step]
    unit: Unit


def svg(finished: Finished, unit: Unit = Unit.CM, *, points: bool = False) -> str:
    """The pieces side by side, upright; `points` adds every point and construction line of the draft.

    One group for each piece (`piece-front`); a line is named after its edge (`front.armhole`) and carries the words and
    equations of its step as a title, the step's name as `data-step` and what it needs as `data-needs`.
    """
    steps = {step.label: step for step in finished.garment.steps if step.kind is not StepKind.SECTION}
    boxes: list[tuple[float, float, float, float]] = []
    for piece in finished.pieces:
        shown = [*piece.cut_line.flattened(0.1), *(_points_of(steps.values(), piece.piece.name) if points else ())]
        boxes.append(
            (min(p.x for p in shown), min(p.y for p in shown), max(p.x for p in shown), max(p.y for p in shown))
        )
    height = max(box[3] - box[1] for box in boxes) + 2 * GAP_MM
    x = GAP_MM
    body: list[str] = []
    for piece, (left, _, right, top) in zip(finished.pieces, boxes, strict=True):
        # Here, and only here, y turns to run down the page.
        flip = Rigid(1, 0, 0, -1, x - left, GAP_MM + top)
        body += _piece(draw(piece), _Reader(piece.piece.name, flip, steps, unit), points=points)
        x += right - left + GAP_MM
    words = _sentence(finished)
    name = f"{finished.title.style} for {finished.title.wearer}"
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{digits(x)}mm" height="{digits(height)}mm" '
        f'viewBox="0 0 {digits(x)} {digits(height)}" role="img" aria-labelledby="drawing-title drawing-words" '
        'lang="en">'
    )
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        head,
        f'<title id="drawing-title">{xml_text(name)}</title>',
        f'<desc id="drawing-words">{xml_text(words)}</desc>',
        f"<style>{_STYLE}{_kinds()}</style>",
        f'<rect class="ground" width="{digits(x)}" height="{digits(height)}"/>',
        *body,
        "</svg>",
        "",
    ]
    return "\n".join(lines)


def _piece(drawing: Drawing, reader: _Reader, *, points: bool) -> Iterable[str]:
    piece, flip = drawing.piece.piece, reader.flip
    yield f'<g id="piece-{_id(piece.name)}" data-piece={quoteattr(piece.name)}>'
    yield f"<title>{xml_text(', '.join(drawing.piece.words))}</title>"
    outline = drawing.piece.cut_line.moved(flip).svg()
    yield f'<path id="{_id(piece.name)}.cut-line" class="cloth" d="{outline}"/>'
    counts: dict[str, int] = {}
    for stroke in drawing.strokes:
        yield _stroke(stroke, reader, counts)
    edges = {f"{piece.name}.{edge.name}" for edge in piece.edges}
    for edge in piece.edges:
        if edge.fold:
            label = f"{piece.name}.{edge.name}"
            yield f'<path id="{_id(label)}" class="seam-line" {_because(label, edge.path, reader)}'
    for head in drawing.heads:
        corners = [flip.point(p) for p in head]
        yield f'<path class="head" d="{Path.through(*corners, corners[0]).svg()}"/>'
    yield from (_label(label, flip) for label in drawing.labels)
    if points:
        yield from _construction(edges, reader)
    yield "</g>"


def _stroke(stroke: Stroke, reader: _Reader, counts: dict[str, int]) -> str:
    label = f"{reader.piece}.{stroke.name}"
    if stroke.kind is LineKind.SEAM:
        name, because = label, _because(label, stroke.path, reader)
    else:
        family = f"{label}.{stroke.kind.label}" if stroke.kind is LineKind.NOTCH else label
        counts[family] = counts.get(family, 0) + 1
        name = f"{family}-{counts[family]}" if stroke.kind in (LineKind.NOTCH, LineKind.CUT, LineKind.FOLD) else family
        because = _because(label, stroke.path, reader, fallback=_plain(stroke))
    return f'<path id="{_id(name)}" class="{stroke.kind.label}" {because}'


def _plain(stroke: Stroke) -> str:
    return {
        LineKind.CUT: "cut line",
        LineKind.FOLD: "fold: lay on the fold of the cloth, do not cut",
        LineKind.NOTCH: f"notch on the {stroke.name.replace('_', ' ')}",
        LineKind.GRAIN: "grain line: lay along the cloth" if stroke.name == "grain" else "lay this side on the fold",
    }.get(stroke.kind, stroke.name.replace("_", " "))


def _because(label: str, path: Path, reader: _Reader, *, fallback: str = "") -> str:
    """The rest of a path element: its step, its course, its title."""
    course = f'd="{path.moved(reader.flip).svg()}"'
    steps = reader.steps
    step = steps.get(label) or next((s for s in steps.values() if s.path is not None and s.path == path), None)
    if step is None:
        return f"{course}><title>{xml_text(fallback or label)}</title></path>"
    return f"{_data(step)} {course}><title>{xml_text(_title(label, step, reader.unit))}</title></path>"


def _data(step: Step) -> str:
    return f"data-step={quoteattr(step.label)} data-needs={quoteattr(' '.join(step.needs))}"


def _title(label: str, step: Step, unit: Unit) -> str:
    """`front.armhole: leaves the shoulder square; from ...; armhole depth = ... = 20.5 cm`."""
    parts = (f"{label}: {step.says}", step.how_text(unit), *step.equations(unit))
    return "\n".join(part for part in parts if part)


def _label(label: Label, flip: Rigid) -> str:
    place = flip.point(label.at)
    turn = (
        f' transform="rotate({digits(-math.degrees(label.angle))} {digits(place.x)} {digits(place.y)})"'
        if label.angle
        else ""
    )
    kind = ' class="title"' if label.bold else ""
    at = f'x="{digits(place.x)}" y="{digits(place.y)}"'
    return f'<text{kind} {at} font-size="{digits(label.size_mm)}"{turn}>{xml_text(label.text)}</text>'


def _construction(edges: set[str], reader: _Reader) -> Iterable[str]:
    """Lines of the draft that are no edges, and its points with their names."""
    for step in reader.steps.values():
        if step.sheet != reader.piece:
            continue
        title = f"<title>{xml_text(_title(step.label, step, reader.unit))}</title>"
        name = _id(f"step.{step.label}")
        if step.path is not None and step.label not in edges:
            course = step.path.moved(reader.flip).svg()
            yield f'<path id="{name}" class="construction" {_data(step)} d="{course}">{title}</path>'
        if step.point is not None:
            place = reader.flip.point(step.point)
            yield f'<g id="{name}" class="point" {_data(step)}>{title}'
            yield f'<circle cx="{digits(place.x)}" cy="{digits(place.y)}" r="{DOT_MM}"/>'
            word = step.label.rpartition(".")[2].replace("_", " ")
            at = f'x="{digits(place.x + 2.5)}" y="{digits(place.y - 2)}"'
            yield f'<text {at} font-size="4">{xml_text(word)}</text></g>'


def _points_of(steps: Iterable[Step], piece: str) -> list[Point]:
    return [step.point for step in steps if step.point is not None and step.sheet == piece]


def _sentence(finished: Finished) -> str:
    """The drawing in words, for who cannot see it."""
    parts = []
    for piece in (one.piece for one in finished.pieces):
        edges = ", ".join(f"{e.name.replace('_', ' ')} {e.length / 10:.1f} cm" for e in piece.edges)
        half = "half, on the fold" if piece.on_fold else "whole"
        parts.append(f"{piece.title} ({half}; cut {piece.cut.quantity} in {piece.cut.cloth}): {edges}.")
    count = len(finished.pieces)
    return f"{count} pieces side by side, seam line thin and cut line strong. " + " ".join(parts)


def _kinds() -> str:
    rows = []
    for kind in LineKind:
        dashes = f"; stroke-dasharray: {' '.join(map(digits, kind.dashes_mm))}" if kind.dashes_mm else ""
        rows.append(f".{kind.label} {{ stroke-width: {digits(kind.width_mm)}{dashes} }}\n")
    return "".join(rows)


def _id(name: str) -> str:
    """A name that may stand in an id."""
    return "".join(c if c.isalnum() or c in "._-" else "-" for c in name)
