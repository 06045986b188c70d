"""How a neck is finished: what is drawn for each word, what fits what, and what goes over the head."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.neck_facing import FacingChoices
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.neckband import RIB_COLLARS, BindingChoices
from tapeline.finish import FinishChoices, Title, finish
from tapeline.lengths import Length, cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, EdgeKind, Garment, chosen_lengths
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles import STYLES
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
TITLE = Title("a.toml", "Noor", "tee", "", "0")
WAYS = {
    "round": "band binding facing hem collar",
    "scoop": "band binding facing hem collar",
    "v": "band binding facing hem",
    "boat": "facing hem",
    "square": "facing hem",
    "funnel": "band binding hem",
}
"""Common practice, no source: what lies round a curve, a point, a corner, a level edge."""
FITS = [(shape, finish) for shape in NECK_SHAPES for finish in NeckFinish if finish in WAYS[shape].split()]


def neck(finish: NeckFinish, shape: str = "round", **others: Any) -> FinishedNeckline:
    """A neckline of a shape, finished in a way."""
    return FinishedNeckline(NECK_SHAPES[shape], cm(2), cm(2), cm(1.5), finish=finish, **others)


def drawn(finish: NeckFinish, shape: str = "round", **others: Any) -> Garment:
    """A tee with it."""
    return draw(NOOR, "tee", "slight", neckline=neck(finish, shape, **others))


def trued(garment: Garment) -> Truing:
    """As a pull-on top of jersey."""
    return true(garment, NOOR, Cloth(), meaning={}, pull_on=True)


def ease(garment: Garment) -> float:
    """The strip's length as a share of the neckline."""
    (seam,) = (seam for seam in garment.seams if seam.name == "neckline")
    return garment.run_length(seam.a) / garment.run_length(seam.b)


@pytest.mark.parametrize(("shape", "finish"), FITS)
def test_every_finish_that_fits_is_trued_and_cut(shape: str, finish: NeckFinish) -> None:
    """Seams fit, folds are square, lines run on or their corner is meant, and every cut line closes."""
    garment = drawn(finish, shape)
    assert not broken(Drawing(NOOR, "tee", "slight", True, garment, frozenset()))
    assert not [f for f in trued(garment).findings if f.severity is Severity.ERROR]
    assert len(cut(garment)) == len(garment.pieces)


def cut(garment: Garment) -> tuple[object, ...]:
    """The pieces with their cut lines."""
    return finish(garment, FinishChoices(), TITLE).pieces


@pytest.mark.slow
@pytest.mark.parametrize(("shape", "finish"), FITS)
def test_everything_holds_for_random_wearers(shape: str, finish: NeckFinish) -> None:
    """The invariants of every style, for women and men as the survey met them; or a refusal by name."""
    count = max(3, examples(40).max_examples)
    said = frozenset({"bust-wants-dart", "shoulder-inside-back"})
    refused: list[str] = []
    for wearer in (*random_wearers(Figure.WOMAN, count, 11), *random_wearers(Figure.MAN, count, 11)):
        lines = neck(finish, shape)
        try:
            garment = draw(wearer, "tee", "slight", neckline=lines)
        except InputError as refusal:
            refused += [problem.code for problem in refusal.problems]
            continue
        assert not broken(Drawing(wearer, "tee", "slight", True, garment, said))
    assert set(refused) <= {"facing-too-wide", "neckline-too-wide"}
    assert len(refused) < count / 4


@pytest.mark.parametrize(("shape", "finish"), [(s, f) for s in NECK_SHAPES for f in NeckFinish if (s, f) not in FITS])
def test_what_cannot_lie_round_a_corner_is_refused(shape: str, finish: NeckFinish) -> None:
    """A strip stretched on lies flat round a curve; the refusal names what fits instead."""
    with pytest.raises(InputError) as refused:
        drawn(finish, shape)
    (problem,) = refused.value.problems
    assert (problem.code, problem.where) == ("finish-not-for-neckline", "garment.neckline.finish")
    assert " or ".join(f'"{way}"' for way in WAYS[shape].split()) in problem.hint


@pytest.mark.parametrize("shape", ["round", "scoop", "v", "square"])
def test_a_facing_is_as_wide_as_it_says_all_along(shape: str) -> None:
    """Its outer edge lies its width from the neckline, but for its own point or corner; it lies on the body's shoulder.

    The parallel of a fair line, looked at in points along both: geometry.
    """
    garment = drawn(NeckFinish.FACING, shape, facing=FacingChoices(cm(4)))
    for half in ("front", "back"):
        facing, body = garment.piece(f"{half}_neck_facing"), garment.piece(half)
        outer, neckline = facing.edge("outer").path, body.edge("neckline").path
        offs = [neckline.distance_to(outer.at(outer.length * share / 20)) for share in range(8, 14)]
        assert min(offs) == pytest.approx(40, abs=0.05)
        if (shape, half) != ("square", "front"):
            assert max(offs) == pytest.approx(40, abs=0.05)
        shoulder = facing.edge("shoulder").path
        assert body.edge("shoulder").path.distance_to(shoulder.end) < 1e-6
        assert facing.edge("outer").kind is EdgeKind.NEATENED
    assert dict(finish(garment, FinishChoices(), TITLE).pieces[-1].allowances)["outer"] == 0


def test_the_edge_of_a_facing_runs_on_over_its_shoulder() -> None:
    """Drawn as one line over the sewn shoulder, it has no corner there."""
    bends = {join.line: join.bend for join in trued(drawn(NeckFinish.FACING)).joins}
    assert abs(math.degrees(bends["facing edge"])) < 0.2


def test_a_facing_wider_than_the_shoulder_is_refused() -> None:
    """It would be caught in the armhole."""
    with pytest.raises(InputError) as refused:
        drawn(NeckFinish.FACING, facing=FacingChoices(cm(10)))
    assert [problem.code for problem in refused.value.problems] == ["facing-too-wide"]


@pytest.mark.parametrize(("stretch", "share"), [(20, 0.95), (35, 0.925), (50, 0.90), (90, 0.90)])
def test_a_binding_is_nine_tenths_to_nineteen_twentieths(stretch: float, share: float) -> None:
    """0.90 to 0.95 of the neckline: from memory of trade handbooks; its shape may make it a little shorter."""
    garment = drawn(NeckFinish.BINDING, binding=BindingChoices(cm(0.5), stretch))
    assert share - 0.02 < ease(garment) <= share + 1e-9


def test_a_binding_takes_the_allowance_that_it_covers() -> None:
    """The neckline's allowance and its own are as wide as it is finished, unless the docket says otherwise."""
    garment = drawn(NeckFinish.BINDING, binding=BindingChoices(cm(0.9)))
    done = {one.piece.name: dict(one.allowances) for one in finish(garment, FinishChoices(15), TITLE).pieces}
    assert done["front"]["neckline"] == done["back"]["neckline"] == done["neck_binding"]["neckline_turned"] == 9
    assert done["front"]["shoulder"] == 15
    other = finish(garment, FinishChoices(15, {"neckline": 7}), TITLE)
    assert {dict(one.allowances).get("neckline", 7) for one in other.pieces} == {7}


def test_a_neck_hem_is_as_deep_as_it_says() -> None:
    """Shallower than the hem below, for it turns in a curve; nothing is sewn to it."""
    garment = drawn(NeckFinish.HEM, hem=cm(0.8))
    done = {one.piece.name: dict(one.allowances) for one in finish(garment, FinishChoices(), TITLE).pieces}
    assert (done["front"]["neckline"], done["front"]["hem"]) == (8, 25)
    assert all(seam.name != "neckline" for seam in garment.seams)


def test_collars_are_as_high_as_their_words() -> None:
    """Mock 4 to 8 cm, roll 15 to 22: common practice, no source. The strip is cut twice as wide, for it is folded."""
    for word, low, high in (("mock", 40, 80), ("roll", 150, 220)):
        garment = drawn(NeckFinish.COLLAR, collar=RIB_COLLARS[word])
        assert low <= garment.piece("rib_collar").edge("centre_back").length / 2 <= high
        assert 0.8 <= ease(garment) <= 0.95


@pytest.mark.parametrize(
    ("finish", "says", "stretch"),
    [
        (NeckFinish.FACING, "the back neck facing in its cloth", 15),
        (NeckFinish.COLLAR, "the rib collar in its cloth", 25),
        (NeckFinish.BINDING, "the neck binding in its cloth", 20),
        (NeckFinish.HEM, "the neckline in its cloth", 35),
    ],
)
def test_the_opening_knows_what_the_neck_is_finished_with(finish: NeckFinish, says: str, stretch: float) -> None:
    """What gives least is stretched by its own cloth: lengths measured here on the pieces, halves on the fold."""
    kinds = {
        "facing": FacingChoices(stretch=stretch),
        "collar": replace(RIB_COLLARS["mock"], stretch=stretch),
        "binding": BindingChoices(stretch=stretch),
    }
    chosen: dict[str, Any] = {word: kind for word, kind in kinds.items() if word == finish}
    garment = drawn(finish, **chosen)
    opening = trued(garment).opening
    assert opening is not None
    assert opening.limit == says
    strip = {"facing": ("front_neck_facing", "back_neck_facing"), "hem": ("front", "back")}.get(
        finish, ({"collar": "rib_collar", "binding": "neck_binding"}.get(finish, ""),)
    )
    around = 2 * sum(garment.piece(name).edge("neckline").length for name in strip)
    assert opening.stretched_mm == pytest.approx(around * (1 + stretch / 100), abs=1e-6)


def test_only_what_is_used_is_told() -> None:
    """The steps name the band's width where there is a band, and the facing's where there is a facing."""
    choices = STYLES["tee"].choices()
    faced = replace(choices, neckline=neck(NeckFinish.FACING))
    names = [{length.name for length, _ in chosen_lengths(named_all(one))} for one in (choices, faced)]
    assert [("band_width" in told, "neckline_facing_width" in told) for told in names] == [(True, False), (False, True)]


def named_all(choices: object) -> object:
    """With every length named, as a docket does."""
    from tapeline.docket.choices import named

    return named(choices)


def test_the_corner_of_a_boat_neck_is_meant_and_told() -> None:
    """It bends at the shoulder by far more than a seam swallows, is no finding, and says why."""
    truing = trued(drawn(NeckFinish.FACING, "boat"))
    (join,) = (join for join in truing.joins if join.line == "neckline")
    assert abs(math.degrees(join.bend)) > 10
    assert "wave" in join.meant
    assert "join-bends" not in {finding.code for finding in truing.findings}


def test_a_boat_neck_is_wide_and_shallow() -> None:
    """Wider by 4 cm at each shoulder than chosen, higher in front than the neck, and without a wave.

    Common practice, no source.
    """
    plain, boat = drawn(NeckFinish.HEM), drawn(NeckFinish.HEM, "boat")
    ends = [garment.points["front.neckline_shoulder"] for garment in (plain, boat)]
    assert ends[0].distance_to(ends[1]) == pytest.approx(40)
    assert boat.points["front.neckline_centre"].y > plain.points["front.neckline_centre"].y + 20
    assert "neckline-wave" not in {finding.code for finding in trued(boat).findings}


def test_a_square_neck_has_one_corner_and_runs_on_over_the_shoulder() -> None:
    """Level from the centre, a corner of a little more than a right angle, straight up; the back goes on from there."""
    garment = drawn(NeckFinish.FACING, "square")
    across, up = garment.piece("front").edge("neckline").path.segments
    assert across.direction(0).y == pytest.approx(0)
    assert 84 < math.degrees(across.direction(1).turn_to(up.direction(0))) < 90
    (join,) = (join for join in trued(garment).joins if join.line == "neckline")
    assert abs(math.degrees(join.bend)) < 1e-6
    assert not join.meant


@pytest.mark.parametrize(("shape", "key"), [("boat", "widen"), ("round", "lower_front")])
def test_the_hint_for_a_head_that_does_not_pass_mends_it(shape: str, key: str) -> None:
    """A boat neck is widened, for lowering it gives little; a round one is lowered: once, and the head passes."""
    wearer = NOOR.with_tape("head_girth", 600)
    line = replace(neck(NeckFinish.FACING, shape), facing=FacingChoices(cm(3), 8), widen=cm(0.5))

    def found(line: FinishedNeckline) -> list[Problem]:
        garment = draw(wearer, "tee", "slight", neckline=line)
        findings = true(garment, wearer, Cloth(), meaning={}, pull_on=True).findings
        return [finding for finding in findings if finding.code == "head-does-not-pass"]

    (finding,) = found(line)
    assert finding.change is not None
    assert finding.change[0] == f"garment.neckline.{key}"
    more = Length(finding.change[1])
    mended = (
        replace(line, widen=line.widen + more) if key == "widen" else replace(line, lower_front=line.lower_front + more)
    )
    assert found(mended) == []
