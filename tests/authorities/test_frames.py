"""The two frames and the constants between them, against the survey that the project carries."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.blocks.frame import NECK_EASE
from tapeline.lengths import cm
from tapeline.measures import WOMEN_INTERVALS, Figure, Wearer, required_tapes, size_wearer
from tapeline.styles.top import NecklineChoices
from tapeline.truing.opening import LOWERING_GIVES
from tests.properties.drafts import draw
from tests.properties.measuring import length
from tests.wearers import random_wearers, survey

MIDDLE = {Figure.WOMAN: 860.0, Figure.MAN: 1020.0}
"""Upper chests at which the frames are made to agree."""
FRAME = ("armhole_depth", "half_back_width", "half_chest_width", "neck_width")


def middle(figure: Figure) -> Wearer:
    """The survey's mean wearer of the middle upper chest."""
    means = survey(figure).conditional({"upper_chest": MIDDLE[figure]})
    names = [tape.name for tape in required_tapes(figure)]
    return Wearer("middle", figure, {n: means[n].mm if n in means else MIDDLE[figure] for n in names})


def frame(wearer: Wearer, *, surveyed: bool) -> dict[str, float]:
    """Sizes of the frame, mm."""
    return {s.name: s.length.mm for s in draw(wearer, "block", "close", surveyed=surveyed).sizes if s.name in FRAME}


def neckline(wearer: Wearer, lower_cm: float | None = None) -> float:
    """The whole neckline of a block by rule, or of a tee lowered at the front, mm."""
    if lower_cm is None:
        garment = draw(wearer, "block", "close", surveyed=False)
    else:
        garment = draw(wearer, "tee", "slight", neckline=replace(NecklineChoices(), lower_front=cm(lower_cm)))
    return 2 * sum(length(garment.piece(half).edge("neckline").path) for half in ("back", "front"))


@pytest.mark.parametrize("figure", MIDDLE)
def test_both_frames_agree_at_the_middle_size(figure: Figure) -> None:
    """For the survey's mean wearer of the middle upper chest both frames give the same sizes, to half a millimetre."""
    by_survey, by_rule = (frame(middle(figure), surveyed=surveyed) for surveyed in (True, False))
    assert by_survey == pytest.approx(by_rule, abs=0.5)


def test_away_from_the_middle_the_frames_part_as_bodies_do() -> None:
    """At an upper chest of 105 the rule cuts the armhole deeper than the survey expects, at 75 less deep.

    Computed from the survey: per 4 cm of bust real women's armhole depth grows by 0.34 cm, the rule's by about 0.9.
    """
    depths = {}
    for size in ("76", "110"):
        wearer = size_wearer(size)
        depths[size] = frame(wearer, surveyed=False)["armhole_depth"] - frame(wearer, surveyed=True)["armhole_depth"]
    assert depths["76"] < -5
    assert depths["110"] > 10


def test_the_ease_of_the_neckline_is_that_of_the_rule_over_the_survey() -> None:
    """At the middle size the rule's neckline is the expected neck and NECK_EASE, to half a millimetre."""
    wearer = middle(Figure.WOMAN)
    neck = survey(Figure.WOMAN).expect("neck", {"upper_chest": MIDDLE[Figure.WOMAN]}).mm
    assert neckline(wearer) - neck == pytest.approx(NECK_EASE.mm, abs=0.5)


@pytest.mark.parametrize("size", [interval.label for interval in WOMEN_INTERVALS["bust"]])
def test_lowering_the_front_opens_the_neck_as_the_hint_says(size: str) -> None:
    """From 1 to 8 cm lower, each size's neckline grows by LOWERING_GIVES for each unit, within a tenth of it."""
    wearer = size_wearer(size)
    start = neckline(wearer, 1)
    for lower in (3, 5, 8):
        grown = (neckline(wearer, lower) - start) / ((lower - 1) * 10)
        assert grown == pytest.approx(LOWERING_GIVES, rel=0.1)


@pytest.mark.slow
def test_expected_depths_are_right_on_average() -> None:
    """Over random women the survey's armhole depth is their own, eased: right on average, spread as computed (1.05 cm).

    The residual spread, predicted from all eight tapes, is computed from 2,208 women.
    """
    off = []
    for wearer in random_wearers(Figure.WOMAN, 100, seed=5, optional=("armhole_depth",)):
        eight = {name: value for name, value in wearer.tapes.items() if name != "armhole_depth"}
        guessed = frame(Wearer("guessed", Figure.WOMAN, eight), surveyed=True)["armhole_depth"]
        off.append(guessed - frame(wearer, surveyed=True)["armhole_depth"])
    mean = sum(off) / len(off)
    spread = (sum((o - mean) ** 2 for o in off) / len(off)) ** 0.5
    assert abs(mean) < 2.5
    assert spread == pytest.approx(10.5, abs=1.5)
