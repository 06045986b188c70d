"""What holds of a garment after any alteration, looked at without truing; each check yields what is wrong."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from shapely import LinearRing, LineString, Polygon

from tapeline.geometry import area
from tapeline.pattern import EdgeKind, Garment, Piece, Seam, StepKind
from tests.properties.measuring import length, outline

__all__ = ["notches_of", "off", "whole"]

CLOSED_MM = 1e-6
LEAST_EDGE_MM = 1.0
LEAST_GRAIN_MM = 0.5
"""Half of the narrowest strip that can be cut."""
ON_THE_EDGE_MM = 0.01
DRAWN_MM = 0.05
"""The grain line may end on the outline, which is sampled here."""


def whole(garment: Garment) -> list[str]:
    """Everything about an altered garment that should not be so."""
    checks = (closed, simple, named_apart, notched, partnered, on_grain, told)
    return [what for check in checks for what in check(garment)]


def closed(garment: Garment) -> Iterator[str]:
    """Every edge begins where the one before ends, and is long enough to sew."""
    for piece in garment.pieces:
        for one, two in pairwise((*piece.edges, piece.edges[0])):
            gap = one.path.end.distance_to(two.path.start)
            if gap > CLOSED_MM:
                yield f"{piece.name}: {gap:.6f} mm between {one.name} and {two.name}"
            if one.length < LEAST_EDGE_MM - ON_THE_EDGE_MM:
                yield f"{piece.name}: {one.name} is {one.length:.3f} mm long"


def simple(garment: Garment) -> Iterator[str]:
    """Outlines cross nowhere and turn clockwise; the polygon's area is ours."""
    for piece in garment.pieces:
        places = outline(piece.seam_line)
        if np.abs(places[-1] - places[0]).max() < CLOSED_MM:
            # A last side as short as a rounding error would lie on its neighbours.
            places[-1] = places[0]
        ring = LinearRing(places)
        if not ring.is_simple:
            yield f"{piece.name} crosses itself"
        elif ring.is_ccw:
            yield f"{piece.name} runs the wrong way round"
        else:
            size, ours = Polygon(places).area, -area(piece.seam_line)
            if abs(size - ours) > 1e-3 * ours:
                yield f"{piece.name} has {ours:.0f} mm2, its polygon {size:.0f}"


def named_apart(garment: Garment) -> Iterator[str]:
    """No two pieces, seams, or edges of a piece have one name."""
    names = {"pieces": [p.name for p in garment.pieces], "seams": [s.name for s in garment.seams]}
    names |= {f"edges of {p.name}": [e.name for e in p.edges] for p in garment.pieces}
    for kind, found in names.items():
        yield from (f"two {kind} are called {name}" for name, times in Counter(found).items() if times > 1)


def notched(garment: Garment) -> Iterator[str]:
    """Every notch lies on an edge that there is."""
    for piece in garment.pieces:
        lengths = {edge.name: edge.length for edge in piece.edges}
        for notch in piece.notches:
            if notch.edge not in lengths:
                yield f"{piece.name} has a notch on {notch.edge}, which it does not have"
            elif not -ON_THE_EDGE_MM <= notch.at_mm <= lengths[notch.edge] + ON_THE_EDGE_MM:
                yield f"{piece.name}: a notch {notch.at_mm:.2f} mm along {notch.edge}, {lengths[notch.edge]:.2f} long"


def partnered(garment: Garment) -> Iterator[str]:
    """Every edge that is sewn is in a seam, and every seam and join is of edges that there are."""
    edges = {(piece.name, edge.name): edge for piece in garment.pieces for edge in piece.edges}
    sewn = {(ref.piece, ref.edge) for seam in garment.seams for ref in (*seam.a, *seam.b)}
    for ref in sewn - edges.keys():
        yield f"a seam sews {'.'.join(ref)}, which is not there"
    for name, edge in edges.items():
        if edge.kind is EdgeKind.SEAM and name not in sewn:
            yield f"{'.'.join(name)} has no partner"
        if edge.kind is EdgeKind.FOLD and name in sewn:
            yield f"{'.'.join(name)} lies on the fold and is sewn"
    seams = {seam.name for seam in garment.seams}
    for join in garment.joins:
        if join.seam not in seams:
            yield f"the {join.line} crosses a seam {join.seam}, which is not there"
        for piece, line, seam in join.corners:
            if not {(piece, line), (piece, seam)} <= edges.keys():
                yield f"the {join.line} has a corner {piece} {line} {seam}, which is not there"
            elif not _meet(garment.piece(piece), line, seam):
                yield f"{line} and {seam} of {piece} do not meet, and the {join.line} runs over there"


def _meet(piece: Piece, one: str, two: str) -> bool:
    around = [edge.name for edge in piece.edges]
    return any({first, second} == {one, two} for first, second in pairwise((*around, around[0])))


def on_grain(garment: Garment) -> Iterator[str]:
    """Every piece has a grain line, and it lies inside."""
    for piece in garment.pieces:
        ends = [(p.x, p.y) for p in (piece.grain.start, piece.grain.end)]
        if LineString(ends).length < LEAST_GRAIN_MM:
            yield f"{piece.name} has no grain line to speak of"
        elif not Polygon(outline(piece.seam_line)).buffer(DRAWN_MM).covers(LineString(ends)):
            yield f"the grain line of {piece.name} leaves it"


def told(garment: Garment) -> Iterator[str]:
    """Every step has a name of its own and needs only what is there before it; every girth is measured somewhere."""
    known = {f"{piece.name}.centre" for piece in garment.pieces} | {"front.centre", "back.centre", "sleeve.centre"}
    known |= {size.name for size in garment.sizes}
    seen: set[str] = set()
    for step in garment.steps:
        if step.kind is StepKind.SECTION:
            continue
        if step.label in seen:
            yield f"two steps are called {step.label}"
        missing = [need for need in step.needs if need not in seen | known]
        if missing:
            yield f"{step.label} needs {', '.join(missing)}, which is not there yet"
        seen.add(step.label)
    pieces = {piece.name: {edge.name for edge in piece.edges} for piece in garment.pieces}
    for girth in garment.girths:
        for piece, mark, _ in girth.across:
            if piece not in pieces or (f"{piece}.{mark}" not in garment.points and mark not in pieces[piece]):
                yield f"the {girth.name} is measured across {piece} at {mark}, which is not there"


def notches_of(garment: Garment) -> Counter[str]:
    """How many notches there are of each kind."""
    return Counter(str(notch.kind) for piece in garment.pieces for notch in piece.notches)


def off(garment: Garment, seam: Seam) -> float:
    """How much longer the first side of a seam is than the second and the ease, mm."""
    a, b = (sum(length(garment.path(ref)) for ref in side) for side in (seam.a, seam.b))
    return float(a - b - seam.ease.mm)
