"""The fair line: smooth to the second degree, the same whichever way it is drawn, and never at a loss."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tapeline.geometry import Path, Point, Rigid, Vector, fair_line
from tapeline.measures import Figure
from tapeline.problems import InputError
from tests.properties.drafts import draw
from tests.properties.measuring import bends, cubics, dense, ends, length
from tests.wearers import random_wearers

ARMHOLE = [Point(170, -45), Point(165, -130), Point(178, -190), Point(220, -215)]
NECKLINE = [Point(0, -60), Point(52, -38), Point(72, 24), Point(10, 60)]
CAP = [
    Point(-180, -120),
    Point(-130, -95),
    Point(-50, -15),
    Point(0, 0),
    Point(45, -12),
    Point(125, -98),
    Point(170, -120),
]
SHAPES = {"armhole": ARMHOLE, "neckline": NECKLINE, "cap": CAP}
SOMEWHERE = st.floats(-1000, 1000)
UPRIGHT = Vector(0, -1), Vector(1, 0)


def headings(name: str) -> tuple[Vector | None, Vector | None]:
    """Ends as the method draws them."""
    return {
        "armhole": (Vector(-0.28, -0.96), Vector(1, 0)),
        "neckline": (Vector(1, 0), None),
        "cap": (Vector(1, 0), Vector(1, 0)),
    }[name]


def wobbled(points: list[Point], offsets: np.ndarray) -> list[Point]:
    """The same knots, each moved a little."""
    return [Point(p.x + float(dx), p.y + float(dy)) for p, (dx, dy) in zip(points, offsets, strict=True)]


def jump(path: Path) -> float:
    """The largest jump of curvature at a knot, relative to the largest curvature."""
    bend = bends(path, 2)
    return float(np.abs(bend[:-1, 1] - bend[1:, 0]).max() / np.abs(bend).max()) if len(bend) > 1 else 0.0


@pytest.mark.slow
@pytest.mark.parametrize("name", SHAPES)
def test_a_thousand_lines_a_little_off_are_all_drawn(name: str) -> None:
    """Knots moved by up to a centimetre and headings turned by up to ten degrees still give a fair line every time."""
    rng = np.random.default_rng(20)
    leave, arrive = headings(name)
    for _ in range(1000):
        points = wobbled(SHAPES[name], rng.normal(0, 4, (len(SHAPES[name]), 2)).clip(-10, 10))
        turns = rng.uniform(-math.radians(10), math.radians(10), 2)
        path = fair_line(points, leave and leave.turned(float(turns[0])), arrive and arrive.turned(float(turns[1])))
        assert list(path.knots) == points
        assert jump(path) < 1e-4
        straight = sum(a.distance_to(b) for a, b in pairwise(points))
        assert straight <= path.length < 1.5 * straight


@pytest.mark.parametrize("name", SHAPES)
def test_directions_and_curvature_run_on_through_every_knot(name: str) -> None:
    """Nothing changes at once at a knot: neither the direction nor the bend."""
    path = fair_line(SHAPES[name], *headings(name))
    for one, two in pairwise(path.segments):
        assert abs(one.direction(1).turn_to(two.direction(0))) < 1e-9
        assert one.curvature(1) == pytest.approx(two.curvature(0), rel=1e-5, abs=1e-9)
    leave, arrive = headings(name)
    if leave:
        assert abs(path.leaves.turn_to(leave)) < 1e-9
    if arrive:
        assert abs(path.arrives.turn_to(arrive)) < 1e-9


@pytest.mark.parametrize("name", SHAPES)
def test_a_line_drawn_from_its_other_end_is_the_same_line(name: str) -> None:
    """Reversed knots and reversed headings give the reversed line."""
    leave, arrive = headings(name)
    one = fair_line(SHAPES[name], leave, arrive)
    other = fair_line(SHAPES[name][::-1], arrive and -arrive, leave and -leave).reversed()
    assert np.abs(cubics(one) - cubics(other)).max() < 1e-5


@given(SOMEWHERE, SOMEWHERE, st.floats(-math.pi, math.pi), st.booleans(), st.sampled_from(sorted(SHAPES)))
def test_a_line_moves_with_its_paper(x: float, y: float, angle: float, over: bool, name: str) -> None:
    """Shifting, turning and turning over the knots moves the whole line and nothing else."""
    leave, arrive = headings(name)
    move = Rigid.turn(angle).then(Rigid.shift(Vector(x, y)))
    if over:
        move = Rigid(-1, 0, 0, 1, 0, 0).then(move)
    moved = fair_line(
        [move.point(p) for p in SHAPES[name]], leave and move.vector(leave), arrive and move.vector(arrive)
    )
    here = fair_line(SHAPES[name], leave, arrive).moved(move)
    assert np.abs(cubics(moved) - cubics(here)).max() < 1e-5


def test_a_line_keeps_its_shape_at_another_size() -> None:
    """Twice the size, twice the line."""
    one = fair_line(ARMHOLE, *headings("armhole"))
    two = fair_line([Point(2 * p.x, 2 * p.y) for p in ARMHOLE], *headings("armhole"))
    assert np.abs(2 * cubics(one) - cubics(two)).max() < 1e-5


@pytest.mark.parametrize("knots", [3, 5, 9])
def test_points_of_a_circle_give_a_circle(knots: int) -> None:
    """Through places on a quarter circle of 100 mm the line stays within a fortieth of a millimetre of it."""
    angles = np.linspace(0, math.pi / 2, knots)
    points = [Point(100 * math.cos(a), 100 * math.sin(a)) for a in angles]
    path = fair_line(points, Vector(0, 1), Vector(-1, 0))
    assert np.abs(np.hypot(*dense(path).T) - 100).max() < 0.025
    assert path.length == pytest.approx(50 * math.pi, abs=0.03)


@pytest.mark.parametrize("name", SHAPES)
def test_lengths_are_what_others_measure(name: str) -> None:
    """Arc length agrees with adaptive quadrature to a millionth of a mm, and with 4,000 chords to a thousandth."""
    path = fair_line(SHAPES[name], *headings(name))

    def speed(t: float, p: np.ndarray) -> float:
        d = 3 * ((1 - t) ** 2 * (p[1] - p[0]) + 2 * t * (1 - t) * (p[2] - p[1]) + t * t * (p[3] - p[2]))
        return float(np.hypot(*d))

    by_quadrature = sum(quad(speed, 0, 1, args=(p,), epsabs=1e-10)[0] for p in cubics(path))
    chords = np.diff(dense(path, 4000), axis=0)
    assert path.length == pytest.approx(by_quadrature, abs=1e-6)
    assert path.length == pytest.approx(length(path), abs=1e-6)
    assert path.length == pytest.approx(float(np.hypot(*chords.T).sum()), abs=1e-3)


def test_knots_that_fall_together_are_refused() -> None:
    """Two knots in one place are no line, and the problem says so."""
    with pytest.raises(InputError) as refusal:
        fair_line([Point(0, 0), Point(0, 0), Point(10, 0)])
    assert [problem.code for problem in refusal.value.problems] == ["line-not-fair"]


@given(st.lists(st.tuples(SOMEWHERE, SOMEWHERE), min_size=2, max_size=8))
def test_any_knots_give_a_line_or_a_named_refusal(places: list[tuple[float, float]]) -> None:
    """Whatever the knots, there is a line with no jump in its bend, or `line-not-fair`; never another error."""
    points = [Point(x, y) for x, y in places]
    path = drawn_or_refused(points)
    if path is not None:
        assert list(path.knots) == points
        assert all(math.isfinite(value) for value in cubics(path).ravel())


def drawn_or_refused(points: list[Point]) -> Path | None:
    """A line through the points, or None where it is refused by name."""
    try:
        return fair_line(points)
    except InputError as refusal:
        codes = {problem.code for problem in refusal.problems}
    return None if codes == {"line-not-fair"} else pytest.fail(str(codes))


def test_lines_of_real_drafts_are_fair() -> None:
    """Armholes, caps and shaped sides of random wearers bend evenly through their inner knots."""
    for wearer in random_wearers(Figure.WOMAN, 10, seed=3):
        garment = draw(wearer)
        cap = garment.piece("sleeve").edge("cap_back").path.joined(garment.piece("sleeve").edge("cap_front").path)
        for path in (cap, *(garment.piece(half).edge("armhole").path for half in ("front", "back"))):
            assert jump(path) < 1e-4
        assert ends(cap)[0][1] == pytest.approx(0, abs=1e-9)
