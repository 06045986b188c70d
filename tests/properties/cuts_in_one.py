"""What holds of a top that is cut in one with its sleeves."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tapeline.geometry import Point
from tapeline.pattern import Garment
from tests.properties.drafts import Drawing, size
from tests.properties.limits import SEWN_MM, UNSEEN
from tests.properties.measuring import dense, length, turnings

__all__ = ["cut_in_one", "cut_in_one_bends", "own_sleeve_as_long_as_said", "round_own_sleeve"]

EVENED = math.radians(4)
"""The front underarm of a sleeve cut in one is made as long as the back's, which turns the end of its hem a little."""


def cut_in_one(garment: Garment) -> bool:
    """Whether its sleeves are cut in one with it."""
    return any(edge.name == "sleeve_hem" for edge in garment.piece("back").edges)


def cut_in_one_bends(drawing: Drawing, half: str) -> Iterator[str]:
    """Over the arm and under it the line bends one way; so does the sleeve's hem."""
    piece = drawing.garment.piece(half)
    steep = drawing.wearer.given("shoulder_slope")
    for name in ("overarm", "underarm", "sleeve_hem"):
        seen = EVENED if (half, name) == ("front", "sleeve_hem") else UNSEEN
        if min(turnings(piece.edge(name).path)) > seen and not steep:
            yield f"the {name} of the {half} has a wave of {math.degrees(min(turnings(piece.edge(name).path))):.2f}"


def round_own_sleeve(drawing: Drawing, half: str, girth: str) -> float:
    """Half round a sleeve that is cut in one: along its hem, or from the middle of the underarm to the overarm seam."""
    piece, points = drawing.garment.piece(half), drawing.garment.points
    if girth == "wrist":
        return length(piece.edge("sleeve_hem").path)
    middle = points.get(f"{half}.underarm_middle") or points[f"{half}.underarm_sleeve"]
    return min(middle.distance_to(Point(*place)) for place in dense(piece.edge("overarm").path, 4001))


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
