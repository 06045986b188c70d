"""The nearest place of a curve, and where lines first meet: against many places tried one after another."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from tapeline.geometry import Cubic, Line, Path, Point
from tapeline.geometry.crossing import crossings, first_crossing, nearest_crossing
from tapeline.geometry.fair_line import _Span

PLACES = st.builds(Point, st.floats(-200, 200), st.floats(-200, 200))
CURVES = st.builds(Cubic, PLACES, PLACES, PLACES, PLACES)
TRIED = 2000


def tried(curve: Cubic, point: Point) -> float:
    """The least distance of so many places of the curve, mm."""
    t = np.linspace(0, 1, TRIED + 1)[:, None]
    p, q, r, s = (np.array([(c.x, c.y)]) for c in curve.control_points)
    places = (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t * t * r + t**3 * s
    return float(np.hypot(places[:, 0] - point.x, places[:, 1] - point.y).min())


def hull(curve: Cubic) -> float:
    """No shorter than the curve, mm."""
    corners = curve.control_points
    return sum(a.distance_to(b) for a, b in pairwise(corners))


@given(CURVES, PLACES)
def test_no_place_that_is_tried_is_nearer(curve: Cubic, point: Point) -> None:
    """What is found is on the curve, and nothing on it is nearer than that."""
    t, far = curve.nearest(point)
    assert 0 <= t <= 1
    assert math.isclose(curve.at(t).distance_to(point), far, abs_tol=1e-9)
    least = tried(curve, point)
    # Between two places that are tried the curve goes no further than three times its hull over their number.
    assert least - 3 * hull(curve) / TRIED <= far <= least + 1e-9


@given(CURVES, st.floats(0, 1))
def test_a_place_on_the_curve_is_found(curve: Cubic, t: float) -> None:
    """A place of the curve is no distance from it, however the curve crosses itself."""
    assert curve.nearest(curve.at(t))[1] < 1e-6


@given(st.lists(PLACES, min_size=3, max_size=6, unique=True), PLACES)
def test_a_path_is_as_near_as_its_nearest_segment(corners: list[Point], point: Point) -> None:
    """Segments that are passed over because their box is further away would not have been nearer."""
    segments = [Cubic(a, a.toward(b, 0.3), a.toward(b, 0.6), b) for a, b in pairwise(corners)]
    path = Path(tuple(segments))
    assert path.distance_to(point) == min(segment.nearest(point)[1] for segment in segments)


@given(CURVES, CURVES)
def test_the_first_crossing_is_the_first_of_all(one: Cubic, other: Cubic) -> None:
    """Walking as far as the first crossing finds what looking for all of them finds first."""
    path, met = Path((one,)), crossings(Path((one,)), Path((other,)))
    first = first_crossing(path.segments, Path((other,)))
    assert (first is None) == (not met)
    if first is not None:
        walked, beside = first
        assert math.isclose(Path(tuple(walked)).length, met[0][0], abs_tol=1e-6)
        assert any(math.isclose(beside, there, abs_tol=1e-5) for here, there in met if here - met[0][0] < 1e-5)


@given(CURVES, PLACES, PLACES)
def test_the_nearest_crossing_is_the_first_along_the_line(curve: Cubic, start: Point, end: Point) -> None:
    """A straight line meets a curve first where the list of their crossings begins."""
    if start.distance_to(end) < 1:
        return
    line = Line(start, end)
    met = crossings(Path((line,)), Path((curve,)))
    if met:
        assert math.isclose(nearest_crossing(line, Path((curve,))), met[0][0], abs_tol=1e-6)


@given(st.floats(5, 300), st.floats(-3, 3), st.floats(-1, 1), st.floats(-1, 1))
def test_slopes_of_curvature_are_those_that_trying_shows(far: float, along: float, leave: float, arrive: float) -> None:
    """How curvature grows with a direction: the difference quotient, over a millionth of a radian to either side."""
    span, step = _Span(far, along), 1e-6
    start, end = along + leave, along + arrive
    _, _, *slopes = span.end_curvatures(start, end)
    shown = []
    for knot in range(2):
        for a, b in ((step, 0), (0, step)):
            more, less = span.end_curvatures(start + a, end + b), span.end_curvatures(start - a, end - b)
            shown.append((more[knot] - less[knot]) / (2 * step))
    assert np.allclose(slopes, shown, rtol=1e-5, atol=1e-7)
