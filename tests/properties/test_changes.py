"""What a changed tape, another unit or another body may do to a draft."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.docket import docket_from_text
from tapeline.draft import Draft
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tests.properties.drafts import draw, examples
from tests.wearers import LIMIT_WEARERS, random_wearers, wearers

MOST_MM = 10.0
"""So far may anything move for a millimetre of tape: further, and the draft hangs on a thread there."""


def moved(before: Garment, after: Garment) -> dict[str, float]:
    """How far every point and line moved, mm."""
    found = {label: point.distance_to(after.points[label]) for label, point in before.points.items()}
    for label, path in before.lines.items():
        other = after.lines[label]
        steps = [p.distance_to(q) for p, q in zip(path.control_points(), other.control_points(), strict=True)]
        found[f"line {label}"] = max(steps)
    return found


@pytest.mark.slow
@examples(60)
@given(wearers(), st.sampled_from(["tee", "block"]), st.booleans())
def test_a_millimetre_of_tape_moves_nothing_far(wearer: Wearer, style: str, surveyed: bool) -> None:
    """A tape that is a millimetre longer moves no point and no line by more than ten."""
    before = draw(wearer, style, surveyed=surveyed)
    for tape in wearer.tapes:
        after = draw(wearer.with_tape(tape, wearer[tape] + 1), style, surveyed=surveyed)
        far = {label: mm for label, mm in moved(before, after).items() if mm > MOST_MM}
        assert not far, f"{tape}: {far}"


@pytest.mark.slow
@pytest.mark.parametrize("wearer", LIMIT_WEARERS, ids=lambda w: w.name)
def test_a_millimetre_moves_nothing_far_on_odd_bodies(wearer: Wearer) -> None:
    """The same holds where rules are near their end."""
    try:
        before = draw(wearer)
    except InputError as refusal:
        pytest.skip(f"refused, which is tested elsewhere: {refusal.problems[0].code}")
    for tape in wearer.tapes:
        far = {
            label: mm for label, mm in moved(before, draw(wearer.with_tape(tape, wearer[tape] + 1))).items() if mm > 10
        }
        assert not far, f"{tape}: {far}"


def docket(wearer: Wearer, unit: str, mm: float) -> str:
    """A docket of the wearer in a unit."""
    tapes = "\n".join(f"{name} = {value / mm!r}" for name, value in wearer.tapes.items())
    return f'[wearer]\nname = "Invented"\nfigure = "{wearer.figure}"\nunit = "{unit}"\n[wearer.tapes]\n{tapes}\n'


@examples(30)
@given(wearers())
def test_centimetres_and_inches_give_the_same_draft(wearer: Wearer) -> None:
    """The same body taped in inches gets the same garment."""
    garments = []
    for unit, mm in (("cm", 10.0), ("inch", 25.4)):
        read = docket_from_text(docket(wearer, unit, mm))
        garments.append(read.style.page(Draft(read.wearer, read.by_hand), read.choices, surveyed=read.surveyed))
    # A ten-thousandth of a millimetre: what is solved stops at 1e-7.
    assert max(moved(*garments).values()) < 1e-4


@pytest.mark.slow
@pytest.mark.parametrize(("figure", "people"), [(Figure.WOMAN, 500), (Figure.MAN, 200)])
@pytest.mark.parametrize(
    ("style", "looseness", "surveyed"),
    [("tee", "slight", True), ("tee", "loose", False), ("block", "close", False)],
)
def test_nearly_everybody_can_be_drafted(
    figure: Figure, people: int, style: str, looseness: str, surveyed: bool
) -> None:
    """At least 99 of 100 random wearers are drafted, whichever the style, the looseness and the frame."""
    refused = []
    for wearer in random_wearers(figure, people, seed=7):
        try:
            draw(wearer, style, looseness, surveyed=surveyed)
        except InputError as refusal:
            refused.append(str(refusal.problems[0]))
    assert len(refused) <= people / 100, "\n".join(refused)


def test_a_body_a_tenth_larger_gets_levels_and_quarters_a_tenth_larger() -> None:
    """Lengths that are proportional in the method scale with the body: levels, quarters, neck width, shoulder.

    The whole draft does not, because the rules add constants (armhole depth C/4 - 1, back width C/6 + 3).
    """
    wearer = LIMIT_WEARERS[3]
    larger = Wearer("larger", wearer.figure, {name: value * 1.1 for name, value in wearer.tapes.items()})
    small, large = (
        {size.name: size.length.mm for size in draw(w, "block", "close", surveyed=False).sizes}
        for w in (wearer, larger)
    )
    for name in ("chest_quarter", "hip_quarter", "neck_width"):
        assert large[name] == pytest.approx(1.1 * small[name], rel=1e-12), name
    for name, constant_mm in (("armhole_depth", -10), ("half_back_width", 30), ("half_chest_width", 25)):
        assert large[name] - constant_mm == pytest.approx(1.1 * (small[name] - constant_mm), rel=1e-12), name


def test_the_figure_changes_only_the_front_of_a_block_by_rule() -> None:
    """By rule alone a man and a woman of the same tapes get the same back; only her front hem is lower."""
    man = LIMIT_WEARERS[-2]
    tapes = {("bust" if name == "chest" else name): value for name, value in man.tapes.items()}
    woman = Wearer("the same", Figure.WOMAN, tapes)
    his, hers = (
        draw(w.with_tape("wrist", 170).with_tape("upper_arm", 300), "block", surveyed=False) for w in (man, woman)
    )
    for label, point in his.points.items():
        if label != "front.hem_centre":
            assert point.distance_to(hers.points[label]) < 1e-6, label
    lower = his.points["front.hem_centre"].y - hers.points["front.hem_centre"].y
    expected = max(0.0, 20 + (tapes["bust"] - tapes["upper_chest"] - 20) / 2)
    assert lower == pytest.approx(expected, abs=1e-9)
