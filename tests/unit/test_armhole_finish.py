"""How an armhole without a sleeve is finished: what is drawn for each word, and what is cut back for it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.blocks.armhole_finish import ArmholeFinish, ArmholeFinishChoices
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neckband import BindingChoices
from tapeline.finish import FinishChoices, Title, finish
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError, Severity
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
BOUND = FinishedNeckline(widen=cm(2.5), lower_front=cm(4), lower_back=cm(2), finish=NeckFinish.BINDING)


def vest(finish: ArmholeFinish, wearer: Wearer = NOOR, **numbers: object) -> Garment:
    """A vest top with a bound neck, its armholes finished in a way."""
    armhole = ArmholeFinishChoices(finish, **numbers)  # type: ignore[arg-type]  # widths by name
    return draw(wearer, "vest", "slight", neckline=BOUND, armhole=armhole)


@pytest.mark.parametrize("way", ArmholeFinish)
def test_every_finish_is_trued_and_cut(way: ArmholeFinish) -> None:
    """Seams fit, lines run on over them, every cut line closes."""
    garment = vest(way)
    assert not broken(Drawing(NOOR, "vest", "slight", True, garment, frozenset()))
    findings = true(garment, NOOR, Cloth(), meaning={}, pull_on=True).findings
    assert not [finding for finding in findings if finding.severity is Severity.ERROR]
    assert len(finish(garment, FinishChoices(), Title("", "", "", "", "")).pieces) == len(garment.pieces)


@pytest.mark.slow
@pytest.mark.parametrize("way", ArmholeFinish)
def test_everything_holds_for_random_wearers(way: ArmholeFinish) -> None:
    """The invariants of every style, for women and men as the survey met them."""
    count = max(4, examples(60).max_examples)
    said = frozenset({"bust-wants-dart", "shoulder-inside-back"})
    for wearer in (*random_wearers(Figure.WOMAN, count, 12), *random_wearers(Figure.MAN, count, 12)):
        assert not broken(Drawing(wearer, "vest", "slight", True, vest(way, wearer), said))


def test_a_facing_is_as_wide_as_it_says_along_the_armhole() -> None:
    """Within 2 mm of 3 cm, by the nearest places of both lines; along shoulder and side exactly."""
    for wearer in (NOOR, *random_wearers(Figure.MAN, 3, 4)):
        garment = vest(ArmholeFinish.FACING, wearer)
        for half in ("front", "back"):
            facing = garment.piece(f"{half}_armhole_facing")
            outer, armhole = facing.edge("outer").path, garment.piece(half).edge("armhole").path
            offs = [armhole.distance_to(outer.at(outer.length * share / 20)) for share in range(21)]
            assert min(offs) > 28
            assert max(offs) < 32
            assert [facing.edge(name).length for name in ("shoulder", "side")] == pytest.approx([30, 30], abs=1e-6)


def test_what_lies_inside_the_armhole_is_cut_off_the_body() -> None:
    """A band of 1.5 and a binding of 0.8 take their width off the shoulder; facing and hem take nothing."""
    whole = vest(ArmholeFinish.HEM).piece("back").edge("shoulder").length
    taken = [whole - vest(way).piece("back").edge("shoulder").length for way in ArmholeFinish]
    assert dict(zip(map(str, ArmholeFinish), taken, strict=True)) == pytest.approx(
        {"band": 15, "binding": 8, "facing": 0, "hem": 0}, abs=1e-6
    )


def test_a_bound_and_a_hemmed_armhole_have_their_own_allowance() -> None:
    """As wide as the binding, as deep as the hem; all other seams as chosen."""
    for way, numbers, width in (
        (ArmholeFinish.BINDING, {"binding": BindingChoices(cm(0.7))}, 7),
        (ArmholeFinish.HEM, {"hem": cm(1.2)}, 12),
    ):
        done = finish(vest(way, **numbers), FinishChoices(15), Title("", "", "", "", "")).pieces
        front = dict(next(one for one in done if one.piece.name == "front").allowances)
        assert (front["armhole"], front["shoulder"]) == (width, 15)


@pytest.mark.parametrize(("stretch", "least"), [(20, 0.93), (50, 0.88)])
def test_a_binding_is_nine_tenths_to_nineteen_twentieths(stretch: float, least: float) -> None:
    """0.90 to 0.95 of the armhole: from memory of trade handbooks; its shape may make it a little shorter."""
    garment = vest(ArmholeFinish.BINDING, binding=BindingChoices(cm(0.5), stretch))
    (seam,) = (seam for seam in garment.seams if seam.name == "armhole")
    assert least < garment.run_length(seam.a) / garment.run_length(seam.b) <= 0.95


def test_two_facings_need_room_on_the_shoulder() -> None:
    """Neck and armhole faced over a narrow strap is refused, with what to do; over a wide one it is drawn."""
    faced = replace(BOUND, finish=NeckFinish.FACING, facing=replace(BOUND.facing, width=cm(4)))
    armhole = ArmholeFinishChoices(ArmholeFinish.FACING)
    with pytest.raises(InputError) as refused:
        draw(NOOR, "vest", "slight", neckline=faced, armhole=armhole, shoulder_narrower=cm(3))
    assert [problem.code for problem in refused.value.problems] == ["facing-too-wide"]
    assert "bind or hem" in refused.value.problems[0].hint
    made = draw(NOOR, "vest", "slight", neckline=faced, armhole=armhole, shoulder_narrower=cm(0.5))
    assert len(made.pieces) == 6
