"""What holds of every garment that is drafted, measured without `tapeline.truing`; each check yields what is wrong.

The limits are those that the project states: a tenth of a millimetre on a seam, one degree where a line crosses a
seam, a tenth of a degree at a fold.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from itertools import accumulate, pairwise

from shapely import LinearRing, Polygon

from tapeline.geometry import area
from tapeline.pattern import Piece, Seam, StepKind
from tests.properties.bending import bends_as_meant
from tests.properties.drafts import Drawing
from tests.properties.girths import girths_as_taped, sleeve_as_long_as_said, sleeved
from tests.properties.hoods import hood_holds, pocket_holds
from tests.properties.limits import SEWN_MM, SOLVED_MM
from tests.properties.measuring import ends, length, outline
from tests.properties.raglans import (
    raglan,
    raglan_notches,
)

__all__ = ["broken"]

JOIN = math.radians(1)
FOLD = math.radians(0.1)


def broken(drawing: Drawing) -> list[str]:
    """Everything about a drawing that should not be so."""
    return [f"{drawing}: {what}" for check in CHECKS for what in check(drawing)]


def closed(drawing: Drawing) -> Iterator[str]:
    """Every edge begins where the one before ends, and no edge is nothing."""
    for piece in drawing.garment.pieces:
        for one, two in pairwise((*piece.edges, piece.edges[0])):
            if one.path.end.distance_to(two.path.start) > SOLVED_MM:
                yield f"{piece.name}: a gap between {one.name} and {two.name}"
            if one.length < 1:
                yield f"{piece.name}: {one.name} is {one.length:.2f} mm long"


def sewn_equal(drawing: Drawing) -> Iterator[str]:
    """Seams are equal or differ by the ease they declare; those that are solved are, to a millionth."""
    garment = drawing.garment
    for seam in garment.seams:
        a, b = (sum(length(garment.path(ref)) for ref in side) for side in (seam.a, seam.b))
        off = a - b - seam.ease.mm
        solved = ("armhole_front", "armhole_back", "raglan_front", "raglan_back", "underarm", "overarm")
        allowed = SOLVED_MM if seam.name in solved else SEWN_MM
        if abs(off) > allowed:
            yield f"the seam {seam.name} is {off:.7f} mm off: {a:.3f} and {b:.3f}"


def notches_meet(drawing: Drawing) -> Iterator[str]:
    """Notches answer each other by kind and by length along the seam; a band is stretched evenly."""
    garment = drawing.garment
    by_name = {seam.name: seam for seam in garment.seams}
    kinds = {"front": "single", "back": "double"}
    if sleeved(garment):
        yield from cap_and_armhole(drawing, kinds)
    if raglan(garment):
        yield from raglan_notches(drawing, kinds)
    front, back = (garment.piece(half).notches_on("side")[0].at_mm for half in kinds)
    eased = by_name["side"].ease.mm
    if abs(front - back - eased) > SEWN_MM:
        yield f"the waist notches are {front - back:.3f} mm apart, {eased:.3f} mm eased above them"
    if "neckline" in by_name and len(by_name["neckline"].a) == 1:
        yield from band_even(drawing, by_name["neckline"])


def cap_and_armhole(drawing: Drawing, kinds: dict[str, str]) -> Iterator[str]:
    """A set-in sleeve's notches, half by half."""
    garment = drawing.garment
    for half, kind in kinds.items():
        (arm,) = garment.piece(half).notches_on("armhole")
        cap = [n for n in garment.piece("sleeve").notches_on(f"cap_{half}") if n.kind != "crown"]
        if [str(n.kind) for n in (arm, *cap)] != [kind, kind]:
            yield f"the {half} armhole is not notched {kind} on both sides"
        whole, cap_whole = length(garment.piece(half).edge("armhole").path), cap_length(drawing, half)
        under, cap_under = (
            whole - arm.at_mm,
            cap_whole - (cap[0].at_mm if half == "front" else cap_whole - cap[0].at_mm),
        )
        if abs(under - cap_under) > SEWN_MM:
            yield f"below the {half} notches are {under:.3f} mm of armhole and {cap_under:.3f} mm of cap"


def cap_length(drawing: Drawing, half: str) -> float:
    """Length of one half of the cap line."""
    return length(drawing.garment.piece("sleeve").edge(f"cap_{half}").path)


def band_even(drawing: Drawing, seam: Seam) -> Iterator[str]:
    """Band or collar meets each seam of the neckline at a notch, as much shorter in front as at the back."""
    garment = drawing.garment
    (band,) = seam.a
    parts = [length(garment.path(ref)) for ref in seam.b]
    share = 1 + seam.ease.mm / sum(parts)
    along = [notch.at_mm for notch in garment.piece(band.piece).notches_on(band.edge)]
    if band.backwards:
        along = [length(garment.path(band)) - at for at in along]
    # Back to front: of a raglan the seams of both sleeves are crossed, too.
    for end in accumulate(parts[:3] if raglan(garment) else parts[:1]):
        off = min(abs(at - end * share) for at in along)
        if off > SEWN_MM:
            yield f"no notch of the {band.piece} is nearer than {off:.3f} mm to where a seam comes"
    if not 0.5 < share <= 1 + 1e-9:
        yield f"the band is {share:.3f} of the neckline"


def hoods_and_pockets(drawing: Drawing) -> Iterator[str]:
    """A hood answers the neckline, a pocket its place on the front."""
    yield from hood_holds(drawing.garment)
    yield from pocket_holds(drawing.garment)


def joins_run_on(drawing: Drawing) -> Iterator[str]:
    """Lines that cross a seam run straight on when it is sewn."""
    for join in drawing.garment.joins:
        inside = [angle(drawing.garment.piece(piece), line, seam) for piece, line, seam in join.corners]
        if abs(sum(inside) - math.pi) > JOIN and not join.corner:
            yield f"{join.line} bends by {math.degrees(sum(inside) - math.pi):.2f} degrees at {join.seam}"


def folds_square(drawing: Drawing) -> Iterator[str]:
    """What meets a fold meets it square."""
    for piece in drawing.garment.pieces:
        for at, edge in enumerate(piece.edges):
            if edge.fold:
                for other in (piece.edges[at - 1], piece.edges[(at + 1) % len(piece.edges)]):
                    if other.name in piece.pointed:
                        continue
                    off = angle(piece, edge.name, other.name) - math.pi / 2
                    if abs(off) > FOLD:
                        yield f"{piece.name}.{other.name} is {math.degrees(off):.3f} degrees off square to the fold"


def angle(piece: Piece, one: str, other: str) -> float:
    """The angle inside a piece between two neighbouring edges."""
    names = [edge.name for edge in piece.edges]
    first, second = (one, other) if names[(names.index(one) + 1) % len(names)] == other else (other, one)
    comes, goes = ends(piece.edge(first).path)[1], ends(piece.edge(second).path)[0]
    return math.pi + math.atan2(comes[0] * goes[1] - comes[1] * goes[0], float(comes @ goes))


def simple(drawing: Drawing) -> Iterator[str]:
    """Outlines cross nowhere and turn clockwise; their area is what the polygon says."""
    for piece in drawing.garment.pieces:
        places = outline(piece.seam_line)
        ring = LinearRing(places)
        if not ring.is_simple:
            yield f"{piece.name} crosses itself"
        elif ring.is_ccw:
            yield f"{piece.name} runs the wrong way round"
        else:
            size, ours = Polygon(places).area, -area(piece.seam_line)
            if abs(size - ours) > 1e-3 * ours:
                yield f"{piece.name} has {ours:.0f} mm2, its polygon {size:.0f}"


def steps_follow(drawing: Drawing) -> Iterator[str]:
    """Every step has a name of its own and needs only what a hand already has: steps before it."""
    given = {f"{piece.name}.centre" for piece in drawing.garment.pieces}
    known: set[str] = set()
    for step in drawing.garment.steps:
        if step.kind is StepKind.SECTION:
            continue
        if step.label in known:
            yield f"two steps are called {step.label}"
        missing = [need for need in step.needs if need not in known | given]
        if missing:
            yield f"{step.label} needs {', '.join(missing)}, which is not there yet"
        known.add(step.label)


def edges_have_steps(drawing: Drawing) -> Iterator[str]:
    """Every edge of a piece is a line that a step drew."""
    drawn = set(drawing.garment.lines.values())
    for piece in drawing.garment.pieces:
        for edge in piece.edges:
            if edge.path not in drawn and edge.path.reversed() not in drawn:
                yield f"no step drew {piece.name}.{edge.name}"


CHECKS: tuple[Callable[[Drawing], Iterator[str]], ...] = (
    closed,
    sewn_equal,
    notches_meet,
    hoods_and_pockets,
    joins_run_on,
    folds_square,
    simple,
    bends_as_meant,
    girths_as_taped,
    sleeve_as_long_as_said,
    steps_follow,
    edges_have_steps,
)
