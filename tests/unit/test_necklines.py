"""Shapes of a neckline: how deep and how full, always one sweep, and said where it cannot be."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest

from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.neckband import BandChoices
from tapeline.docket import docket_from_text
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError, Problem, Severity
from tapeline.project import draft
from tapeline.styles.top import NecklineChoices
from tapeline.truing import true
from tapeline.truing.waves import turned
from tests.properties.drafts import Drawing, draw, examples
from tests.properties.invariants import broken
from tests.wearers import CHILDREN, random_wearers

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)
V = NecklineChoices(NECK_SHAPES["v"], cm(2), cm(3), cm(1.5))
SCOOP = NecklineChoices(NECK_SHAPES["scoop"], cm(2.5), cm(3), cm(1.5))


def true_of(garment: Garment) -> tuple[Problem, ...]:
    """What truing finds."""
    return true(garment, NOOR, Cloth(), meaning={}, pull_on=True).findings


def codes(garment: Garment) -> dict[str, Severity]:
    """How bad each of it is."""
    return {finding.code: finding.severity for finding in true_of(garment)}


def test_a_scoop_is_half_as_deep_again_and_fuller() -> None:
    """Deeper by half the neck's own depth, which is its width and 1 cm; at half depth it is nearer to its corner.

    Common practice, no source, for both.
    """
    plain = draw(NOOR, "tee", "slight", neckline=NecklineChoices(widen=cm(2)))
    scoop = draw(NOOR, "tee", "slight", neckline=NecklineChoices(NECK_SHAPES["scoop"], widen=cm(2)))
    width = next(s.length.mm for s in scoop.sizes if s.name == "neck_width")
    depths = [g.points["front.neckline_shoulder"].y - g.points["front.neckline_centre"].y for g in (plain, scoop)]
    assert depths[1] - depths[0] == pytest.approx((width + 10) / 2, abs=1e-6)
    shares = []
    for garment in (plain, scoop):
        corner, guide, inner = (
            garment.points[f"front.neckline_{name}"] for name in ("outer_corner", "guide", "inner_corner")
        )
        shares.append(guide.distance_to(corner) / inner.distance_to(corner))
    assert shares[1] < shares[0] < Fraction(1, 3)


@pytest.mark.slow
@pytest.mark.parametrize("line", [SCOOP, V], ids=["scoop", "v"])
def test_everything_holds_of_a_shape(line: NecklineChoices) -> None:
    """One sweep without a wave, square to the folds but for the point, over a straight join, on women and men."""
    count = max(5, examples(100).max_examples)
    for wearer in (*random_wearers(Figure.WOMAN, count), *random_wearers(Figure.MAN, count)):
        garment = draw(wearer, "tee", "slight", neckline=line)
        said = frozenset({"bust-wants-dart", "shoulder-inside-back"})
        assert not broken(Drawing(wearer, "tee", "slight", True, garment, said))


def test_the_quick_scoop_of_a_child_holds() -> None:
    """A child's scoop, by rule alone."""
    child = CHILDREN[2].with_tape("wrist", 140).with_tape("upper_arm", 200)
    garment = draw(child, "tee", "slight", surveyed=False, neckline=SCOOP)
    assert not broken(Drawing(child, "tee", "slight", False, garment, frozenset()))


@pytest.mark.parametrize(("widen", "lower_front", "said"), [(2.5, 3, False), (7, 0, True), (0, 15, True)])
def test_a_wave_is_said(widen: float, lower_front: float, said: bool) -> None:
    """A neckline too wide for its depth, or too deep for its width, is a doubt; a good one is nothing."""
    line = NecklineChoices(widen=cm(widen), lower_front=cm(lower_front), lower_back=cm(0.5))
    found = codes(draw(NOOR, "tee", "slight", neckline=line))
    assert (found.get("neckline-wave") is Severity.DOUBT) == said


def test_a_neckline_that_leaves_no_shoulder_is_refused() -> None:
    """A child's shoulder is shorter than 8 cm and what a seam needs."""
    child = CHILDREN[0].with_tape("wrist", 120).with_tape("upper_arm", 160)
    with pytest.raises(InputError) as refused:
        draw(child, "tee", "slight", surveyed=False, neckline=NecklineChoices(widen=cm(8)))
    assert [p.code for p in refused.value.problems] == ["neckline-too-wide"]


def test_a_v_is_straight_at_its_point() -> None:
    """No bend at the point; from there it turns by little more than a degree in its lower half, and only one way."""
    path = draw(NOOR, "tee", "slight", neckline=V).piece("front").edge("neckline").path
    assert path.curvatures()[0] == pytest.approx(0, abs=1e-6)
    assert abs(math.degrees(path.leaves.turn_to(path.direction_at(path.length / 2)))) < 4
    assert min(turned(path)) < math.radians(0.5)


@pytest.mark.parametrize("width", [1.2, 2, 3])
def test_a_mitred_band_meets_over_the_point(width: float) -> None:
    """The finished band's folded edge ends on the centre line, where the line a band's width inside the v meets it.

    Worked out by trigonometry: the mitre halves the angle between band and band, and that is the v's own angle.
    """
    garment = draw(NOOR, "tee", "slight", neckline=V, band=BandChoices(width=cm(width)))
    way, band = garment.piece("front").edge("neckline").path.leaves, garment.piece("neckband")
    from_centre = math.atan2(way.x, way.y)
    mitre = band.edge("mitre").path
    assert mitre.length == pytest.approx(10 * width / math.sin(from_centre), abs=1e-6)
    assert band.edge("neckline").path.arrives.turn_to(mitre.leaves) == pytest.approx(from_centre - math.pi, abs=1e-9)
    assert band.edge("mitre_turned").length == pytest.approx(mitre.length, abs=1e-9)
    assert "front.neckline" not in {finding.where for finding in true_of(garment)}


def test_a_band_too_wide_for_its_v_is_refused() -> None:
    """A v so deep and narrow that the mitre would reach the shoulder."""
    narrow = NecklineChoices(NECK_SHAPES["v"], cm(0), cm(9), cm(0))
    with pytest.raises(InputError) as refused:
        draw(NOOR, "tee", "slight", neckline=narrow, band=BandChoices(width=cm(9)))
    assert [p.code for p in refused.value.problems] == ["band-too-wide-for-v"]


def test_a_neckline_down_to_the_chest_line_is_refused() -> None:
    """As deep as the chest line, and no girth is left there; a centimetre higher it is drawn."""
    text = (
        'wearer = {{ figure = "woman", size = "80" }}\n'
        'garment = {{ style = "vest", neckline = {{ shape = "scoop", lower_front = {} }} }}\n'
    )
    with pytest.raises(InputError) as refused:
        draft(docket_from_text(text.format(15), "deep.toml"))
    assert [problem.code for problem in refused.value.problems] == ["neckline-past-chest"]
    assert draft(docket_from_text(text.format(6), "less.toml")).holds
