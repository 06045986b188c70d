"""What is wrong with a plan is found, by the program and by a second opinion that uses none of its code."""

from __future__ import annotations

import json
import math
from dataclasses import replace

import pytest

from tapeline.geometry import Point
from tapeline.lay import Direction, Flaw, LayCloth, LayPiece, LayPlan, Placement, Spread, faults, kept, taken_up
from tapeline.problems import InputError
from tests.lay import independent

CORNER = (Point(0, 0), Point(300, 0), Point(300, 60), Point(100, 60), Point(100, 200), Point(0, 200))
"""A piece like an L, 32 000 mm2."""
PIECE = LayPiece("front", "marit", CORNER, upright=1, turned_over=1, match=Point(10, 10))
GOOD = LayPlan(
    LayCloth(width_mm=500),
    (PIECE,),
    (Placement("marit/front", 1, 0, 0), Placement("marit/front", 1, 0, 490, turned_over=True)),
)
"""One as drawn, and one turned over above it."""


def moved(number: int, **changes: object) -> LayPlan:
    """The good plan with one placement changed."""
    placements = list(GOOD.placements)
    placements[number] = replace(placements[number], **changes)  # type: ignore[arg-type]  # of its own fields
    return replace(GOOD, placements=tuple(placements))


def test_a_good_plan_has_no_faults_and_says_what_it_takes() -> None:
    """Two pieces of 32 000 mm2 on 500 mm of width, 300 mm long."""
    assert faults(GOOD) == []
    assert independent.wrong(kept(GOOD)) == []
    assert GOOD.length_mm == pytest.approx(300)
    assert GOOD.laid_mm2 == pytest.approx(64000)
    assert GOOD.density == pytest.approx(64000 / 150000)
    assert GOOD.waste_mm2 == pytest.approx(86000)
    assert replace(GOOD, cloth=replace(GOOD.cloth, price=20.0)).cost == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("plan", "says"),
    [
        pytest.param(moved(1, y=390), "overlap", id="overlap"),
        pytest.param(moved(0, x=-1), "beyond the edge", id="before the beginning"),
        pytest.param(moved(1, y=501), "beyond the edge", id="over the selvedge"),
        pytest.param(moved(1, turned_over=False, y=290), "turned over 0 times", id="not turned over"),
        pytest.param(moved(0, turn=0.1, y=60), "degrees", id="off the grain"),
        pytest.param(replace(GOOD, placements=GOOD.placements[:1]), "0 times", id="one missing"),
        pytest.param(
            replace(moved(0, turn=math.pi, x=300, y=200), cloth=replace(GOOD.cloth, direction=Direction.ONE_WAY)),
            "180.000 degrees",
            id="against the nap",
        ),
        pytest.param(
            replace(moved(0, turn=math.pi, x=300, y=200), cloth=replace(GOOD.cloth, direction=Direction.BY_GARMENT)),
            "face both ways",
            id="one garment both ways",
        ),
    ],
)
def test_a_planted_fault_is_found(plan: LayPlan, says: str) -> None:
    """Each fault is named."""
    assert any(says in problem.says for problem in faults(plan))


@pytest.mark.parametrize(
    ("cloth", "says"),
    [
        (LayCloth(width_mm=500, gap_mm=100), "apart, not 100"),
        (LayCloth(width_mm=500, flaws=(Flaw(20, 20, 5, 5),)), "on the flaw"),
        (LayCloth(width_mm=500, repeat_along_mm=40, line_along_mm=20), "beside its stripe"),
        (LayCloth(width_mm=500, repeat_across_mm=7), "beside its stripe"),
    ],
)
def test_what_the_cloth_asks_for_is_looked_at(cloth: LayCloth, says: str) -> None:
    """The same coordinates are no plan on a cloth that asks for more."""
    assert any(says in problem.says for problem in faults(replace(GOOD, cloth=cloth)))


def test_a_half_that_leaves_the_fold_is_found() -> None:
    """On folded cloth a half piece lies with its fold on the lower edge."""
    half = replace(PIECE, on_fold=True, turned_over=0, match=None)
    cloth = LayCloth(width_mm=1000, spread=Spread.FOLDED)
    on, off = (LayPlan(cloth, (half,), (Placement("marit/front", 1, 0, y),)) for y in (0, 5))
    assert faults(on) == []
    assert [problem.says for problem in faults(off)] == ["marit/front does not lie on the fold"]


def test_shared_area_of_the_second_opinion_is_exact() -> None:
    """An L and a square over its inner corner share 300 mm2, a turned square its overlap with its twin (2(√2-1) a²)."""
    corners = [(p.x, p.y) for p in CORNER]
    assert independent.shared_area(corners, [(90, 50), (110, 50), (110, 70), (90, 70)]) == pytest.approx(300)
    square = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
    turned = [(math.sqrt(2), 0.0), (0.0, math.sqrt(2)), (-math.sqrt(2), 0.0), (0.0, -math.sqrt(2))]
    assert independent.shared_area(square, turned) == pytest.approx(8 * (math.sqrt(2) - 1))


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda d: d.update(format="other"), "does not say"),
        (lambda d: d.pop("cloth"), "cloth is missing"),
        (lambda d: d["placements"][0].update(piece="marit/back"), "not there"),
        (lambda d: d["placements"][0].update(x=float("nan")), "no place"),
        (lambda d: d["pieces"][0].update(outline=[[0, 0], [1, 1], [1, 0], [0, 1]]), "crosses"),
        (lambda d: d["pieces"][0].update(upright=-1), "upright of front is -1"),
        (lambda d: d["cloth"].update(gap_mm=-3), "gap of the shell is -3"),
    ],
)
def test_a_kept_plan_that_is_none_is_refused(change: object, says: str) -> None:
    """What was kept is read with the same care as anything typed."""
    document = json.loads(kept(GOOD))
    change(document)  # type: ignore[operator]  # one of the functions above
    with pytest.raises(InputError, match=says):
        taken_up(json.dumps(document))


def test_a_kept_plan_is_taken_up_as_it_was() -> None:
    """Coordinates to a millionth of a millimetre."""
    assert taken_up(kept(GOOD)) == GOOD
