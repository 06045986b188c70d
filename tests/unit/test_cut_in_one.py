"""A sleeve that is cut in one lies as it hangs, and lifts as far as its underarm allows; a gusset gives what opens."""

from __future__ import annotations

import math
from typing import Any

import pytest

from tapeline.blocks.cut_in_one_choices import ArmChoices, CutInOneSleeveChoices, Underarm
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS
from tapeline.geometry import Point
from tapeline.lengths import cm
from tapeline.measures import Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles.top import FinishedNeckline
from tapeline.truing import Hang
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw
from tests.properties.measuring import length
from tests.unit.test_truing import trued

DIAMOND = ArmChoices(hang=42, underarm=Underarm.GUSSET)
HALVES = ("front", "back")


def drawn(wearer: Wearer = MARIT, looseness: str = "easy", **changes: Any) -> Garment:
    """A top that is cut in one."""
    return draw(wearer, "cut-in-one", looseness, **changes)


def hang(garment: Garment, wearer: Wearer = MARIT) -> Hang:
    """How its sleeve hangs."""
    found = trued(garment, wearer).hang
    assert found is not None
    return found


def turned_up(place: Point, tip: Point, angle: float) -> complex:
    """A place of the sleeve after the arm is lifted, by multiplying with a complex number of length 1."""
    about = complex(tip.x, tip.y)
    return about + (complex(place.x, place.y) - about) * complex(math.cos(angle), math.sin(angle))


@pytest.mark.parametrize("degrees", [15, 25, 40])
def test_the_sleeve_lies_as_it_hangs(degrees: float) -> None:
    """Past the shoulder the overarm seam falls at the angle that was chosen, on both halves, and the report says so."""
    garment = drawn(arm=ArmChoices(hang=degrees))
    for half in HALVES:
        way = garment.piece(half).edge("overarm").path.arrives
        assert math.degrees(math.atan2(-way.y, way.x)) == pytest.approx(degrees, abs=1e-6)
    assert math.degrees(hang(garment).angle) == pytest.approx(degrees, abs=1e-6)


def test_lifted_to_its_reach_the_underarm_curve_is_straight() -> None:
    """The ends of the curve, the one turned about the shoulder point, are as far apart as the curve is long."""
    garment = drawn()
    points, found = garment.points, hang(garment)
    assert found.reach is not None
    up = turned_up(points["back.curve_start"], points["back.back_shoulder_tip"], found.angle - found.reach)
    side = points["back.underarm_side"]
    curve = length(garment.lines["back.underarm_curve"])
    assert abs(up - complex(side.x, side.y)) == pytest.approx(curve, abs=1e-3)


def test_a_flat_sleeve_and_a_large_curve_lift_further() -> None:
    """The arm lifts higher, the flatter the sleeve and the further the curve reaches."""
    by_hang = [hang(drawn(arm=ArmChoices(hang=degrees))).reach for degrees in (15, 20, 25, 30, 35, 40)]
    by_curve = [hang(drawn(arm=ArmChoices(hang=30, curve=cm(reach)))).reach for reach in (10, 8, 6, 4)]
    for column in (by_hang, by_curve):
        found = [angle for angle in column if angle is not None]
        assert len(found) == len(column)
        assert found == sorted(found)


def test_too_steep_without_a_gusset_is_refused_with_the_reason() -> None:
    """Past 40 degrees (common practice, no source) it is refused, and the hint names the gusset, which mends it."""
    with pytest.raises(InputError) as refused:
        drawn(arm=ArmChoices(hang=42))
    (problem,) = refused.value.problems
    assert problem.code == "cut-in-one-too-steep"
    assert "lift" in problem.says
    assert "gusset" in problem.hint
    assert trued(drawn(arm=DIAMOND)).holds


@pytest.mark.parametrize("wearer", [MARIT, ARNE])
def test_the_gusset_is_what_opens(wearer: Wearer) -> None:
    """Its sides are as long as the slits'; it is as high as the slits open, turned up about the shoulder point."""
    garment = drawn(wearer, arm=DIAMOND)
    gusset = garment.piece("gusset")
    for edge in gusset.edges:
        assert edge.length == pytest.approx(DIAMOND.slit.mm, abs=1e-6)
    opens = []
    for half in HALVES:
        piece, points = garment.piece(half), garment.points
        for name in ("slit_sleeve", "slit_side"):
            assert piece.edge(name).length == pytest.approx(DIAMOND.slit.mm, abs=1e-6)
        tip = points[f"{half}.{half}_shoulder_tip"]
        up = turned_up(points[f"{half}.underarm_sleeve"], tip, math.radians(DIAMOND.lift))
        side = points[f"{half}.underarm_side"]
        opens.append(abs(up - complex(side.x, side.y)))
    high = gusset.edge("front_sleeve").path.start.distance_to(gusset.edge("front_side").path.end)
    assert high == pytest.approx(sum(opens) / 2, abs=1e-6)
    found = hang(garment, wearer)
    assert found.reach == pytest.approx(math.radians(DIAMOND.hang - DIAMOND.lift), abs=1e-9)


def test_a_gusset_that_cannot_span_is_refused() -> None:
    """A short slit that is to open far is refused by name."""
    with pytest.raises(InputError) as refused:
        drawn(arm=ArmChoices(hang=42, underarm=Underarm.GUSSET, slit=cm(5), lift=35))
    assert [problem.code for problem in refused.value.problems] == ["gusset-flat"]


def test_a_slit_that_reaches_the_waist_is_refused() -> None:
    """The side below the slit has to follow the body."""
    with pytest.raises(InputError) as refused:
        drawn(looseness="loose", arm=ArmChoices(hang=42, underarm=Underarm.GUSSET, slit=cm(14)))
    assert [problem.code for problem in refused.value.problems] == ["slit-past-waist"]


def test_a_sleeve_that_would_not_go_round_the_arm_is_refused() -> None:
    """A large upper arm in a steep sleeve is refused, and a flatter one takes it."""
    strong = MARIT.with_tape("upper_arm", 360)
    with pytest.raises(InputError) as refused:
        drawn(strong, "close", arm=ArmChoices(hang=40))
    assert [problem.code for problem in refused.value.problems] == ["cut-in-one-tight"]
    assert trued(drawn(strong, "close", arm=ArmChoices(hang=20)), strong).holds


@pytest.mark.parametrize("word", SLEEVE_LENGTHS)
@pytest.mark.parametrize("arm", [ArmChoices(), DIAMOND], ids=["curve", "gusset"])
def test_every_length_holds(word: str, arm: ArmChoices) -> None:
    """Truing finds no error, and the overarm and underarm seams are true."""
    garment = drawn(arm=arm, sleeve=CutInOneSleeveChoices(length=SLEEVE_LENGTHS[word]))
    found = trued(garment)
    assert found.holds, [str(finding) for finding in found.findings]
    assert max(abs(walked.off_mm) for walked in found.walks) < 1e-6


@pytest.mark.parametrize("finish", NeckFinish)
def test_every_finish_of_the_neck_holds(finish: NeckFinish) -> None:
    """The neck is finished as on a set-in top."""
    found = trued(drawn(neckline=FinishedNeckline(finish=finish)))
    assert found.holds, [str(finding) for finding in found.findings]
