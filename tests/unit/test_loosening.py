"""Loosening a block is the same as cutting it through shoulder and armhole and spreading it (the classroom proof)."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.draft import Draft
from tapeline.geometry import Vector
from tapeline.lengths import cm
from tapeline.measures import size_wearer
from tapeline.pattern import Garment
from tapeline.styles import STYLES
from tapeline.styles.block import BlockChoices

WEARER = size_wearer("92")


def block(looseness: Looseness) -> Garment:
    """The wearer's block."""
    return STYLES["block"].page(Draft(WEARER, {}), BlockChoices(looseness=looseness), surveyed=True)


CLOSE = block(LOOSENESS["close"])


@given(st.floats(0, 6), st.floats(0, 6), st.floats(0, 2), st.floats(0, 10))
def test_points_move_as_the_spread_paper_does(side: float, drop: float, shoulder: float, hem: float) -> None:
    """The underarm goes out and down, the width lines out, the shoulder tip out along its seam; the neck stays.

    Cut from the shoulder to the hem and spread by the shoulder's ease, everything beyond the cut moves out by it; cut
    again from the armhole to the hem and spread by the rest, the underarm and the side move out by the side's ease.
    """
    loose = block(Looseness(cm(side), cm(drop), cm(shoulder), cm(hem), cm(0)))
    for half in ("back", "front"):
        before, after = CLOSE.points, loose.points

        def moved(name: str, half: str = half) -> Vector:
            return loose.points[f"{half}.{name}"] - CLOSE.points[f"{half}.{name}"]

        width = "back_width" if half == "back" else "chest_width"
        assert near(moved("underarm"), 10 * side, -10 * drop)
        assert near(moved("side_hip"), 10 * side, 0)
        assert near(moved(f"{width}_corner"), 10 * shoulder, -10 * drop)
        assert near(moved("hem_centre"), 0, -10 * hem)
        for still in (f"{half}_neck_point", "chest_level" if drop == 0 else "waist_level", "hip_level"):
            assert near(moved(still), 0, 0)
        tip = moved(f"{half}_shoulder_tip")
        assert tip.length == pytest.approx(10 * shoulder, abs=1e-9)
        seam = before[f"{half}.{half}_shoulder_tip"] - before[f"{half}.{half}_neck_point"]
        assert abs(seam.cross(tip)) < 1e-6 * seam.length, "along the shoulder"
        assert CLOSE.piece(half).edge("neckline").path == loose.piece(half).edge("neckline").path
        assert after[f"{half}.{half}_armhole_point"].x == pytest.approx(after[f"{half}.{width}_corner"].x)


def near(move: Vector, x: float, y: float) -> bool:
    """Whether a move is so much out and up, mm."""
    return abs(move.x - x) < 1e-9 and abs(move.y - y) < 1e-9


def test_the_scoop_keeps_the_front_closer_in() -> None:
    """The front's chest-width line stays as much closer in as was chosen; nothing of the back moves."""
    plain, scooped = (block(Looseness(cm(3), cm(3), cm(1), cm(0), cm(scoop))) for scoop in (0, 1.5))
    corner = "front.chest_width_corner"
    assert plain.points[corner].x - scooped.points[corner].x == pytest.approx(15)
    assert plain.piece("back") == scooped.piece("back")


def test_an_armhole_that_is_lower_is_longer_and_so_is_the_sleeve_wider() -> None:
    """Each step of looseness gives a longer armhole, and a sleeve that is wider by more than half of that."""
    armholes, widths = [], []
    for looseness in LOOSENESS.values():
        sizes = {size.name: size.length.mm for size in block(looseness).sizes}
        armholes.append(sizes["armhole"])
        widths.append(sizes["sleeve_width"])
    assert armholes == sorted(armholes)
    for (a0, w0), (a1, w1) in pairwise(zip(armholes, widths, strict=True)):
        assert w1 - w0 > (a1 - a0) / 2
