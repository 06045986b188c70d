"""Which way lines bend: neckline, hem, armhole and cap."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from tapeline.geometry import Path
from tapeline.pattern import Edge
from tests.properties.cuts_in_one import cut_in_one, cut_in_one_bends
from tests.properties.drafts import Drawing, size
from tests.properties.girths import sleeved
from tests.properties.limits import UNSEEN
from tests.properties.measuring import bends, turnings
from tests.properties.raglans import (
    raglan,
    raglan_bends,
)

__all__ = ["bends_as_meant"]

STRAIGHT = 2e-4
"""1/mm: a radius of 5 m and more is straight to the eye and to the shears."""
DYING_OUT = math.radians(2)
"""At the armhole point the bend of the upper part still dies out; and so much, over the 4 cm before the underarm, is
two tenths of a millimetre off straight, which a bust that is wider than the hip or a correction may give."""


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
