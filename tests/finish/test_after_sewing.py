"""Pressed and turned up, every layer ends on the one beneath: the invented top, and shapes by chance."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.finish import FinishChoices, FinishedPiece, finish
from tapeline.finish.cut_line import cut_line
from tapeline.geometry import Path, Point, Rigid
from tapeline.pattern import Join
from tests.finish.polygons import beyond, moved, polygon
from tests.finish.shapes import TITLE, straight, top

CLOSE_MM = 0.05
"""Half a pencil line."""


def folded_over(path: Path) -> Rigid:
    """Folding along the straight line from the start to the end of a path."""
    way = path.end - path.start
    return Rigid.laying(path.start, way, path.start, way, turned_over=True)


def ends_of_allowance(outline: Path, seam: Path, allowance: float) -> tuple[list[Point], list[Point]]:
    """Places on the cut line beyond a straight seam line, short of its allowance: at its start, at its end."""
    way = (seam.end - seam.start).unit
    every = [
        a.toward(b, step / count)
        for a, b in pairwise(outline.flattened(0.001))
        for count in [math.ceil(a.distance_to(b))]
        for step in range(count)
    ]
    found = [p for p in every if 0.01 < (p - seam.start).dot(way.left) < allowance - 0.001]
    middle = seam.at(seam.length / 2)
    at_start = [p for p in found if (p - middle).dot(way) < 0 and p.distance_to(seam.start) < 100]
    at_end = [p for p in found if (p - middle).dot(way) > 0 and p.distance_to(seam.end) < 100]
    return at_start, at_end


def check_layers_meet(outline: Path, seam: Path, allowance: float) -> None:
    """The allowance folded back along its seam lies on the piece, and its ends on the piece's own cut line."""
    over = folded_over(seam)
    whole = polygon(outline)
    back = moved(beyond(whole, seam, 200.0), over)
    assert back.area > 0.8 * allowance * seam.length
    assert back.difference(whole.buffer(CLOSE_MM)).area < 1e-6
    for places in ends_of_allowance(outline, seam, allowance):
        assert places
        assert max(outline.distance_to(over.point(p)) for p in places) < CLOSE_MM


@pytest.fixture(scope="module")
def finished() -> dict[str, FinishedPiece]:
    """The invented top with different allowances."""
    choices = FinishChoices(by_name={"neckline": 6, "armhole": 8, "shoulder": 15}, hem_mm=30)
    return {f.piece.name: f for f in finish(top(), choices, TITLE).pieces}


@pytest.mark.parametrize("name", ["front", "back"])
def test_the_shoulder_allowance_ends_on_neckline_and_armhole(name: str, finished: dict[str, FinishedPiece]) -> None:
    """Pressed open, both ends of the shoulder's allowance coincide with the cut lines that cross it."""
    piece = finished[name]
    check_layers_meet(piece.cut_line, piece.piece.edge("shoulder").path, 15)


@pytest.mark.parametrize("name", ["front", "back"])
def test_the_side_allowance_ends_on_the_armhole(name: str, finished: dict[str, FinishedPiece]) -> None:
    """At the armhole the side's allowance, pressed open, ends on the armhole's cut line."""
    piece = finished[name]
    side = piece.piece.edge("side").path
    over = folded_over(side)
    at_armhole, _ = ends_of_allowance(piece.cut_line, side, 10)
    assert max(piece.cut_line.distance_to(over.point(p)) for p in at_armhole) < CLOSE_MM


def test_the_sleeve_hem_turned_up_lies_on_the_sleeve(finished: dict[str, FinishedPiece]) -> None:
    """The hem of a tapering sleeve, turned up, lies on the sleeve and ends on its cut line."""
    piece = finished["sleeve"]
    check_layers_meet(piece.cut_line, piece.piece.edge("hem").path, 30)


def test_the_sleeve_underarm_ends_on_the_cap(finished: dict[str, FinishedPiece]) -> None:
    """Where the underarm meets the cap, its allowance pressed open ends on the cap's cut line."""
    piece = finished["sleeve"]
    underarm = piece.piece.edge("underarm_front").path
    at_cap, _ = ends_of_allowance(piece.cut_line, underarm, 10)
    assert at_cap
    assert max(piece.cut_line.distance_to(folded_over(underarm).point(p)) for p in at_cap) < CLOSE_MM


def test_on_the_fold_the_cut_line_is_the_fold(finished: dict[str, FinishedPiece]) -> None:
    """Unfolded, a piece on the fold has no step: nothing is beyond the fold, and neckline and hem meet it."""
    for name in ("front", "back"):
        outline = finished[name].cut_line
        assert min(p.x for p in outline.flattened()) == pytest.approx(0, abs=1e-9)
        on_fold = [p.y for p in outline.knots if abs(p.x) < 1e-9]
        fold = finished[name].piece.edge("centre").path
        assert max(on_fold) == pytest.approx(fold.end.y + 6, abs=0.01)
        assert min(on_fold) == pytest.approx(fold.start.y - 30, abs=0.01)


slants = st.floats(-40, 40)
"""Degrees by which a side leans from square to its hem or shoulder."""


@given(slants, slants, st.floats(3, 20), st.floats(3, 20), st.floats(5, 40))
def test_any_hem_turned_up_lies_on_the_piece(one: float, other: float, a: float, b: float, hem: float) -> None:
    """Whatever way the sides lean, the turned-up hem ends on the cut lines of the sides."""
    lean_a, lean_b = (200 * math.tan(math.radians(d)) for d in (one, other))
    piece = straight((-lean_a, 200), (400 + lean_b, 200), (400, 0), (0, 0), hems="c")
    outline = cut_line(piece, {"a": 10, "b": b, "c": hem, "d": a})
    check_layers_meet(outline, piece.edge("c").path, hem)


@given(slants, slants, st.floats(3, 20), st.floats(3, 20), st.floats(3, 20))
def test_any_seam_in_joins_ends_on_the_lines_that_cross_it(
    one: float, other: float, a: float, b: float, seam: float
) -> None:
    """Whatever way neckline and armhole meet the shoulder, its allowance pressed open ends on their cut lines."""
    lean_a, lean_b = (200 * math.tan(math.radians(d)) for d in (one, other))
    piece = straight((lean_a, 0), (0, 200), (400, 200), (400 - lean_b, 0))
    joins = [
        Join("neckline", "shoulder", (("shape", "a", "b"), ("other", "a", "b"))),
        Join("armhole", "shoulder", (("shape", "c", "b"), ("other", "c", "b"))),
    ]
    outline = cut_line(piece, {"a": a, "b": seam, "c": b, "d": 10}, joins)
    check_layers_meet(outline, piece.edge("b").path, seam)
