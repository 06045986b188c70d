"""The measurement chart: what the finished garment measures, round and along, in every size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tapeline.geometry import Line, Vector
from tapeline.pattern import Edge, Garment, Piece
from tapeline.truing.girths import measured_girths
from tapeline.truing.opening import turned_necklines

__all__ = ["ChartRow", "Measure", "measurement_chart", "measures"]

BODY = ("back", "front", "back_lower", "front_lower", "back_side", "front_side")
"""Pieces whose hems go round the body."""
_GIRTHS = {"upper_arm": "Upper arm, round", "wrist": "Wrist, round"}


@dataclass(frozen=True, slots=True)
class Measure:
    """One length of a garment, seams sewn, laid flat."""

    name: str
    """`chest`, `back_length`."""
    title: str
    """`Chest, round`."""
    mm: float
    drawn: tuple[str, ...]
    """Labels of the draft that it is read from."""


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One measure in every size; None for a size whose garment has nothing of the kind."""

    name: str
    title: str
    mm: tuple[float | None, ...]
    drawn: tuple[str, ...]
    """Labels of the draft that it is read from, in the first size that has it."""


def measurement_chart(garments: Sequence[Garment]) -> tuple[ChartRow, ...]:
    """Every measure that at least one size has, in the order of the body: round, along, sleeve, neck."""
    found = [{measure.name: measure for measure in measures(garment)} for garment in garments]
    first = {name: measure for has in reversed(found) for name, measure in has.items()}
    order = dict.fromkeys(name for has in found for name in has)
    return tuple(
        ChartRow(
            name, first[name].title, tuple(has[name].mm if name in has else None for has in found), first[name].drawn
        )
        for name in order
    )


def measures(garment: Garment) -> Iterator[Measure]:
    """What one garment measures; what its style does not have is left out."""
    yield from _round(garment)
    yield from _along(garment)
    yield from _sleeve(garment)
    yield from _neck(garment)


def _round(garment: Garment) -> Iterator[Measure]:
    for found in measured_girths(garment):
        name = found.girth.name
        drawn = [f"{piece}.{level}" for piece, level, _ in found.girth.across]
        sides = [f"{piece}.{edge}" for piece, _, _ in found.girth.across for edge in ("side", "underarm")]
        title = _GIRTHS.get(name, f"{name.replace('_', ' ').capitalize()}, round")
        yield Measure(name, title, found.garment_mm, _there(garment, *drawn, *sides))
    hems = [(piece, edge) for piece, edge in _edges(garment, "hem") if piece.name in BODY]
    if hems:
        total = sum(edge.length * _times(piece) for piece, edge in hems)
        drawn = [f"{piece.name}.{edge.name}" for piece, edge in hems]
        yield Measure("hem", "Hem line, round", total, _there(garment, *drawn))
    yield from _whole(garment, "hem_band", "hem", "Hem band, round")


def _along(garment: Garment) -> Iterator[Measure]:
    points = garment.points
    for side, title in (("back", "Centre back, neckline to hem"), ("front", "Centre front, neckline to hem")):
        ends = [f"{side}.neckline_centre", f"{side}.hem_centre"]
        if all(end in points for end in ends):
            yield Measure(f"{side}_length", title, points[ends[0]].distance_to(points[ends[1]]), tuple(ends))
    shoulder = [edge for piece, edge in _edges(garment, "shoulder") if piece.name == "back" and edge.name == "shoulder"]
    if shoulder:
        yield Measure("shoulder", "Shoulder seam", shoulder[0].length, _there(garment, "back.shoulder_line"))
    tip = points.get("back.back_shoulder_tip")
    if tip is not None and "back_right.back_shoulder_tip" not in points:
        yield Measure("across", "Across the back, tip to tip", 2 * tip.x, ("back.back_shoulder_tip",))
    sides = {
        seam.name: garment.run_length(seam.b)
        for seam in garment.seams
        if seam.name in ("armhole", "armhole_front", "armhole_back")
    }
    if sides:
        drawn = _there(garment, "back.armhole", "front.armhole")
        yield Measure("armhole", "Armhole, along the seam", sum(sides.values()), drawn)


def _sleeve(garment: Garment) -> Iterator[Measure]:
    names = {piece.name for piece in garment.pieces}
    crown = garment.points.get("sleeve.crown")
    if "sleeve" in names and crown is not None:
        piece = garment.piece("sleeve")
        down = [place.y for place in piece.seam_line.crossings(Line(crown, crown + Vector(0.0, -1.0)))]
        low = min(down, default=crown.y)
        drawn = _there(garment, "sleeve.crown", "sleeve.hem_level", "sleeve.elbow_level")
        yield Measure("sleeve_length", "Sleeve, crown to its lower edge", crown.y - low, drawn)
        hem = next((edge for edge in piece.edges if edge.name == "hem"), None)
        if hem is not None:
            yield Measure("sleeve_hem", "Sleeve hem, round", hem.length, _there(garment, "sleeve.hem"))
    halves = [(piece, edge) for piece, edge in _edges(garment, "overarm", "sleeve_hem") if piece.name in BODY]
    over = [edge.length for piece, edge in halves if piece.name == "back" and edge.name == "overarm"]
    if over:
        yield Measure("overarm", "Shoulder and sleeve, neck to hem", over[0], _there(garment, "back.overarm"))
        ends = [edge.length for _, edge in halves if edge.name == "sleeve_hem"]
        yield Measure("sleeve_hem", "Sleeve hem, round", sum(ends), _there(garment, "back.sleeve_hem"))
    for piece in garment.pieces:
        if piece.name in ("cuff", "sleeve_band"):
            drawn = _there(garment, f"{piece.name}.hem")
            yield Measure(piece.name, f"{piece.title}, round", piece.edge("hem").length, drawn)


def _neck(garment: Garment) -> Iterator[Measure]:
    seams = [seam for seam in garment.seams if seam.name in ("neckline", "neckline_left")]
    drawn = _there(garment, "back.neckline", "front.neckline")
    if seams:
        total = 2 * sum(garment.run_length(seam.b) for seam in seams) / len(seams)
    else:
        # Turned up, or raw as on a bare block: its own edges.
        turned = turned_necklines(garment) or [e for p, e in _edges(garment, "neckline") if p.name in BODY]
        total = 2 * sum(edge.length for edge in turned)
    if total:
        yield Measure("neckline", "Neckline, along the seam", total, drawn)


def _edges(garment: Garment, *names: str) -> Iterator[tuple[Piece, Edge]]:
    """Edges of those names, and of their other halves where left and right are drafted apart."""
    wanted = {f"{name}{half}" for name in names for half in ("", "_left", "_right")}
    return ((piece, edge) for piece in garment.pieces for edge in piece.edges if edge.name in wanted)


def _whole(garment: Garment, piece: str, edge: str, title: str) -> Iterator[Measure]:
    for found in garment.pieces:
        if found.name == piece:
            length = found.edge(edge).length * (2 if found.on_fold else 1)
            yield Measure(piece, title, length, _there(garment, f"{piece}.{edge}"))


def _times(piece: Piece) -> int:
    """How often its edge goes round the garment."""
    if piece.on_fold:
        return 2
    return piece.cut.quantity if piece.cut.mirrored else 1


def _there(garment: Garment, *labels: str) -> tuple[str, ...]:
    drawn = {step.label for step in garment.steps}
    return tuple(dict.fromkeys(label for label in labels if label in drawn))
