"""What is measured round and along: girths as taped, sleeves as long as said."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tapeline.blocks.looseness import LOOSENESS
from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.docket.choices import WORDS
from tapeline.pattern import Garment
from tapeline.styles import STYLES
from tests.properties.cuts_in_one import cut_in_one, own_sleeve_as_long_as_said, round_own_sleeve
from tests.properties.drafts import Drawing, size
from tests.properties.limits import SEWN_MM, SOLVED_MM
from tests.properties.measuring import dense, ends, length, widths_at
from tests.properties.raglans import (
    raglan,
    raglan_as_long_as_said,
    round_half_sleeve,
)

__all__ = ["girths_as_taped", "sleeve_as_long_as_said", "sleeved"]

SLEEVE_WORDS = WORDS[SleeveLength]


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


def sleeved(garment: Garment) -> bool:
    """Whether it has a sleeve of one piece, with a cap."""
    return any(piece.name == "sleeve" for piece in garment.pieces)
