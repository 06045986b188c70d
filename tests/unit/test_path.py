"""Paths and regions against other ways of measuring them."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from tapeline.geometry import Cubic, Line, Path, Point, Rigid, Vector, area, crosses_itself, fair_line
from tapeline.measures import Figure
from tests.properties.drafts import draw
from tests.properties.measuring import bends, dense, length, outline, widths_at
from tests.wearers import random_wearers

ARC = fair_line([Point(0, 0), Point(60, 45), Point(150, 60)], Vector(0.3, 1), Vector(1, 0))
MIXED = Path((Line(Point(-80, -10), Point(0, 0)), *ARC.segments, Line(Point(150, 60), Point(200, 20))))
SPOT = st.builds(Point, st.floats(-200, 200), st.floats(-200, 200))
SHARE = st.floats(0, 1)


@st.composite
def curves(draw_: st.DrawFn) -> Cubic:
    """A cubic that goes somewhere."""
    points = [draw_(SPOT) for _ in range(4)]
    assume(all(a.distance_to(b) > 1 for a, b in pairwise(points)))
    return Cubic(*points)


@given(curves())
def test_the_length_of_any_curve_is_what_its_chords_say(curve: Cubic) -> None:
    """Whatever the curve, cusps and loops included, its length is within a hundredth of that of 6,000 chords."""
    chords = np.diff(dense(Path((curve,)), 6000), axis=0)
    assert curve.length == pytest.approx(float(np.hypot(*chords.T).sum()), abs=1e-2)


@given(SHARE)
def test_a_place_along_a_path_is_as_far_along_as_asked(share: float) -> None:
    """`at`, `part` and `length_to` agree about lengths."""
    along = share * MIXED.length
    place = MIXED.at(along)
    assert MIXED.length_to(place) == pytest.approx(along, abs=1e-4)
    assert MIXED.distance_to(place) < 1e-6
    if 0.01 < share < 0.99:
        assert length(MIXED.part(0, along)) == pytest.approx(along, abs=1e-5)
        assert MIXED.part(along, MIXED.length).start.distance_to(place) < 1e-5


@given(SHARE, SHARE)
def test_a_part_has_the_length_between_its_ends(one: float, two: float) -> None:
    """A stretch between two lengths is as long as their difference."""
    low, high = sorted((one * MIXED.length, two * MIXED.length))
    assume(high - low > 0.1)
    assert MIXED.part(low, high).length == pytest.approx(high - low, abs=1e-5)


@given(SPOT)
def test_the_nearest_place_is_the_nearest_of_many(spot: Point) -> None:
    """No sample of the path is nearer to a point than `distance_to` says."""
    places = dense(MIXED, 400)
    nearest = float(np.hypot(places[:, 0] - spot.x, places[:, 1] - spot.y).min())
    assert MIXED.distance_to(spot) <= nearest + 1e-6
    assert MIXED.distance_to(spot) == pytest.approx(nearest, abs=0.3)


@given(st.floats(-30, 80))
def test_crossings_are_where_another_solver_finds_them(level: float) -> None:
    """A level line is crossed where cubic equations say, and the polygon agrees on how often."""
    assume(all(abs(level - knot.y) > 0.05 for knot in MIXED.knots))
    ours = [p.x for p in MIXED.crossings(Line(Point(0, level), Point(1, level)))]
    theirs = sorted(widths_at(MIXED, level))
    assert sorted(ours) == pytest.approx(theirs, abs=1e-6)
    heights = dense(MIXED, 2000)[:, 1] - level
    assert len(ours) == int(np.count_nonzero(np.diff(np.sign(heights))))


@pytest.mark.parametrize("distance", [-12.0, -5.0, 5.0, 10.0])
def test_a_line_beside_another_keeps_its_distance(distance: float) -> None:
    """Every place of an offset lies at its distance from the line, to two hundredths of a mm, as a buffer's does."""
    beside = ARC.offset_left(distance)
    places = dense(beside, 40)
    line = LineString(dense(ARC, 2000))
    off = [abs(line.distance(LineString([place, place])) - abs(distance)) for place in places[1:-1]]
    assert max(off) < 0.02
    side = "left" if distance > 0 else "right"
    buffer = line.buffer(abs(distance), quad_segs=64, single_sided=False)
    inner = LineString(places)
    assert buffer.buffer(0.05).contains(inner), f"the offset runs outside the {side} buffer"


def test_the_line_beside_a_circle_is_a_circle() -> None:
    """An arc of radius 100 mm has beside it arcs of 90 and 110, and lengths in that proportion."""
    points = [Point(100 * math.cos(a), 100 * math.sin(a)) for a in np.linspace(0, math.pi / 2, 5)]
    arc = fair_line(points, Vector(0, 1), Vector(-1, 0))
    for distance in (10, -10):
        radii = np.hypot(*dense(arc.offset_left(distance)).T)
        assert np.abs(radii - (100 - distance)).max() < 0.02
        assert arc.offset_left(distance).length == pytest.approx((100 - distance) * math.pi / 2, abs=0.05)


def test_areas_are_those_of_fine_polygons() -> None:
    """The area by Green's theorem is that of a polygon with hundreds of corners, to a hundred-thousandth."""
    for wearer in random_wearers(Figure.WOMAN, 5, seed=11):
        for piece in draw(wearer).pieces:
            polygon = Polygon(outline(piece.seam_line, 400))
            assert -area(piece.seam_line) == pytest.approx(polygon.area, rel=1e-5)


@given(st.lists(SPOT, min_size=3, max_size=7, unique=True))
def test_outlines_that_cross_are_told_as_the_polygon_tells(corners: list[Point]) -> None:
    """A closed path of straight lines crosses itself exactly when its polygon is not valid."""
    assume(all(a.distance_to(b) > 1 for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)))
    polygon = Polygon([(p.x, p.y) for p in corners])
    # Corners that lie on a side within rounding are decided either way.
    rough = (
        min(
            LineString([(a.x, a.y), (b.x, b.y)]).distance(LineString([(c.x, c.y), (c.x, c.y)]))
            for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)
            for c in corners
            if c not in (a, b)
        )
        if len(corners) > 3
        else 1.0
    )
    assume(rough > 1e-3)
    assert crosses_itself(Path.through(*corners, corners[0])) == (not polygon.is_valid)


@given(st.floats(-math.pi, math.pi), SPOT, st.floats(-300, 300), st.floats(-300, 300))
def test_moves_keep_lengths_bends_and_areas(angle: float, about: Point, x: float, y: float) -> None:
    """A turn and a shift change no length and no bend; their undoing brings every point back."""
    move = Rigid.turn(angle, about).then(Rigid.shift(Vector(x, y)))
    moved = MIXED.moved(move)
    assert moved.length == pytest.approx(MIXED.length, abs=1e-7)
    assert np.abs(bends(moved) - bends(MIXED)).max() < 1e-9
    assert moved.moved(move.back).start.distance_to(MIXED.start) < 1e-9
    over = Rigid(-1, 0, 0, 1, 0, 0)
    assert over.turns_over
    assert np.abs(bends(MIXED.moved(over)) + bends(MIXED)).max() < 1e-12


def test_flattening_stays_within_its_tolerance() -> None:
    """No place of the curve is farther from the flattened line than was asked."""
    for tolerance in (0.5, 0.01):
        line = LineString([(p.x, p.y) for p in MIXED.flattened(tolerance)])
        places = dense(MIXED, 500)
        assert max(line.distance(LineString([q, q])) for q in places) <= tolerance


@pytest.mark.parametrize("share", [0.0, 0.05, 0.3, 0.5, 0.77, 1.0])
def test_the_nearest_place_is_found_on_a_curve_that_does_not_bend(share: float) -> None:
    """A curve between two points that face each other is straight; the foot of a point beside it is found too."""
    curve = fair_line([Point(260, -650), Point(0, -650)], leave=Vector(-1, 0), arrive=Vector(-1, 0))
    foot = Point(260, -650).toward(Point(0, -650), share)
    assert curve.distance_to(foot + Vector(0, 3)) == pytest.approx(3, abs=1e-6)
    assert curve.length_to(foot) == pytest.approx(260 * share, abs=1e-6)


def test_an_outline_that_is_closed_but_for_rounding_does_not_cross_itself() -> None:
    """A gap of a rounding error between end and beginning is none; one that is there to be seen closes straight."""
    corners = [Point(0, 0), Point(0, 100), Point(60, 100), Point(60, 0), Point(3e-14, -3e-14)]
    assert not crosses_itself(Path.through(*corners))
    assert crosses_itself(Path.through(Point(0, 0), Point(10, 10), Point(10, 0), Point(0, 10), Point(1e-14, 0)))
