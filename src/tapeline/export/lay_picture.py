"""A lay plan as a picture (SVG) and as a table of coordinates (CSV)."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Iterator

from tapeline.export.xml_text import xml_text
from tapeline.geometry import Path, Point, bounds, ground
from tapeline.geometry.region import inner_place
from tapeline.lay import LayCloth, LayPlan, Remnant, Spread, remnants

__all__ = ["lay_picture", "lay_table"]

EDGE_MM = 60.0
"""Paper round the cloth."""
WORDS_MM = 26.0
"""Height of the letters on a piece two metres of cloth wide; smaller pieces have smaller ones."""
FILLS = ("#dfe8f2", "#f3e3d3", "#e0eddc", "#efdfec", "#f4efcf", "#d9ecec")
"""One for each garment of a plan; they begin again after the last."""
COLUMNS = (
    *("piece", "title", "garment", "number", "x_mm", "y_mm", "turn_degrees", "turned_over"),
    *("left_mm", "low_mm", "right_mm", "high_mm", "area_cm2", "on_fold"),
)
"""Of the table."""
LINES = {
    "notch": "stroke:#222;stroke-width:1.5",
    "grain": "stroke:#222;stroke-width:1;stroke-dasharray:24 6 4 6",
    "fold": "stroke:#a33;stroke-width:3",
    "seam": "stroke:#777;stroke-width:0.8",
    "mark": "stroke:#777;stroke-width:0.8;stroke-dasharray:6 6",
}


def lay_picture(plan: LayPlan) -> str:
    """The plan to look at: the strip from left to right, the lower edge (or the fold) below, sizes in words.

    True to scale where it is shown in millimetres; to cut from it, take the true-scale files.
    """
    cloth = plan.cloth
    length, strip = max(plan.length_mm, 1.0), cloth.strip_mm
    width, height = length + 2 * EDGE_MM, strip + 3 * EDGE_MM
    body = [*_cloth(cloth, length), *_left(remnants(plan)), *_pieces(plan)]
    head = (
        f"{cloth.name}: {length / 10:.1f} cm of {cloth.width_mm / 10:.1f} cm, {cloth.spread}, "
        f"{plan.yield_share:.1%} of the cloth used, {len(plan.placements)} pieces laid"
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{-EDGE_MM:.1f} {-2 * EDGE_MM:.1f} {width:.1f} {height:.1f}" '
        f'width="{width:.1f}mm" height="{height:.1f}mm" font-family="sans-serif">\n'
        f"<title>{xml_text(head)}</title>\n"
        f'<text x="0" y="{-EDGE_MM * 0.6:.1f}" font-size="{WORDS_MM}">{xml_text(head)}</text>\n'
        f'<g transform="translate(0 {strip:.3f}) scale(1 -1)">\n' + "\n".join(body) + "\n</g>\n</svg>\n"
    )


def lay_table(plan: LayPlan) -> str:
    """One row for each piece laid: where its origin and its box lie, in mm, and how it is turned, in degrees."""
    made = io.StringIO()
    writer = csv.writer(made, lineterminator="\n")
    writer.writerow(COLUMNS)
    for placement, piece, outline in plan.laid():
        turn = math.degrees(math.remainder(placement.turn, math.tau))
        numbers = [placement.x, placement.y, turn if abs(turn) > 1e-9 else 0.0]
        writer.writerow(
            (
                *(piece.name, piece.title, piece.garment, placement.garment),
                *(f"{n:.3f}" for n in numbers),
                "yes" if placement.turned_over else "no",
                *(f"{n:.2f}" for n in bounds(outline)),
                f"{ground(outline) / 100:.2f}",
                "yes" if piece.on_fold else "no",
            )
        )
    return made.getvalue()


def _cloth(cloth: LayCloth, length: float) -> Iterator[str]:
    strip = cloth.strip_mm
    yield f'<rect x="0" y="0" width="{length:.2f}" height="{strip:.2f}" fill="#fff" stroke="#222" stroke-width="2"/>'
    for repeat, line, across in (
        (cloth.repeat_along_mm, cloth.line_along_mm, False),
        (cloth.repeat_across_mm, cloth.line_across_mm, True),
    ):
        end = strip if across else length
        at = math.remainder(line, repeat) if repeat else end + 1
        while at <= end:
            if at >= 0:
                ends = (Point(0, at), Point(length, at)) if across else (Point(at, 0), Point(at, strip))
                yield _line(ends, "stroke:#7aa6c9;stroke-width:2;opacity:0.6")
            at += repeat
    if cloth.spread in {Spread.FOLDED, Spread.TUBULAR}:
        yield _line((Point(0, 0), Point(length, 0)), "stroke:#a33;stroke-width:8")
    if cloth.spread is Spread.TUBULAR:
        yield _line((Point(0, strip), Point(length, strip)), "stroke:#a33;stroke-width:8")
    for flaw in cloth.flaws:
        box = f'x="{flaw.x:.2f}" y="{flaw.y:.2f}" width="{flaw.length:.2f}" height="{flaw.width:.2f}"'
        yield f'<rect {box} fill="#d33"><title>flaw: nothing is cut here</title></rect>'


def _left(left: Iterable[Remnant]) -> Iterator[str]:
    for one in left:
        says = f"left over: {one.length / 10:.0f} × {one.width / 10:.0f} cm"
        box = f'x="{one.x:.1f}" y="{one.y:.1f}" width="{one.length:.1f}" height="{one.width:.1f}"'
        yield f'<rect {box} fill="none" stroke="#999" stroke-dasharray="10 10"><title>{says}</title></rect>'


def _pieces(plan: LayPlan) -> Iterator[str]:
    names = list(dict.fromkeys((p.garment, piece.garment) for p, piece, _ in plan.laid()))
    for placement, piece, outline in plan.laid():
        fill = FILLS[names.index((placement.garment, piece.garment)) % len(FILLS)]
        points = " ".join(f"{p.x:.2f},{p.y:.2f}" for p in outline)
        title = xml_text(f"{piece.title or piece.name}, {piece.garment} {placement.garment}")
        yield f'<g><title>{title}</title><polygon points="{points}" fill="{fill}" stroke="#222" stroke-width="1.5"/>'
        for line in piece.lines:
            yield _line([placement.move.point(p) for p in line.points], LINES.get(line.kind, LINES["mark"]))
        yield _name(piece.title or piece.name, outline, back=math.cos(placement.turn) < -1e-9)
        yield "</g>"


def _name(words: str, outline: tuple[Point, ...], *, back: bool) -> str:
    left, low, right, high = bounds(outline)
    wide, tall = right - left, high - low
    upright = tall > 1.5 * wide
    along, beside = (tall, wide) if upright else (wide, tall)
    size = min(WORDS_MM, along / max(len(words), 1), beside * 0.4)
    at = inner_place(Path.through(*outline, outline[0]))
    turn = (-90 if upright else 0) + (180 if back else 0)
    return (
        f'<text transform="translate({at.x:.1f} {at.y:.1f}) scale(1 -1) rotate({turn})" font-size="{size:.1f}" '
        'text-anchor="middle" dominant-baseline="central" paint-order="stroke" stroke="#fff" stroke-width="4" '
        f'stroke-opacity="0.7">{xml_text(words)}</text>'
    )


def _line(points: Iterable[Point], style: str) -> str:
    return f'<polyline points="{" ".join(f"{p.x:.2f},{p.y:.2f}" for p in points)}" fill="none" style="{style}"/>'
