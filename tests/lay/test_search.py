"""The search: every plan is proved and shorter than the one before, and what cannot be laid is said first."""

from __future__ import annotations

import math
import time
from dataclasses import replace

import pytest

from tapeline.geometry import Point
from tapeline.lay import Flaw, LayCloth, LayPiece, LayPlan, Placement, faults, kept, lay, lay_pieces, matches
from tapeline.lay.block import bound
from tapeline.lay.engine import Item, Run, Task
from tapeline.problems import InputError
from tests.lay import independent
from tests.lay.lays import CLOTHS, example

SQUARE = (Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100))


def plans_of(pieces: list[LayPiece] | tuple[LayPiece, ...], cloth: LayCloth, seconds: float) -> list[LayPlan]:
    """All plans, each looked at by both opinions."""
    plans = list(lay(pieces, cloth, seconds, workers=2))
    assert plans
    lengths = [plan.length_mm for plan in plans]
    assert lengths == sorted(lengths, reverse=True)
    for plan in plans:
        assert faults(plan) == []
    assert independent.wrong(kept(plans[-1])) == []
    return plans


@pytest.mark.slow
@pytest.mark.parametrize("name", CLOTHS)
def test_plans_are_sound_on_every_cloth(name: str) -> None:
    """A tee, two seconds: no plan has a fault, and none is longer than the one before."""
    cloth = CLOTHS[name]
    finished = example("tee")
    plans = plans_of(lay_pieces(finished, cloth, matches=matches(finished)), cloth, 2)
    assert plans[-1].length_mm >= plans[-1].bound_mm


@pytest.mark.slow
def test_squares_that_fit_are_laid_without_waste() -> None:
    """Twelve squares of 100 mm on 300.2 mm of width take 400 mm: a known optimum."""
    plans = plans_of([LayPiece("cuff", "marit", SQUARE, upright=12)], LayCloth(width_mm=300.2), 2)
    assert plans[-1].length_mm == pytest.approx(400, abs=0.5)


@pytest.mark.slow
def test_flaws_are_kept_clear_of() -> None:
    """Three flaws, one of them across half of the cloth."""
    cloth = LayCloth(width_mm=1700, flaws=(Flaw(200, 300, 20, 20), Flaw(500, 900, 5, 800), Flaw(900, 100, 50, 30)))
    plans_of(lay_pieces(example("tee"), cloth, garments=2), cloth, 3)


@pytest.mark.slow
def test_blocks_stay_together_in_every_garment() -> None:
    """Where the sleeve lies from the front, seen from the front, is the same in both garments."""
    cloth = LayCloth(width_mm=1700)
    words = {"front": "a", "sleeve": "a"}
    best = plans_of(lay_pieces(example("tee"), cloth, garments=2, blocks=words), cloth, 3)[-1]
    seen: dict[int, list[tuple[float, ...]]] = {}
    for garment in (1, 2):
        front = next(p for p in best.placements if p.piece.endswith("front") and p.garment == garment)
        for sleeve in (p for p in best.placements if p.piece.endswith("sleeve") and p.garment == garment):
            from_front = front.move.back.point(Point(sleeve.x, sleeve.y))
            turn = math.remainder(sleeve.turn - front.turn, math.tau)
            seen.setdefault(garment, []).append((from_front.x, from_front.y, abs(turn), sleeve.turned_over))
    assert sorted(seen[1]) == [pytest.approx(row, abs=1e-6) for row in sorted(seen[2])]


@pytest.mark.slow
def test_a_plan_is_gone_on_from() -> None:
    """The plan to begin with comes first, and only shorter ones after it; all pieces are those of the plan."""
    cloth = LayCloth(width_mm=1700)
    pieces = lay_pieces(example("tee"), cloth)
    first = next(iter(lay(pieces, cloth, 1)))
    plans = list(lay(pieces, cloth, 2, start=first))
    assert plans[0] == first
    assert all(plan.length_mm < first.length_mm for plan in plans[1:])


def test_a_plan_that_does_not_hold_is_not_gone_on_from() -> None:
    """Two cuffs kept on top of each other, as an edited file may have them, are no plan to begin with."""
    cuff = LayPiece("cuff", "marit", SQUARE, upright=2)
    cloth = LayCloth()
    overlapping = LayPlan(cloth, (cuff,), (Placement("marit/cuff", 1, 0.0, 0.0), Placement("marit/cuff", 1, 50.0, 0.0)))
    with pytest.raises(InputError) as refused:
        next(iter(lay([cuff], cloth, 1, start=overlapping)))
    assert {problem.code for problem in refused.value.problems} == {"lay-invalid"}


@pytest.mark.slow
def test_an_engine_that_fails_is_a_message() -> None:
    """An outline that crosses itself makes the engine give up; the child says so and ends."""
    crossed = (Point(0, 0), Point(10, 10), Point(10, 0), Point(0, 10))
    with Run(Task(20, (Item("a", crossed, 1, (0.0,)),), 2)) as run:
        for _ in run.plans(time.monotonic() + 10):
            pass
        assert run.ended
        assert run.failed


@pytest.mark.parametrize(
    ("pieces", "cloth", "code"),
    [
        ([], LayCloth(), "lay-empty"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(width_mm=99), "lay-too-narrow"),
        ([LayPiece("back", "marit", SQUARE, upright=0)], LayCloth(), "lay-zero"),
        ([LayPiece("back", "marit", SQUARE, garments=0)], LayCloth(), "lay-zero"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(gap_mm=-1), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(gap_mm=math.nan), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(width_mm=math.inf), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(width_mm=60, selvedge_mm=30), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(flaws=(Flaw(0, 0, math.nan, 1),)), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(flaws=(Flaw(-9, 0, 5, 5),)), "lay-cloth"),
        ([LayPiece("back", "marit", SQUARE)], LayCloth(width_mm=900, flaws=(Flaw(0, 900, 5, 5),)), "lay-cloth"),
        ([LayPiece("back", "marit", (Point(0, 0), Point(math.nan, 0), Point(1, 1)))], LayCloth(), "lay-outline"),
        ([LayPiece("back", "marit", (Point(0, 0), Point(9, 9), Point(9, 0), Point(0, 9)))], LayCloth(), "lay-outline"),
    ],
)
def test_what_cannot_be_laid_is_said_before_anything_is(pieces: list[LayPiece], cloth: LayCloth, code: str) -> None:
    """Each with its own code."""
    with pytest.raises(InputError) as refused:
        next(iter(lay(pieces, cloth, 1)))
    assert code in {problem.code for problem in refused.value.problems}


def test_a_tilt_is_refused_in_degrees() -> None:
    """What was typed is said as it was typed, and so is what is allowed; nobody types radians."""
    with pytest.raises(InputError, match="is 400: the tilt in degrees lies between 0 and 45"):
        next(iter(lay([LayPiece("back", "marit", SQUARE)], LayCloth(tilt=math.radians(400)), 1)))


@pytest.mark.parametrize("seconds", [0, -1, math.nan, math.inf])
def test_no_time_is_no_time(seconds: float) -> None:
    """Neither none, nor less, nor endless."""
    with pytest.raises(InputError, match="seconds are given"):
        next(iter(lay([LayPiece("back", "marit", SQUARE)], LayCloth(), seconds)))


def test_a_block_with_a_half_on_the_fold_is_refused() -> None:
    """It cannot be moved about."""
    half = replace(LayPiece("back", "marit", SQUARE), on_fold=True, block="a")
    with pytest.raises(InputError, match="lies on the fold"):
        bound([half], CLOTHS["folded"])
