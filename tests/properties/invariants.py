"""What holds of every garment that is drafted, measured without `tapeline.truing`; each check yields what is wrong.

The limits are those that the project states: a tenth of a millimetre on a seam, one degree where a line crosses a
seam, a tenth of a degree at a fold.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from itertools import accumulate, pairwise

import numpy as np
from shapely import LinearRing, Polygon

from tapeline.blocks.looseness import LOOSENESS
from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.docket.choices import WORDS
from tapeline.geometry import Path, Point, area
from tapeline.pattern import Edge, Garment, Piece, Seam, StepKind
from tapeline.styles import STYLES
from tests.properties.drafts import Drawing
from tests.properties.hoods import hood_holds, pocket_holds
from tests.properties.measuring import bends, dense, ends, length, outline, turnings, widths_at

__all__ = ["broken"]

SEWN_MM = 0.1
SOLVED_MM = 1e-6
JOIN = math.radians(1)
FOLD = math.radians(0.1)
STRAIGHT = 2e-4
"""1/mm: a radius of 5 m and more is straight to the eye and to the shears."""
DYING_OUT = math.radians(2)
"""At the armhole point the bend of the upper part still dies out; and so much, over the 4 cm before the underarm, is
two tenths of a millimetre off straight, which a bust that is wider than the hip or a correction may give."""
RUNS_IN = math.radians(5)
"""A raglan turns from round to hollow near its notch, not at it."""
EVENED = math.radians(4)
"""The front underarm of a sleeve cut in one is made as long as the back's, which turns the end of its hem a little."""
UNSEEN = math.radians(0.5)
"""A turn so small cannot be seen on a neckline."""
SLEEVE_WORDS = WORDS[SleeveLength]


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


def raglan_notches(drawing: Drawing, kinds: dict[str, str]) -> Iterator[str]:
    """A raglan's notches lie equally far from the neckline on body and sleeve; the overarm's at the shoulder point."""
    garment = drawing.garment
    for half, kind in kinds.items():
        (body,), (sleeve,) = (garment.piece(name).notches_on("raglan") for name in (half, f"{half}_sleeve"))
        if [str(n.kind) for n in (body, sleeve)] != [kind, kind]:
            yield f"the {half} raglan is not notched {kind} on both sides"
        along = length(garment.piece(f"{half}_sleeve").edge("raglan").path) - sleeve.at_mm
        if abs(along - body.at_mm) > SOLVED_MM:
            yield f"the {half} raglan's notches are {along - body.at_mm:.5f} mm apart"
        (over,) = garment.piece(f"{half}_sleeve").notches_on("overarm")
        points = garment.points
        tip = points[f"{half}.{half}_shoulder_tip"].distance_to(points[f"{half}.neckline_shoulder"])
        if abs(over.at_mm - tip) > SOLVED_MM:
            yield f"the {half} overarm is notched {over.at_mm - tip:.5f} mm from the shoulder point"


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


def bends_as_meant(drawing: Drawing) -> Iterator[str]:
    """Neckline, hem and lower armhole bend one way, except where the method means a turn."""
    garment = drawing.garment
    told = drawing.said & {"shoulder-steep", "shoulder-flat"}
    for half in ("front", "back"):
        piece = garment.piece(half)
        # A taped shoulder may be far steeper than the rule's; from about 35 degrees the neckline has to give way.
        wave = min(turnings(piece.edge("neckline").path)) > UNSEEN
        bends_back = changes(piece.edge("neckline").path) > 0 and not drawing.wearer.given("shoulder_slope")
        if (wave or bends_back) and "shoulder-flat" not in told:
            yield f"the {half} neckline has a wave"
        names = {s.name for s in garment.sizes}
        dips = half == "front" and (size(drawing, "front_drop") > 0 or "full_front_drop" in names)
        meant = 1 if dips or (half == "back" and "sway_back" in names) else 0
        if changes(piece.edge("hem").path) > meant:
            yield f"the {half} hem turns {changes(piece.edge('hem').path)} times"
        own = raglan_bends if raglan(garment) else cut_in_one_bends if cut_in_one(garment) else None
        if own is not None:
            yield from own(drawing, half)
            continue
        arm = piece.edge("armhole")
        knot = hollow_knot(drawing, half, arm)
        # Clockwise, from the shoulder down, the armhole bends to the left. What turns back is said where it must be.
        back_turn = math.degrees(turnings(Path(arm.path.segments[knot:]))[1])
        if back_turn > math.degrees(DYING_OUT) and not told and "bust-wants-dart" not in drawing.said:
            yield f"the {half} armhole turns back by {back_turn:.2f} degrees below its hollow"
        back_turn = math.degrees(turnings(Path(arm.path.segments[knot - 1 :]))[1])
        if (
            back_turn > math.degrees(DYING_OUT)
            and not told
            and not drawing.said & {"bust-wants-dart", "shoulder-inside-back"}
        ):
            yield f"the {half} armhole turns back by {back_turn:.2f} degrees below its point"
    if not sleeved(garment):
        return
    sleeve = garment.piece("sleeve")
    if changes(sleeve.edge("hem").path) > 0:
        yield "the sleeve's hem has a wave"
    cap = sleeve.edge("cap_back").path.joined(sleeve.edge("cap_front").path)
    if changes(cap) != 2:
        yield f"the cap line turns {changes(cap)} times: hollow, round, hollow is meant"


def raglan_bends(drawing: Drawing, half: str) -> Iterator[str]:
    """A raglan seam is round above and hollow below; what goes over the arm bends one way, the neckline too."""
    body, sleeve = (drawing.garment.piece(name) for name in (half, f"{half}_sleeve"))
    line = body.edge("raglan").path
    notch = drawing.garment.points[f"{half}.raglan_notch"]
    knot = min(range(len(line.knots)), key=lambda k: line.knots[k].distance_to(notch))
    upper, lower = line.split_at_knot(knot)
    back_turn = math.degrees(max(turnings(upper)[0], turnings(lower)[1]))
    if back_turn > math.degrees(RUNS_IN):
        yield f"the {half} raglan turns back by {back_turn:.2f} degrees on the body"
    back_turn = math.degrees(min(turnings(sleeve.edge("raglan").path)))
    if back_turn > math.degrees(RUNS_IN):
        yield f"the {half} raglan turns back by {back_turn:.2f} degrees on the sleeve"
    for name in ("overarm", "hem", "neckline"):
        if min(turnings(sleeve.edge(name).path)) > UNSEEN and not drawing.wearer.given("shoulder_slope"):
            yield f"the {name} of the {half} sleeve has a wave"


def sleeved(garment: Garment) -> bool:
    """Whether it has a sleeve of one piece, with a cap."""
    return any(piece.name == "sleeve" for piece in garment.pieces)


def cut_in_one_bends(drawing: Drawing, half: str) -> Iterator[str]:
    """Over the arm and under it the line bends one way; so does the sleeve's hem."""
    piece = drawing.garment.piece(half)
    steep = drawing.wearer.given("shoulder_slope")
    for name in ("overarm", "underarm", "sleeve_hem"):
        seen = EVENED if (half, name) == ("front", "sleeve_hem") else UNSEEN
        if min(turnings(piece.edge(name).path)) > seen and not steep:
            yield f"the {name} of the {half} has a wave of {math.degrees(min(turnings(piece.edge(name).path))):.2f}"


def cut_in_one(garment: Garment) -> bool:
    """Whether its sleeves are cut in one with it."""
    return any(edge.name == "sleeve_hem" for edge in garment.piece("back").edges)


def raglan(garment: Garment) -> bool:
    """Whether its sleeves reach the neckline."""
    return any(piece.name == "front_sleeve" for piece in garment.pieces)


def hollow_knot(drawing: Drawing, half: str, armhole: Edge) -> int:
    """The number of the knot that is the armhole's hollow."""
    points = drawing.garment.points
    hollow = points.get(f"{half}.armhole_hollow") or points[f"{half}.{half}_armhole_hollow"]
    return min(range(len(armhole.path.knots)), key=lambda k: armhole.path.knots[k].distance_to(hollow))


def changes(path: Path) -> int:
    """How often a line turns from one side to the other; what is as good as straight does not count."""
    bend = bends(path).ravel()
    signs = np.sign(bend[np.abs(bend) > STRAIGHT])
    return int(np.count_nonzero(np.diff(signs)))


def size(drawing: Drawing, name: str) -> float:
    """A size of the garment, mm."""
    return next(s.length.mm for s in drawing.garment.sizes if s.name == name)


def girths_as_taped(drawing: Drawing) -> Iterator[str]:
    """Round chest, waist and hip the garment is the tape and the ease that the maker chose."""
    garment, wearer = drawing.garment, drawing.wearer
    out = 4 * LOOSENESS[drawing.looseness].side.mm
    meant = {"chest": wearer["bust"] + out, "hip": wearer["hip"] + out}
    for girth in garment.girths:
        told = girth.tape.mm + girth.ease.mm
        if girth.name == "chest" and cut_in_one(garment):
            # It is measured below the underarm, where the side has begun to follow the body.
            meant = {**meant, "chest": 4 * size(drawing, "side_quarter")}
        if girth.name in meant and abs(told - meant[girth.name]) > SOLVED_MM:
            yield f"{girth.name} declares {told:.2f} mm, the tape and the looseness make {meant[girth.name]:.2f}"
        if girth.name in ("chest", "waist", "hip"):
            at = "underarm_side" if girth.name == "chest" and cut_in_one(garment) else f"{girth.name}_level"
            found = sum(2 * across(drawing, half, at) for half in ("front", "back"))
        elif cut_in_one(garment):
            found = sum(round_own_sleeve(drawing, half, girth.name) for half in ("front", "back"))
        elif raglan(garment):
            found = sum(round_half_sleeve(drawing, half, girth.name) for half in ("front", "back"))
        elif girth.name == "upper_arm":
            points = garment.points
            found = points["sleeve.front_underarm"].x - points["sleeve.back_underarm"].x
        else:
            found = length(garment.piece("sleeve").edge("hem").path)
        if abs(found - told) > SEWN_MM:
            yield f"round the {girth.name} are {found:.2f} mm, declared are {told:.2f}"


def round_own_sleeve(drawing: Drawing, half: str, girth: str) -> float:
    """Half round a sleeve that is cut in one: along its hem, or from the middle of the underarm to the overarm seam."""
    piece, points = drawing.garment.piece(half), drawing.garment.points
    if girth == "wrist":
        return length(piece.edge("sleeve_hem").path)
    middle = points.get(f"{half}.underarm_middle") or points[f"{half}.underarm_sleeve"]
    return min(middle.distance_to(Point(*place)) for place in dense(piece.edge("overarm").path, 4001))


def round_half_sleeve(drawing: Drawing, half: str, girth: str) -> float:
    """Across half a raglan sleeve at the underarm, or along its hem."""
    piece = drawing.garment.piece(f"{half}_sleeve")
    if girth == "wrist":
        return length(piece.edge("hem").path)
    at = piece.edge("underarm").path.end
    return max(widths_at(piece.edge("overarm").path, at.y)) - at.x


def across(drawing: Drawing, half: str, level: str) -> float:
    """From the centre line to the side at a level; the side is run on straight where the hem rises above it."""
    y = drawing.garment.points[f"{half}.{level}"].y
    side = drawing.garment.piece(half).edge("side").path
    found = widths_at(side, y)
    if not found:
        way = ends(side)[1]
        found = [side.end.x + way[0] / way[1] * (y - side.end.y)]
    return max(found)


def sleeve_as_long_as_said(drawing: Drawing) -> Iterator[str]:
    """The middle of the sleeve's hem lies as far below the shoulder as is said: the arm, or a third, 4 cm past the cap.

    What a dropped shoulder has taken of the arm is not drawn again, nor what a cuff will make up.
    """
    garment = drawing.garment
    if raglan(garment):
        yield from raglan_as_long_as_said(drawing)
    if cut_in_one(garment):
        yield from own_sleeve_as_long_as_said(drawing)
    if not sleeved(garment):
        return
    crown = garment.points["sleeve.crown"]
    middle = garment.points.get("sleeve.hem_middle", crown)
    hem = garment.piece("sleeve").edge("hem").path
    long = crown.y - min(np.array(dense(hem)), key=lambda place: abs(place[0] - middle.x))[1]
    # A cap that is lowered for a larger arm does not change where the sleeve ends.
    cap = size(drawing, "cap_height")
    points = garment.points
    dropped = (
        points["back.dropped_reach"].distance_to(points["back.back_shoulder_tip"])
        if "back.dropped_reach" in points
        else 0.0
    )
    choices = STYLES[drawing.style].choices()
    share = {"long": 1, "short": 1 / 3}[SLEEVE_WORDS.word_for(choices.sleeve.length) or ""]
    meant = max(drawing.wearer["arm_length"] * share, cap + dropped + 40) - dropped
    meant -= choices.cuff.width.mm if hasattr(choices, "cuff") else 0
    if abs(long - meant) > SEWN_MM:
        yield f"the sleeve is {long:.2f} mm long in the middle, meant are {meant:.2f}"


def own_sleeve_as_long_as_said(drawing: Drawing) -> Iterator[str]:
    """A sleeve that is cut in one is as long from the shoulder point as a set-in one, 4 cm past its underarm."""
    garment = drawing.garment
    meant = max(drawing.wearer["arm_length"] / 3, size(drawing, "underarm_depth") + 40)
    for half in ("front", "back"):
        piece = garment.piece(half)
        (tip,) = piece.notches_on("overarm")
        long = length(piece.edge("overarm").path) - tip.at_mm
        if abs(long - meant) > SEWN_MM:
            yield f"the {half} sleeve is {long:.2f} mm long down the arm, meant are {meant:.2f}"


def raglan_as_long_as_said(drawing: Drawing) -> Iterator[str]:
    """A raglan sleeve is as long from the shoulder point down its overarm seam as a set-in one from its crown."""
    garment = drawing.garment
    meant = max(drawing.wearer["arm_length"] / 3, size(drawing, "cap_height") + 40)
    for half in ("front", "back"):
        piece = garment.piece(f"{half}_sleeve")
        (tip,) = piece.notches_on("overarm")
        long = length(piece.edge("overarm").path) - tip.at_mm
        if abs(long - meant) > SEWN_MM:
            yield f"the {half} sleeve is {long:.2f} mm long down the arm, meant are {meant:.2f}"


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
