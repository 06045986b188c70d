"""Seams laid edge on edge: what touches touches, whichever way the papers must be turned."""

from __future__ import annotations

import math
import re
from itertools import pairwise
from pathlib import Path

import pytest

from tapeline.geometry import Rigid
from tapeline.problems import InputError
from tapeline.truing import Rolled, SeamWalk, roll
from tapeline.web.seam_view import seam_view
from tapeline.web.view import View, look

EXAMPLES = Path(__file__).parents[2] / "examples"
VIEWS = {name: look((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name) for name in ("tee", "block")}


def walks(view: View) -> tuple[SeamWalk, ...]:
    """The walked seams of a garment that is drafted."""
    assert view.drafted is not None
    return view.drafted.truing.walks


def rolled(view: View, walked: SeamWalk) -> Rolled:
    """One of its seams, rolled."""
    assert view.drafted is not None
    return roll(view.drafted.garment, walked)


SEAMS = [
    pytest.param(view, walked, id=f"{name}-{walked.seam.name}")
    for name, view in VIEWS.items()
    for walked in walks(view)
]


@pytest.mark.parametrize(("view", "walked"), SEAMS)
def test_the_edges_touch_with_one_tangent(view: View, walked: SeamWalk) -> None:
    """At every place of the walk the two lengths walked lie on one point, and the edges run the same way there."""
    seam = rolled(view, walked)
    assert len(seam.placements) >= 20
    for place in seam.placements:
        here, there = seam.lying.path.at(place.lying_mm), place.move.point(seam.rolling.path.at(place.rolling_mm))
        assert here.distance_to(there) < 1e-6
        along = seam.lying.path.direction_at(place.lying_mm)
        assert abs(along.turn_to(place.move.vector(seam.rolling.path.direction_at(place.rolling_mm)))) < 1e-9
        assert is_rigid(place.move)
    first, last = seam.placements[0], seam.placements[-1]
    assert (first.rolling_mm, first.lying_mm) == (0, 0)
    assert last.rolling_mm == pytest.approx(walked.a_mm, abs=1e-6)
    assert last.lying_mm == pytest.approx(walked.b_mm, abs=1e-6)


@pytest.mark.parametrize(("view", "walked"), SEAMS)
def test_equal_edges_are_walked_by_equal_lengths(view: View, walked: SeamWalk) -> None:
    """Where nothing is eased the lengths walked are equal everywhere; else each pair of marks meets with its ease."""
    seam = rolled(view, walked)
    if all(abs(a - b) < 1e-6 for a, b in walked.parts):
        assert all(abs(place.rolling_mm - place.lying_mm) < 1e-6 for place in seam.placements)
    else:
        assert abs(walked.a_mm - walked.b_mm) > 1
    marks = [place for place in seam.placements if place.mark is not None]
    assert [place.mark for place in marks] == list(range(len(walked.parts) + 1))
    steps = [(b.rolling_mm - a.rolling_mm, b.lying_mm - a.lying_mm) for a, b in pairwise(marks)]
    assert steps == [pytest.approx(part, abs=1e-6) for part in walked.parts]


@pytest.mark.parametrize(("view", "walked"), SEAMS)
def test_the_pieces_lie_on_either_side(view: View, walked: SeamWalk) -> None:
    """As when sewn and opened out, the inside of the one is across the seam from the inside of the other."""
    seam = rolled(view, walked)
    middle = seam.placements[len(seam.placements) // 2]
    along = seam.lying.path.direction_at(middle.lying_mm)
    inward = seam.rolling.path.direction_at(middle.rolling_mm)
    other = middle.move.vector(inward.left if seam.rolling.inside_left else inward.right)
    assert other.dot(along.left if seam.lying.inside_left else along.right) == pytest.approx(-1)


@pytest.mark.parametrize(("view", "walked"), SEAMS)
def test_right_sides_together_the_pieces_lie_on_one_side(view: View, walked: SeamWalk) -> None:
    """The same lengths touch, and the inside of the one is where the inside of the other is."""
    assert view.drafted is not None
    seam = roll(view.drafted.garment, walked, together=True)
    for place in seam.placements:
        assert (
            seam.lying.path.at(place.lying_mm).distance_to(place.move.point(seam.rolling.path.at(place.rolling_mm)))
            < 1e-6
        )
        along = seam.lying.path.direction_at(place.lying_mm)
        inward = seam.rolling.path.direction_at(place.rolling_mm)
        other = place.move.vector(inward.left if seam.rolling.inside_left else inward.right)
        assert other.dot(along.left if seam.lying.inside_left else along.right) == pytest.approx(1)


def test_the_neckline_runs_on_over_the_shoulder() -> None:
    """A side of two edges is one line: the front's neckline begins where the back's ends, and goes the same way."""
    walked = next(walked for walked in walks(VIEWS["tee"]) if walked.seam.name == "neckline")
    lying = rolled(VIEWS["tee"], walked).lying
    joint = lying.pieces[1].start_mm
    assert len(lying.pieces) == 2
    turn = lying.path.direction_at(joint - 1e-6).turn_to(lying.path.direction_at(joint + 1e-6))
    assert abs(turn) < math.radians(0.01)
    assert lying.path.length == pytest.approx(walked.b_mm)


def test_the_page_shows_what_was_rolled() -> None:
    """The matrices that the page sets bring the sleeve's notch onto the armhole's, and the words say the lengths."""
    shown = seam_view(VIEWS["tee"], "armhole_front")
    walked = next(walked for walked in walks(VIEWS["tee"]) if walked.seam.name == "armhole_front")
    place = next(place for place in shown.places if place["mark"] == 1)
    seam = rolled(VIEWS["tee"], walked)
    touched = Rigid(*place["move"]).point(seam.rolling.path.at(walked.parts[0][0]))
    assert (touched.x, touched.y) == pytest.approx(place["touch"], abs=2e-3)
    assert place["words"] == f"At mark 1: walked {walked.parts[0][0] / 10:.1f} on {walked.parts[0][1] / 10:.1f} cm"
    assert re.search("equal", shown.words)
    assert (len(shown.lying.numbers), len(shown.rolling.numbers)) == (1, 1)


def test_two_edges_of_one_piece_are_told_apart() -> None:
    """The underarm seam sews the sleeve to itself, and its sides have names of their own; an inch has hundredths."""
    shown = seam_view(VIEWS["block"], "underarm")
    assert {shown.lying.name, shown.rolling.name} == {"Sleeve underarm back", "Sleeve underarm front"}
    assert shown.places[0]["words"] == "At the start: walked 0.00 on 0.00 in"


def test_a_seam_that_is_not_there_is_refused() -> None:
    """The refusal says which seams there are."""
    with pytest.raises(InputError, match="shoulder"):
        seam_view(VIEWS["tee"], "<script>")
    with pytest.raises(InputError, match="nothing is drafted"):
        seam_view(look("", "empty"), "shoulder")


def is_rigid(move: Rigid) -> bool:
    """Whether a move keeps every length."""
    return all(
        abs(found - meant) < 1e-9
        for found, meant in (
            (math.hypot(move.a, move.b), 1),
            (math.hypot(move.c, move.d), 1),
            (move.a * move.c + move.b * move.d, 0),
        )
    )
