"""The cut line, by hand: every expected place follows from school geometry."""

from __future__ import annotations

import math

import pytest

from tapeline.finish.cut_line import cut_line
from tapeline.geometry import Cubic, Path, Point, Vector, area, crosses_itself, fair_line
from tapeline.pattern import Edge, EdgeKind, Join
from tapeline.problems import InputError
from tests.finish.shapes import half, straight


def places(path: Path) -> list[tuple[float, float]]:
    """Knots, rounded to a thousandth."""
    return [(round(p.x, 3) + 0.0, round(p.y, 3) + 0.0) for p in path.knots]


def test_a_square_on_the_fold_has_nothing_at_the_fold_and_a_deep_hem() -> None:
    """The hem's allowance runs straight down; along the fold the cut line is the fold, run on at both ends."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), folds="a", hems="d")
    line = cut_line(piece, {"a": 0, "b": 10, "c": 10, "d": 25})
    assert places(line) == [(0, -25), (0, 110), (70, 110), (70, -25), (0, -25)]
    assert area(line) < 0


def test_each_corner_of_a_plain_piece_is_where_the_neighbours_meet() -> None:
    """Different allowances meet at their own distances."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0))
    line = cut_line(piece, {"a": 5, "b": 10, "c": 15, "d": 20})
    assert places(line) == [(-5, -20), (-5, 110), (75, 110), (75, -20), (-5, -20)]


def test_no_allowance_gives_the_seam_line() -> None:
    """Without allowances the cut line is the seam line."""
    piece = straight((0, 0), (30, 100), (60, 0))
    assert places(cut_line(piece, dict.fromkeys("abc", 0.0))) == [(0, 0), (30, 100), (60, 0), (0, 0)]


def test_a_slender_point_is_cut_off_square() -> None:
    """A point of 20 degrees is cut square to its middle line, two and a half allowances from the corner."""
    half_width = 200 * math.tan(math.radians(10))
    piece = straight((-half_width, 0), (0, 200), (half_width, 0))
    line = cut_line(piece, dict.fromkeys("abc", 10.0))
    assert max(p.y for p in line.knots) == pytest.approx(225)
    top = [p for p in line.knots if p.y > 224.9]
    assert len(top) == 2
    # The cut lines lie 10 beside the edges: at 25 above the point they are (10 - 25 sin 10) / cos 10 apart from it.
    assert max(p.x for p in top) == pytest.approx(
        (10 - 25 * math.sin(math.radians(10))) / math.cos(math.radians(10)), abs=1e-9
    )


def test_a_point_that_is_not_slender_stays_whole() -> None:
    """A corner of 60 degrees runs on to twice the allowance."""
    piece = straight((-50, 0), (0, 50 * math.sqrt(3)), (50, 0))
    line = cut_line(piece, dict.fromkeys("abc", 10.0))
    assert max(p.y for p in line.knots) == pytest.approx(50 * math.sqrt(3) + 20)


def test_a_corner_that_turns_inward_is_trimmed() -> None:
    """In the hollow of an L the cut lines end where they cross, and nothing is left over."""
    piece = straight((0, 0), (0, 100), (40, 100), (40, 40), (100, 40), (100, 0))
    line = cut_line(piece, dict.fromkeys("abcdef", 10.0))
    assert places(line) == [(-10, -10), (-10, 110), (50, 110), (50, 50), (110, 50), (110, -10), (-10, -10)]


def test_curves_in_a_hollow_are_trimmed_where_they_cross() -> None:
    """Two curved edges that meet in a hollow end at one place that has the allowance's distance to both."""
    hollow = Point(100, 60)
    left = fair_line([Point(0, 100), hollow], leave=Vector(1, -0.1), arrive=Vector(0.4, -1))
    right = fair_line([hollow, Point(200, 100)], leave=Vector(0.4, 1), arrive=Vector(1, 0.1))
    plain = straight((0, 0), (0, 100), (200, 100), (200, 0))
    edges = (plain.edges[0], Edge("left", left), Edge("right", right), *plain.edges[2:])
    piece = type(plain)("shape", "Shape", edges, plain.grain, plain.cut)
    line = cut_line(piece, {"a": 8, "left": 8, "right": 8, "c": 8, "d": 8})
    lowest = min((p for p in line.knots if 50 < p.x < 150 and p.y > 20), key=lambda p: p.y)
    assert left.distance_to(lowest) == pytest.approx(8, abs=0.02)
    assert right.distance_to(lowest) == pytest.approx(8, abs=0.02)
    assert not crosses_itself(line)


def test_where_one_straight_edge_goes_on_as_another_there_is_a_square_step() -> None:
    """Without a corner between them, a narrow and a wide allowance are joined square to the edge."""
    piece = straight((0, 0), (0, 100), (40, 100), (80, 100), (80, 0))
    line = cut_line(piece, {"a": 10, "b": 6, "c": 15, "d": 10, "e": 10})
    assert places(line) == [(-10, -10), (-10, 106), (40, 106), (40, 115), (90, 115), (90, -10), (-10, -10)]


def test_a_pointed_neckline_on_the_fold_keeps_its_point() -> None:
    """A V at 30 degrees to the fold: its cut line meets the fold 10 / sin 30 = 20 mm above."""
    rise = 50 * math.sqrt(3)
    piece = straight((0, -200), (0, 0), (50, rise), (120, rise), (120, -200), folds="a")
    line = cut_line(piece, {"a": 0, "b": 10, "c": 10, "d": 10, "e": 10})
    assert (0, 20) in places(line)
    assert min(p.x for p in line.knots) == pytest.approx(0, abs=1e-9)


def test_a_slender_point_on_the_fold_is_cut_off_square_to_it() -> None:
    """A half point of 15 degrees on the fold would run on 38 mm; it is cut square to the fold at 25."""
    piece = straight((0, 0), (0, 200), (200 * math.tan(math.radians(15)), 0), folds="a")
    line = cut_line(piece, {"a": 0, "b": 10, "c": 10})
    assert max(p.y for p in line.knots) == pytest.approx(225)
    assert sum(abs(p.y - 225) < 1e-9 for p in line.knots) == 2


def test_a_hem_widens_below_its_line_as_the_piece_above_narrows() -> None:
    """Sides that run 3 in 4: the cut line crosses the hem's level 12.5 out and ends 18.75 further out, 25 below."""
    piece = straight((-75, 100), (175, 100), (100, 0), (0, 0), hems="c")
    line = cut_line(piece, {"a": 10, "b": 10, "c": 25, "d": 10})
    knots = places(line)
    for place in [(112.5, 0), (131.25, -25), (-31.25, -25), (-12.5, 0)]:
        assert place in knots


def test_a_squared_corner_mirrors_the_line_about_the_seam() -> None:
    """A shoulder (top) that meets a neckline (left) at an angle: the allowance's end is the neckline's mirror image."""
    piece = straight((75, 0), (0, 100), (200, 100), (200, 0))
    join = Join("neckline", "shoulder", (("shape", "a", "b"), ("other", "a", "b")))
    line = cut_line(piece, {"a": 10, "b": 20, "c": 10, "d": 10}, [join])
    # The neckline falls 4 in 3; its cut line, 10 beside it, crosses the shoulder's level 12.5 out, and comes back
    # 15 for the 20 that it goes on up.
    knots = places(line)
    assert (-12.5, 100) in knots
    assert (2.5, 120) in knots
    assert (-27.5, 120) not in knots
    # The armhole on the other end is in no join: it runs on.
    assert (210, 120) in knots


def test_a_join_of_another_piece_changes_nothing() -> None:
    """Only corners that name the piece are squared."""
    piece = straight((75, 0), (0, 100), (200, 100), (200, 0))
    join = Join("neckline", "shoulder", (("other", "a", "b"), ("third", "a", "b")))
    widths = dict.fromkeys("abcd", 10.0)
    assert cut_line(piece, widths, [join]) == cut_line(piece, widths)


def test_the_hem_wins_over_the_join_of_hem_and_side() -> None:
    """A hem is turned up after the side is sewn, so its corners mirror about the hem."""
    piece = straight((-75, 100), (175, 100), (100, 0), (0, 0), hems="c")
    join = Join("hem", "side", (("shape", "c", "b"), ("shape", "c", "d")))
    widths = {"a": 10.0, "b": 10.0, "c": 25.0, "d": 10.0}
    assert cut_line(piece, widths, [join]) == cut_line(piece, widths)


def test_a_corner_inside_an_edge_is_a_corner_of_the_cut_line() -> None:
    """An edge with a hollow corner of its own is trimmed there like two edges."""
    edge = Edge("b", Path.through(Point(0, 100), Point(50, 60), Point(100, 100)))
    plain = straight((0, 0), (0, 100), (100, 100), (100, 0))
    piece = type(plain)("shape", "Shape", (plain.edges[0], edge, *plain.edges[2:]), plain.grain, plain.cut)
    line = cut_line(piece, dict.fromkeys("abcd", 10.0))
    assert not crosses_itself(line)
    # The hollow opens by twice atan(50 / 40); ten beside both its edges is 10 / sin atan(50 / 40) from its corner.
    assert line.distance_to(Point(50, 60)) == pytest.approx(10 / math.sin(math.atan2(50, 40)), abs=1e-9)


def test_curves_stay_curves() -> None:
    """The cut line of curved edges is made of cubics, not of many short lines."""
    piece = half("front", 95)
    line = cut_line(piece, {"centre": 0, "neckline": 10, "shoulder": 10, "armhole": 10, "side": 10, "hem": 25})
    assert any(isinstance(s, Cubic) for s in line.segments)
    assert len(line.segments) < 30
    assert line.start == line.end
    for before, after in zip(line.segments, line.segments[1:], strict=False):
        assert before.end == after.start


def test_an_allowance_too_wide_for_a_curve_is_refused_by_name() -> None:
    """A neckline of 20 mm radius cannot have a 30 mm allowance: the piece and edge are named."""
    hollow = fair_line([Point(-20, 100), Point(0, 80), Point(20, 100)], leave=Vector(0, -1), arrive=Vector(0, 1))
    edges = (
        Edge("left", Path.through(Point(-100, 0), Point(-100, 100))),
        Edge(
            "neckline",
            Path.through(Point(-100, 100), Point(-20, 100))
            .joined(hollow)
            .joined(Path.through(Point(20, 100), Point(100, 100))),
        ),
        Edge("right", Path.through(Point(100, 100), Point(100, 0))),
        Edge("hem", Path.through(Point(100, 0), Point(-100, 0)), EdgeKind.HEM),
    )
    plain = straight((0, 0), (0, 1), (1, 0))
    piece = type(plain)("front", "Front", edges, plain.grain, plain.cut)
    with pytest.raises(InputError) as caught:
        cut_line(piece, {"left": 10, "neckline": 30, "right": 10, "hem": 25})
    (problem,) = caught.value.problems
    assert problem.code == "allowance-too-wide"
    assert "front.neckline" in problem.where
    assert "30 mm" in problem.says


def test_an_edge_shorter_than_its_corners_take_is_refused() -> None:
    """The floor of a narrow slot is eaten from both sides."""
    piece = straight((0, 0), (0, 100), (45, 100), (45, 50), (55, 50), (55, 100), (100, 100), (100, 0))
    with pytest.raises(InputError) as caught:
        cut_line(piece, dict.fromkeys("abcdefgh", 10.0))
    assert caught.value.problems[0].code == "allowance-too-wide"


@pytest.mark.parametrize("degrees", [-2.0, -1.0, -0.1, -0.001, 0.0, 0.001, 0.02, 0.1, 1.0, 2.0])
@pytest.mark.parametrize("curved", [False, True])
def test_edges_that_hardly_turn_meet_without_a_loop(degrees: float, curved: bool) -> None:
    """Two edges nearly in one line, turning out or in, straight or curved: the cut line just runs on."""
    turn = math.radians(degrees)
    corner = Point(100, 100)
    into = Path.through(Point(0, 100), corner)
    away = Vector(1, 0).turned(turn)
    out = Path.through(corner, corner + away * 100)
    if curved:
        into = fair_line([Point(0, 80), Point(50, 105), corner], arrive=Vector(1, 0))
        out = fair_line([corner, corner + away * 50 + away.left * 8, corner + away * 100], leave=away)
    corners = [out.end, Point(200, 0), Point(0, 0), into.start]
    rest = [Edge(n, Path.through(a, b)) for n, a, b in zip("cde", corners, corners[1:], strict=False)]
    plain = straight((0, 0), (0, 1), (1, 0))
    piece = type(plain)("shape", "Shape", (Edge("a", into), Edge("b", out), *rest), plain.grain, plain.cut)
    line = cut_line(piece, dict.fromkeys("abcde", 10.0))
    assert not crosses_itself(line)
    assert line.distance_to(corner) == pytest.approx(10, abs=0.02)
    assert line.length - piece.seam_line.length < 2 * math.pi * 10 + 20


def test_a_close_armhole_gets_a_small_corner_instead_of_a_loop() -> None:
    """An armhole that turns on 14 mm beside the side seam still has 20 mm of allowance, and nothing turns back."""
    tip, underarm = Point(150, 0), Point(208, -216)
    armhole = fair_line(
        [tip, Point(178, -125), Point(185, -194), underarm], leave=Vector(0.3, -1), arrive=Vector(1, -0.02)
    )
    assert 1 / max(armhole.curvatures()) < 20
    corners = [underarm, Point(212, -500), Point(0, -500), Point(0, 0), tip]
    rest = [Edge(n, Path.through(a, b)) for n, a, b in zip("bcde", corners, corners[1:], strict=False)]
    plain = straight((0, 0), (0, 1), (1, 0))
    piece = type(plain)("back", "Back", (Edge("armhole", armhole), *rest), plain.grain, plain.cut)
    join = Join("armhole", "side", (("back", "armhole", "b"), ("front", "armhole", "b")))
    line = cut_line(piece, {"armhole": 20, "b": 20, "c": 20, "d": 20, "e": 20}, [join])
    assert not crosses_itself(line)
    near = [p for p in line.flattened(0.001) if 178 < p.x < 215 and -215 < p.y < -150]
    assert min(armhole.distance_to(p) for p in near) > 19.9
