"""A keyhole: marked on body and facing alike, faced all round, and counted with the opening."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.blocks.keyhole import KeyholeChoices, KeyholePlace
from tapeline.blocks.neck_facing import FacingChoices
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.geometry import Path, Point
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError, Problem
from tapeline.styles.top import FinishedNeckline
from tapeline.truing import Truing, true
from tests.properties.drafts import Drawing, draw, examples
from tests.properties.invariants import broken
from tests.wearers import random_wearers

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)
LAWN = Cloth("lawn", stretch_across=2, stretch_along=1)
NECK = FinishedNeckline(
    lower_front=cm(1.5), lower_back=cm(1), finish=NeckFinish.FACING, facing=FacingChoices(cm(4), 0)
)  # fmt: skip


def keyhole(place: KeyholePlace, depth: float = 10, width: float = 2) -> FinishedNeckline:
    """A faced neck with one."""
    return replace(NECK, keyhole=KeyholeChoices(place, cm(depth), cm(width)))


def trued(garment: Garment, cloth: Cloth = LAWN, wearer: Wearer = NOOR) -> Truing:
    """As a pull-on top."""
    return true(garment, wearer, cloth, meaning={}, pull_on=True)


def mark(garment: Garment, piece: str) -> Path:
    """The line of the keyhole on a piece."""
    return next(mark.path for mark in garment.piece(piece).marks if mark.name == "keyhole")


@pytest.mark.parametrize("place", ["back", "front"])
def test_a_keyhole_is_marked_on_body_and_facing_alike(place: str) -> None:
    """It begins level on the fold at its depth, is as wide as chosen, and ends beside the centre; the outlines stay."""
    garment = draw(NOOR, "tee", "slight", neckline=keyhole(KeyholePlace[place.upper()]))
    plain = draw(NOOR, "tee", "slight", neckline=NECK)
    line = mark(garment, place)
    assert mark(garment, f"{place}_neck_facing") == line
    top = garment.points[f"{place}.neckline_centre"]
    assert (line.start.x, top.y - line.start.y) == pytest.approx((0, 100))
    assert line.leaves.y == pytest.approx(0, abs=1e-9)
    assert (line.end.x, line.end.y) == pytest.approx((3, top.y))
    assert max(x for x, _ in line.sampled(0.05).tolist()) == pytest.approx(10, abs=0.2)
    for half in ("front", "back"):
        assert garment.piece(half).seam_line == plain.piece(half).seam_line


def test_the_facing_goes_round_it_as_wide_as_along_the_neck() -> None:
    """Every place of its outer edge is 4 cm from the nearest of keyhole and neckline, the corner between them apart."""
    garment = draw(NOOR, "tee", "slight", neckline=keyhole(KeyholePlace.BACK, 12))
    outer = garment.piece("back_neck_facing").edge("outer").path
    lines = mark(garment, "back"), garment.piece("back").edge("neckline").path
    offs = [min(line.distance_to(outer.at(outer.length * k / 40)) for line in lines) for k in range(4, 41)]
    assert offs == pytest.approx([40] * len(offs), abs=0.1)
    assert outer.end.distance_to(Point(0, lines[0].start.y - 40)) < 1e-6


def test_a_keyhole_lets_the_head_through() -> None:
    """A small neck of lawn does not pass a head of 56 cm; with a keyhole it does, by twice its side, unstretched."""
    wearer = NOOR.with_tape("head_girth", 560)
    closed, opened = (draw(wearer, "tee", "easy", neckline=line) for line in (NECK, keyhole(KeyholePlace.BACK)))
    assert "head-does-not-pass" in {finding.code for finding in trued(closed, LAWN, wearer).findings}
    assert "head-does-not-pass" not in {finding.code for finding in trued(opened, LAWN, wearer).findings}
    before, after = trued(closed, LAWN, wearer).opening, trued(opened, LAWN, wearer).opening
    assert before is not None
    assert after is not None
    assert after.stretched_mm - before.stretched_mm == pytest.approx(2 * mark(opened, "back").length)
    assert "keyhole" in after.limit


@pytest.mark.parametrize(
    ("shape", "finish", "place"),
    [("round", "band", "back"), ("round", "hem", "front"), ("boat", "facing", "back"), ("v", "facing", "front")],
)
def test_a_keyhole_without_a_place_is_refused(shape: str, finish: str, place: str) -> None:
    """Nothing would turn in its edges, or there is no room below the neckline; the hint names what to choose."""
    line = replace(keyhole(KeyholePlace[place.upper()]), shape=NECK_SHAPES[shape], finish=NeckFinish[finish.upper()])
    with pytest.raises(InputError) as refused:
        draw(NOOR, "tee", "slight", neckline=line)
    (problem,) = refused.value.problems
    assert isinstance(problem, Problem)
    assert (problem.code, problem.where) == ("keyhole-not-here", "garment.neckline.keyhole.place")
    assert "choose" in problem.hint


@pytest.mark.slow
@pytest.mark.parametrize("shape", ["round", "scoop", "v", "square"])
def test_everything_holds_for_random_wearers(shape: str) -> None:
    """The invariants of every style, the keyhole shallow or deep, for women and men as the survey met them."""
    said = frozenset({"bust-wants-dart", "shoulder-inside-back"})
    count = max(4, examples(40).max_examples)
    for wearer in (*random_wearers(Figure.WOMAN, count, 13), *random_wearers(Figure.MAN, count, 13)):
        for depth, width in ((4, 0.8), (18, 6)):
            line = replace(keyhole(KeyholePlace.BACK, depth, width), shape=NECK_SHAPES[shape], lower_back=cm(1.5))
            garment = draw(wearer, "tee", "slight", neckline=line)
            assert not broken(Drawing(wearer, "tee", "slight", True, garment, said))
