"""A funnel: cut on, its two seams alike, its edge level, and what is turned inside lies on it."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.finish import FinishChoices, Title, finish
from tapeline.geometry import Line, Point, Rigid
from tapeline.lengths import Length, cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError
from tapeline.styles.top import FinishedNeckline
from tapeline.truing import true
from tests.properties.drafts import Drawing, draw, examples
from tests.properties.invariants import broken
from tests.wearers import random_wearers

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)


def funnel(rise: float = 5, finish: NeckFinish = NeckFinish.HEM) -> FinishedNeckline:
    """A funnel so high, turned inside by 4 cm."""
    return FinishedNeckline(replace(NECK_SHAPES["funnel"], rise=cm(rise)), finish=finish, hem=cm(4))


def drawn(rise: float = 5, style: str = "tee", wearer: Wearer = NOOR) -> Garment:
    """A top with it."""
    return draw(wearer, style, "slight", neckline=funnel(rise))


@pytest.mark.parametrize("rise", [3, 5, 6])
def test_both_seams_are_alike(rise: float) -> None:
    """Laid on each other by shoulder and tip, the front's seam lies on the back's; as high as chosen."""
    garment = drawn(rise)
    seams = [garment.piece(half).edge("shoulder").path for half in ("front", "back")]
    front, back = seams
    lay = Rigid.laying(front.end, front.arrives, back.end, back.arrives)
    for share in range(11):
        assert back.distance_to(lay.point(front.at(front.length * share / 10))) < 1e-6
    end, top = (garment.points[f"front.{name}"] for name in ("neckline_shoulder", "funnel_top"))
    assert top.y - end.y == pytest.approx(10 * rise)
    assert top.x == pytest.approx(end.x)


def test_its_edge_is_level_and_runs_on_over_the_seam() -> None:
    """Straight across the front; the back dips at the centre by half of what its side leans, and no more."""
    garment = drawn()
    front, back = (garment.piece(half).edge("neckline").path for half in ("front", "back"))
    assert len(front.segments) == 1
    assert front.leaves.y == pytest.approx(0)
    lean = math.atan2(back.arrives.y, back.arrives.x)
    assert 0 < math.degrees(lean) < 6
    assert (back.end.y - back.start.y) / back.end.x == pytest.approx(math.tan(lean / 2))
    (join,) = (j for j in true(garment, NOOR, Cloth(), meaning={}, pull_on=True).joins if j.line == "neckline")
    assert abs(math.degrees(join.bend)) < 1e-6


def test_what_is_turned_inside_lies_on_the_funnel() -> None:
    """Folded along the front's level edge, the cut line beside the hem lies on the seam's own cut line below."""
    garment = drawn()
    done = finish(garment, FinishChoices(10), Title("", "", "", "", ""))
    front = next(one for one in done.pieces if one.piece.name == "front")
    assert dict(front.allowances)["neckline"] == 40
    top = garment.points["front.funnel_top"]
    for above in (5, 15, 25, 35):
        beyond = max(place.x for place in front.cut_line.crossings(level(top.y + above)))
        inside = [place.x for place in front.cut_line.crossings(level(top.y - above))]
        assert min(abs(beyond - x) for x in inside) < 0.01


def level(y: float) -> Line:
    """A level line."""
    return Line(Point(0, y), Point(1, y))


@pytest.mark.parametrize("way", [NeckFinish.FACING, NeckFinish.COLLAR])
def test_a_funnel_is_its_own_collar_and_facing(way: NeckFinish) -> None:
    """Another one is refused, with what fits."""
    with pytest.raises(InputError) as refused:
        draw(NOOR, "tee", "slight", neckline=funnel(finish=way))
    (problem,) = refused.value.problems
    assert problem.code == "finish-not-for-neckline"
    assert '"hem"' in problem.hint


def test_a_funnel_higher_than_the_shoulder_is_long_is_refused() -> None:
    """There would be no room for the seam to bend."""
    with pytest.raises(InputError) as refused:
        drawn(8, "vest")
    assert [problem.code for problem in refused.value.problems] == ["funnel-too-high"]


def test_a_raglan_top_has_no_funnel() -> None:
    """There is no shoulder seam for it to rise from: refused by name."""
    with pytest.raises(InputError) as refused:
        drawn(5, "raglan")
    assert [problem.code for problem in refused.value.problems] == ["funnel-on-raglan"]


def test_a_head_that_does_not_pass_asks_for_a_wider_funnel() -> None:
    """There is nothing to lower: the hint widens, and then the head passes."""
    wearer = NOOR.with_tape("head_girth", 600)

    def found(line: FinishedNeckline) -> list[tuple[str, float] | None]:
        garment = draw(wearer, "tee", "slight", neckline=line)
        findings = true(garment, wearer, Cloth(), meaning={}, pull_on=True).findings
        return [finding.change for finding in findings if finding.code == "head-does-not-pass"]

    line = replace(funnel(4), widen=cm(0))
    (change,) = found(line)
    assert change is not None
    assert change[0] == "garment.neckline.widen"
    assert found(replace(line, widen=Length(change[1]))) == []


@pytest.mark.slow
@pytest.mark.parametrize("style", ["tee", "dropped", "sweatshirt"])
def test_everything_holds_for_random_wearers(style: str) -> None:
    """The invariants of every style, for women and men as the survey met them, or a refusal by name."""
    said = frozenset({"bust-wants-dart", "shoulder-inside-back"})
    count = max(4, examples(60).max_examples)
    refused: list[str] = []
    for wearer in (*random_wearers(Figure.WOMAN, count, 14), *random_wearers(Figure.MAN, count, 14)):
        for rise in (3, 5):
            try:
                garment = drawn(rise, style, wearer)
            except InputError as refusal:
                refused += [problem.code for problem in refusal.problems]
                continue
            assert not broken(Drawing(wearer, style, "slight", True, garment, said))
    assert set(refused) <= {"funnel-too-high", "shoulder-beyond-side"}
    assert len(refused) < count
