"""Hems and vents: as long as is said, fair over the side seam, and sewn only as far as the slit leaves."""

from __future__ import annotations

import math
from typing import Any

import pytest

from tapeline.blocks.hems import HEM_SHAPES, HemChoices, HemShape
from tapeline.draft import Draft
from tapeline.finish import FinishChoices, Title, finish, turn_up_doubts
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, EdgeKind, Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tapeline.truing import true
from tests.properties.drafts import draw, style_choices

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)
TITLE = Title("tee.toml", "Noor", "tee", "", "")
SHAPES = pytest.mark.parametrize("shape", HEM_SHAPES)


def tee(length: float = 8, shape: str | HemShape = "straight", vent: float = 0, **changes: Any) -> Garment:
    """A tee with such a hem; lengths in cm."""
    form = HEM_SHAPES[shape] if isinstance(shape, str) else shape
    return draw(NOOR, "tee", "slight", length=cm(length), hem=HemChoices(form, cm(vent)), **changes)


def corner(garment: Garment, half: str, one: str) -> float:
    """The angle inside a half where its hem meets another edge, in degrees."""
    return math.degrees(garment.piece(half).corner(one, "hem")[1])


@SHAPES
@pytest.mark.parametrize("vent", [5, 12])
def test_a_hem_meets_its_vent_square(shape: str, vent: float) -> None:
    """Turned back, the corner of a slit is a right angle: common practice, no source."""
    garment = tee(14, shape, vent)
    for half in ("back", "front"):
        assert corner(garment, half, "vent") == pytest.approx(90, abs=1e-6)


@SHAPES
@pytest.mark.parametrize("flare", [0, 4])
def test_a_hem_runs_on_over_the_side(shape: str, flare: float) -> None:
    """Without a vent, front and back hem are one line when the side is sewn; both sides are as long."""
    if shape == "stepped":
        pytest.skip("its hems end at a vent")
    garment = tee(12, shape, flare=cm(flare))
    assert sum(corner(garment, half, "side") for half in ("back", "front")) == pytest.approx(180, abs=1e-6)
    back, front = (garment.piece(half).edge("side").length for half in ("back", "front"))
    assert back == pytest.approx(front, abs=1e-6)


@pytest.mark.parametrize("rise", [2, 6, 10])
def test_a_curved_hem_is_so_much_higher_at_the_side(rise: float) -> None:
    """The centres stay where they are, the side ends higher, and the line turns once on its way."""
    plain, curved = tee(12), tee(12, HemShape(rise=cm(rise)))
    for half in ("back", "front"):
        was, now = plain.points, curved.points
        assert now[f"{half}.hem_centre"] == was[f"{half}.hem_centre"]
        assert now[f"{half}.side_hem"].y - was[f"{half}.side_hem"].y == pytest.approx(10 * rise, abs=1e-6)


@pytest.mark.parametrize(("shape", "vent", "at_the_side"), [("high-low", 0, 0), ("high-low", 6, 0), ("stepped", 6, 40)])
def test_a_longer_back_is_as_much_longer_as_was_chosen(shape: str, vent: float, at_the_side: float) -> None:
    """A sweep starts level at the side; a step is one all along. The front is that of a straight hem."""
    plain, longer = tee(8), tee(8, shape, vent)
    meant = HEM_SHAPES[shape].back_lower.mm + HEM_SHAPES[shape].back_longer.mm
    assert plain.points["back.hem_centre"].y - longer.points["back.hem_centre"].y == pytest.approx(meant)
    assert plain.points["back.side_hem"].y - longer.points["back.side_hem"].y == pytest.approx(at_the_side, abs=1e-6)
    assert longer.points["front.hem_centre"] == plain.points["front.hem_centre"]


def test_a_side_is_sewn_down_to_its_vent() -> None:
    """Vent and seam are together the whole side; a notch on both halves says where to stop."""
    plain, slit = tee(12), tee(12, vent=10)
    for half in ("back", "front"):
        piece = slit.piece(half)
        assert piece.edge("vent").length == pytest.approx(100, abs=1e-6)
        assert piece.edge("side").length + 100 == pytest.approx(plain.piece(half).edge("side").length, abs=1e-6)
        assert piece.notches_on("side")[-1].at_mm == pytest.approx(piece.edge("side").length, abs=1e-6)
        assert piece.edge("vent").kind is EdgeKind.VENT
    assert all("vent" not in f"{seam.a}{seam.b}" for seam in slit.seams)


def test_the_corner_of_a_vent_is_cut_for_a_mitre() -> None:
    """Folded about both edges, the ends of the cut across the corner lie on each other: the stitches meet.

    Both lie a seam's width further out than the mitre line, which runs from one cut line through the corner to the
    other (school geometry: two reflections about lines at right angles turn by half a circle).
    """
    choices = FinishChoices(hem_mm=25)
    finished = finish(tee(12, vent=10), choices, TITLE)
    back = next(one for one in finished.pieces if one.piece.name == "back")
    place = back.piece.corner("vent", "hem")[0]
    low = [k for k in back.cut_line.knots if k.y < place.y + 30 and k.x > place.x - 30]
    on_vent = next(k for k in low if abs(k.x - place.x - 15) < 0.01 and k.y < place.y + 25)
    on_hem = next(k for k in low if abs(k.y - place.y + 25) < 0.05)
    # In the axes of the corner the mitre runs from (15, 25) through (0, 0) to (-15, -25).
    for knot in (on_vent, on_hem):
        x, y = knot.x - place.x, knot.y - place.y
        assert (25 * x - 15 * y) / math.hypot(15, 25) == pytest.approx(6, abs=0.05)
    assert any("mitre" in row for row in back.words)


def test_a_curve_is_not_turned_up_wide() -> None:
    """A hem of radius r, turned up by w, has a raw edge longer by 2 w / r than where it lies (school geometry)."""
    curved = tee(12, "curved")
    most = 0.25 / 2 / max(map(abs, curved.piece("back").edge("hem").path.curvatures()))
    for width, said in ((most - 0.2, False), (most + 0.2, True)):
        found = [problem.where for problem in turn_up_doubts(curved, FinishChoices(hem_mm=width))]
        assert ("back.hem" in found) == said
    assert not list(turn_up_doubts(tee(12), FinishChoices()))


@pytest.mark.parametrize(
    ("length", "reached"), [(3, "chest waist hip"), (0, "chest waist hip"), (-10, "chest waist"), (-24, "chest")]
)
def test_a_cropped_top_has_only_the_girths_it_reaches(length: float, reached: str) -> None:
    """A girth below the hem is none of the garment's; what is left is as it was meant."""
    garment = tee(length)
    assert [girth.name for girth in garment.girths if girth.name != "upper_arm"] == reached.split()
    assert true(garment, NOOR, Cloth(), meaning={}, pull_on=True).holds


@pytest.mark.parametrize("length", [-28, -20, -12, -4])
def test_a_cropped_hem_is_one_arc(length: float) -> None:
    """Square to the slanting side and to the fold, bent one way only: the chord turns half as much as the arc."""
    back = tee(length).piece("back").edge("hem").path
    bends = back.curvatures()
    assert min(bends) * max(bends) >= -1e-9
    slant = abs(back.leaves.turn_to(back.arrives))
    chord = (back.end - back.start).unit
    assert abs(back.leaves.turn_to(chord)) == pytest.approx(slant / 2, abs=1e-6)


def test_a_flare_just_below_the_hip_does_not_turn_the_side_back() -> None:
    """Where the arc of the hem would meet the flare above the hip, it meets the side on its way there."""
    side = tee(1, flare=cm(0.5)).piece("back").edge("side").path
    heights = [point.y for point in side.flattened(0.1)]
    assert heights == sorted(heights, reverse=True)


@pytest.mark.parametrize(
    ("code", "length", "shape", "vent"),
    [
        ("hem-too-high", -34, "straight", 0),
        ("hem-too-steep", 40, HemShape(rise=cm(15), back_lower=cm(15)), 0),
        ("step-without-vent", 8, "stepped", 0),
        ("vent-too-long", -10, "straight", 20),
    ],
)
def test_what_cannot_be_sewn_is_refused(code: str, length: float, shape: str | HemShape, vent: float) -> None:
    """By name, with what to change."""
    with pytest.raises(InputError) as refusal:
        tee(length, shape, vent)
    assert [problem.code for problem in refusal.value.problems] == [code]


@pytest.mark.parametrize(("vent", "said"), [(10, False), (30, True)])
def test_a_vent_above_the_waist_is_said(vent: float, said: bool) -> None:
    """It shows the body, and the seam takes the strain."""
    d = Draft(NOOR, {})
    choices = style_choices("tee", "slight", length=cm(8), hem=HemChoices(vent=cm(vent)))
    STYLES["tee"].page(d, choices, surveyed=True)
    assert ("vent-high" in {note.code for note in d.notes}) == said


@pytest.mark.parametrize("length", [0, -8, -18])
def test_a_cropped_sweatshirt_ends_in_its_band(length: float) -> None:
    """The folded band and the body are together as long as was chosen, and all that truing looks at holds."""
    garment = draw(NOOR, "sweatshirt", "easy", length=cm(length))
    points, band = garment.points, garment.piece("hem_band").edge("centre_back").length / 2
    assert points["back.hip_level"].y - points["back.hem_centre"].y + band == pytest.approx(10 * length, abs=1e-6)
    assert true(garment, NOOR, Cloth(), meaning={}, pull_on=True).holds


@pytest.mark.parametrize("style", [name for name, style in STYLES.items() if hasattr(style.choices(), "hem")])
def test_every_style_with_a_turned_up_hem_has_shapes_and_vents(style: str) -> None:
    """Curved, stepped and slit, cropped and long: truing finds everything in order."""
    for length, shape in ((-12, "straight"), (14, "curved"), (30, "stepped")):
        hem = HemChoices(HEM_SHAPES[shape], cm(8))
        garment = draw(NOOR, style, "easy", length=cm(length), hem=hem)
        truing = true(garment, NOOR, Cloth(), meaning={}, pull_on=False)
        assert truing.holds, [str(problem) for problem in truing.findings]
        assert all(corner(garment, half, "vent") == pytest.approx(90, abs=1e-6) for half in ("back", "front"))
