"""What holds of a raglan: its seam, its notches, and its two-piece sleeve."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tapeline.pattern import Garment
from tapeline.truing.waves import wave_problems
from tests.properties.drafts import Drawing, size
from tests.properties.limits import SEWN_MM, SOLVED_MM, UNSEEN
from tests.properties.measuring import length, turnings, widths_at

__all__ = ["raglan", "raglan_as_long_as_said", "raglan_bends", "raglan_notches", "round_half_sleeve"]

RUNS_IN = math.radians(5)
"""A raglan turns from round to hollow near its notch, not at it."""


def raglan(garment: Garment) -> bool:
    """Whether its sleeves reach the neckline."""
    return any(piece.name == "front_sleeve" for piece in garment.pieces)


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


def raglan_bends(drawing: Drawing, half: str) -> Iterator[str]:
    """A raglan seam is round above and hollow below, or truing says it; what goes over the arm bends one way."""
    told = {problem.where for problem in wave_problems(drawing.garment) if problem.code == "raglan-wave"}
    body, sleeve = (drawing.garment.piece(name) for name in (half, f"{half}_sleeve"))
    line = body.edge("raglan").path
    notch = drawing.garment.points[f"{half}.raglan_notch"]
    knot = min(range(len(line.knots)), key=lambda k: line.knots[k].distance_to(notch))
    upper, lower = line.split_at_knot(knot)
    back_turn = math.degrees(max(turnings(upper)[0], turnings(lower)[1]))
    if back_turn > math.degrees(RUNS_IN) and f"{half}.raglan" not in told:
        yield f"the {half} raglan turns back by {back_turn:.2f} degrees on the body"
    back_turn = math.degrees(min(turnings(sleeve.edge("raglan").path)))
    if back_turn > math.degrees(RUNS_IN) and f"{half}.raglan" not in told:
        yield f"the {half} raglan turns back by {back_turn:.2f} degrees on the sleeve"
    for name in ("overarm", "hem", "neckline"):
        if min(turnings(sleeve.edge(name).path)) > UNSEEN and not drawing.wearer.given("shoulder_slope"):
            yield f"the {name} of the {half} sleeve has a wave"


def round_half_sleeve(drawing: Drawing, half: str, girth: str) -> float:
    """Across half a raglan sleeve at the underarm, or along its hem."""
    piece = drawing.garment.piece(f"{half}_sleeve")
    if girth == "wrist":
        return length(piece.edge("hem").path)
    at = piece.edge("underarm").path.end
    return max(widths_at(piece.edge("overarm").path, at.y)) - at.x


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
