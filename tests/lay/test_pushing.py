"""Pushing a piece stops exactly where it touches, and what is laid by it is sound whatever the cloth asks for."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tapeline.geometry import Point, Solid, push_left
from tapeline.lay import Direction, Flaw, LayCloth, LayPiece, faults, kept, lay_pieces, matches
from tapeline.lay.drop import dropped, settled
from tapeline.measures import Figure
from tests.lay import independent
from tests.lay.lays import CLOTHS, example, of_wearer
from tests.wearers import wearers

Star = tuple[Point, ...]


@st.composite
def stars(draw: st.DrawFn) -> Star:
    """An outline with hollows: corners round a middle, each at its own distance."""
    count = draw(st.integers(3, 12))
    reach = draw(st.lists(st.floats(10, 150), min_size=count, max_size=count))
    turn = draw(st.floats(0, 1))
    return tuple(
        Point(r * math.cos(turn + math.tau * n / count), r * math.sin(turn + math.tau * n / count))
        for n, r in enumerate(reach)
    )


def corners(outline: Star, x: float, y: float) -> list[tuple[float, float]]:
    """Shifted, for the second opinion."""
    return [(p.x + x, p.y + y) for p in outline]


@given(stars(), stars(), st.floats(-250, 250))
def test_a_push_ends_where_the_outlines_touch(moving: Star, still: Star, y: float) -> None:
    """At the end they share nothing; a little further they do. When nothing stops it, it passes without touching."""
    way = push_left(Solid(moving).shifted(500, y), Solid(still))
    if math.isinf(way):
        shared = max(independent.shared_area(corners(moving, x, y), corners(still, 0, 0)) for x in range(-300, 301, 20))
        assert shared < 1e-3
        return
    assert independent.shared_area(corners(moving, 500 - way, y), corners(still, 0, 0)) < 1e-3
    assert independent.shared_area(corners(moving, 500 - way - 2, y), corners(still, 0, 0)) > 0


@settings(max_examples=20)
@given(st.lists(stars(), min_size=1, max_size=6), st.sampled_from(list(Direction)), st.floats(0, 8), st.booleans())
def test_whatever_is_laid_by_pushing_is_sound(shapes: list[Star], way: Direction, gap: float, flawed: bool) -> None:
    """Random pieces, directions, gaps and flaws: no fault is found by the program or by the second opinion."""
    flaws = (Flaw(80, 90, 12, 9), Flaw(300, 10, 40, 200)) if flawed else ()
    cloth = LayCloth(width_mm=420, direction=way, gap_mm=gap, flaws=flaws)
    pieces = [LayPiece(f"star {n}", "marit", shape, upright=1, turned_over=n % 2) for n, shape in enumerate(shapes)]
    plan = dropped(pieces, cloth)
    assert plan is not None
    for made in (plan, settled(plan)):
        assert faults(made) == []
        assert independent.wrong(kept(made)) == []
    assert settled(plan).length_mm <= plan.length_mm + 1e-6


@pytest.mark.slow
@pytest.mark.parametrize("name", CLOTHS)
def test_a_shirt_is_laid_at_once_on_every_cloth(name: str) -> None:
    """The first plan of a shirt is sound: on folds, stripes, two layers, with nap."""
    cloth = CLOTHS[name]
    finished = example("simple-shirt")
    pieces = lay_pieces(finished, cloth, matches=matches(finished))
    plan = dropped(pieces, cloth)
    assert plan is not None
    assert faults(plan) == []
    assert independent.wrong(kept(plan)) == []
    if cloth.repeat_along_mm:
        for placement, piece, _ in plan.laid():
            assert piece.match is not None
            along = placement.x + piece.match.x * math.cos(placement.turn)
            assert math.remainder(along - cloth.line_along_mm, cloth.repeat_along_mm) == pytest.approx(0, abs=0.01)


@pytest.mark.slow
@settings(max_examples=12)
@given(wearers((Figure.WOMAN,)), st.sampled_from(sorted(CLOTHS)))
def test_random_wearers_are_laid_soundly(wearer: object, name: str) -> None:
    """Tees of random wearers, on every kind of cloth: every constraint holds."""
    cloth = CLOTHS[name]
    finished = of_wearer("tee", wearer)  # type: ignore[arg-type]  # hypothesis gives wearers
    plan = dropped(lay_pieces(finished, cloth, matches=matches(finished)), cloth)
    assert plan is not None
    plan = settled(plan)
    assert faults(plan) == []
    assert independent.wrong(kept(plan)) == []
