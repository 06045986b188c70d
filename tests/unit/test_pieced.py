"""Yoke and colour block: the garment is cut apart and sewn together again, and is as large and as true as before."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.button_band import BAND_CLOSURES
from tapeline.blocks.hems import HemChoices, HemFinish
from tapeline.blocks.parts import YOKES, ColourBlockChoices, PanelChoices, YokeChoices, YokeShape
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.finish import FinishChoices, Title, finish
from tapeline.geometry import area
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment, NotchKind
from tapeline.problems import InputError
from tapeline.truing import true
from tests.corrections import correction
from tests.properties.drafts import draw, examples, taped_children
from tests.wearers import wearers

TAPES = {
    "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
    "hip_depth": 200, "arm_length": 570,
}  # fmt: skip
NOOR = Wearer("Noor", Figure.WOMAN, TAPES)
TITLE = Title("tee.toml", "Noor", "tee", "", "")
STRAIGHT = pytest.mark.parametrize(
    "style", ["tee", "vest", "sweatshirt", "hooded", "shirt", "polo", "cardigan", "zipped"]
)
"""Styles whose shoulder is one straight line."""

REFUSALS = {"yoke-too-shallow", "yoke-too-deep", "yoke-past-neckline", "block-past-side"}


def made(style: str = "tee", yoke: str | YokeShape = "none", below: float = 0, wearer: Wearer = NOOR) -> Garment:
    """A garment with such a yoke, and a block so many cm below the underarm."""
    shape = YOKES[yoke] if isinstance(yoke, str) else yoke
    chosen: dict[str, Any] = {"yoke": YokeChoices(shape), "colour_block": ColourBlockChoices(cm(below))}
    return draw(wearer, style, "slight", **chosen)


def cloth(garment: Garment, *names: str) -> float:
    """Area of some pieces together, mm2."""
    return sum(-area(garment.piece(name).seam_line) for name in names)


def holds(garment: Garment, wearer: Wearer = NOOR) -> bool:
    """Whether truing finds everything in order."""
    return true(garment, wearer, Cloth(), meaning={}, pull_on=False).holds


@STRAIGHT
@pytest.mark.parametrize("yoke", ["back", "shirt"])
@pytest.mark.parametrize("below", [0, 12])
def test_all_parts_are_together_the_whole(style: str, yoke: str, below: float) -> None:
    """Nothing is added and nothing lost: areas add up, every seam has its partner, each piece can be finished."""
    whole, cut = made(style), made(style, yoke, below)
    lower = ("back_lower", "front_lower") if below else ()
    assert cloth(cut, "back", "front", "yoke", *lower) == pytest.approx(cloth(whole, "back", "front"), rel=1e-9)
    assert holds(cut)
    assert len(finish(cut, FinishChoices(), TITLE).pieces) == len(cut.pieces)


@STRAIGHT
def test_a_yoke_over_the_shoulder_has_no_shoulder_seam(style: str) -> None:
    """Cut in one, on one fold; where the shoulder was, a mark answers that of band and sleeve."""
    whole, cut = made(style), made(style, "shirt")
    assert all(seam.name != "shoulder" for seam in cut.seams)
    yoke = cut.piece("yoke")
    assert sum(edge.fold for edge in yoke.edges) == 1
    shoulder = whole.piece("back").edge("neckline").length
    assert [n.at_mm for n in yoke.notches_on("neckline") if n.kind is NotchKind.CROWN] == [pytest.approx(shoulder)]
    (armhole,) = (n.at_mm for n in yoke.notches_on("armhole") if n.kind is NotchKind.CROWN)
    at, neck = yoke.edge("armhole").path.at(armhole), yoke.edge("neckline").path.at(shoulder)
    assert at.distance_to(neck) == pytest.approx(whole.piece("back").edge("shoulder").length, abs=1e-6)


def test_the_band_meets_the_mark_of_the_shoulder() -> None:
    """The band's notch lies in its share of the back neckline, on the yoke as on a sewn shoulder."""
    walks = {w.seam.name: w for w in true(made("tee", "shirt"), NOOR, Cloth(), meaning={}, pull_on=False).walks}
    shares = [a / b for a, b in walks["neckline"].parts]
    assert len(shares) == 3
    assert max(shares) - min(shares) < 1e-6


@pytest.mark.parametrize("depth", [9, 12, 15])
def test_a_back_yoke_is_as_deep_as_was_chosen(depth: float) -> None:
    """Its lower edge is level, so far below the nape; the back begins there."""
    cut = made(yoke=YokeShape(back=cm(depth)))
    nape = cut.points["back.nape"].y
    heights = {round(nape - point.y, 6) for point in cut.piece("yoke").edge("yoke_back").path.knots}
    assert heights == {10.0 * depth}
    assert max(point.y for point in cut.piece("back").seam_line.knots) == pytest.approx(nape - 10 * depth)


@pytest.mark.parametrize("wide", [2, 4, 6])
def test_a_front_yoke_is_as_wide_as_was_chosen(wide: float) -> None:
    """Its lower edge runs beside the shoulder, with and without a yoke at the back."""
    alone = made(yoke=YokeShape(front=cm(wide)))
    shoulder = alone.piece("front_yoke").edge("shoulder").path
    for knot in alone.piece("front_yoke").edge("yoke_front").path.knots:
        along = shoulder.leaves
        assert abs((knot - shoulder.start).cross(along)) == pytest.approx(10 * wide, abs=1e-6)
    joined = made(yoke=YokeShape(back=cm(11), front=cm(wide)))
    one, other = (g.piece(p).edge("yoke_front").length for g, p in ((alone, "front_yoke"), (joined, "yoke")))
    assert one == pytest.approx(other, abs=1e-6)


@pytest.mark.parametrize("below", [4, 15, 25])
def test_a_colour_block_is_level_all_round(below: float) -> None:
    """Back and front are cut so far below the underarm; the side seams of both parts meet where the blocks do."""
    cut = made(below=below)
    for half in ("back", "front"):
        underarm = cut.points[f"{half}.underarm"].y
        for knot in cut.piece(f"{half}_lower").edge(f"block_{half}").path.knots:
            assert underarm - knot.y == pytest.approx(10 * below, abs=1e-6)
    back, front = (cut.piece(half).edge("side").length for half in ("back", "front"))
    assert back == pytest.approx(front, abs=1e-6)
    assert {cut.piece(f"{half}_lower").cut.cloth for half in ("back", "front")} == {"contrast"}


def test_girths_are_what_they_were() -> None:
    """Round chest, waist and hip the pieced garment measures what the whole one does."""
    whole, cut = (true(g, NOOR, Cloth(), meaning={}, pull_on=False).girths for g in (made(), made("tee", "shirt", 14)))
    assert [girth.girth.name for girth in cut] == [girth.girth.name for girth in whole]
    assert [girth.garment_mm for girth in cut] == pytest.approx([girth.garment_mm for girth in whole])


@pytest.mark.parametrize(
    ("code", "style", "yoke", "below"),
    [
        ("yoke-too-shallow", "tee", YokeShape(back=cm(3)), 0),
        ("yoke-too-deep", "tee", YokeShape(back=cm(22)), 0),
        ("yoke-not-in-one", "dropped", "shirt", 0),
        ("block-near-underarm", "tee", "none", 1),
        ("block-past-side", "tee", "none", 45),
    ],
)
def test_what_cannot_be_sewn_is_refused(code: str, style: str, yoke: str | YokeShape, below: float) -> None:
    """By name, with the line of the docket to change."""
    with pytest.raises(InputError) as refusal:
        made(style, yoke, below)
    (problem,) = refusal.value.problems
    assert problem.code == code
    assert problem.where.startswith("garment.")


def test_a_block_keeps_off_a_hem_that_rises_over_a_sway_back() -> None:
    """Two centimetres above the side's end it would cross the hem before the fold, and leave a corner of the back."""
    sway = correction(sway_back=3.8)
    side = draw(NOOR, "tee", "slight", corrections=sway).piece("back").edge("side").path
    deep = (side.start.y - side.end.y) / 10
    with pytest.raises(InputError) as refusal:
        draw(NOOR, "tee", "slight", corrections=sway, colour_block=ColourBlockChoices(cm(deep - 2.1)))
    assert [problem.code for problem in refusal.value.problems] == ["block-past-side"]
    cut = draw(NOOR, "tee", "slight", corrections=sway, colour_block=ColourBlockChoices(cm(deep - 7)))
    assert cut.piece("back_lower").on_fold


def test_a_front_yoke_does_not_reach_the_centre() -> None:
    """Below the neckline of a child it would be pointed at the fold, and is refused by name."""
    with pytest.raises(InputError) as refusal:
        draw(taped_children()[0], surveyed=False, yoke=YokeChoices(YokeShape(front=cm(8))))
    assert [problem.code for problem in refusal.value.problems] == ["yoke-past-neckline"]


def test_a_front_yoke_runs_beside_a_shoulder_that_is_carried_down_the_arm() -> None:
    """The shoulder is bent; the yoke's edge is parallel to the straight line between its ends, as far off as chosen."""
    cut = made("dropped", YokeShape(front=cm(4)))
    shoulder, lower = (cut.piece("front_yoke").edge(name).path for name in ("shoulder", "yoke_front"))
    along = (shoulder.end - shoulder.start).unit
    for knot in lower.knots:
        assert abs((knot - shoulder.start).cross(along)) == pytest.approx(40, abs=1e-6)
    assert holds(cut)


@pytest.mark.slow
@examples(60)
@given(wearers((Figure.WOMAN, Figure.MAN)), st.sampled_from(["tee", "vest", "sweatshirt"]))
def test_everything_holds_when_pieced(wearer: Wearer, style: str) -> None:
    """A shirt's yoke and a block for random wearers: as large and as true as the whole, or refused by name."""
    whole = made(style, wearer=wearer)
    try:
        cut = made(style, "shirt", 12, wearer)
    except InputError as refusal:
        if {problem.code for problem in refusal.problems} <= REFUSALS:
            return
        raise
    parts = ("back", "front", "yoke", "back_lower", "front_lower")
    assert cloth(cut, *parts) == pytest.approx(cloth(whole, "back", "front"), rel=1e-9)
    assert holds(cut, wearer) == holds(whole, wearer)


@pytest.mark.parametrize("style", ["tee", "polo", "cardigan", "zipped", "raglan"])
def test_a_block_leaves_the_girths_as_they_were(style: str) -> None:
    """Cut across or whole, a garment is as wide round chest, waist and hip, bands and plackets counted."""
    block: dict[str, Any] = {"colour_block": ColourBlockChoices(cm(12))}
    whole, cut = draw(NOOR, style, "slight"), draw(NOOR, style, "slight", **block)
    found = [
        {one.girth.name: one.garment_mm for one in true(g, NOOR, Cloth(), meaning={}, pull_on=False).girths}
        for g in (whole, cut)
    ]
    assert found[0] == pytest.approx(found[1], abs=0.01)
    assert holds(cut)


@pytest.mark.parametrize("yoke", ["none", "back", "shirt"])
def test_a_cardigan_with_button_bands_is_pieced(yoke: str) -> None:
    """Its bands are sewn over the new seams, and it is as true as before."""
    chosen: dict[str, Any] = {"yoke": YokeChoices(YOKES[yoke]), "colour_block": ColourBlockChoices(cm(12))}
    cut = draw(NOOR, "cardigan", "slight", closure=BAND_CLOSURES["buttons"], **chosen)
    assert holds(cut)
    band = next(seam for seam in cut.seams if seam.name == "button_band")
    assert {ref.piece for ref in band.b} == {"front", "front_lower"}


def panelled(style: str, from_neck: float = 6, **changes: Any) -> Garment:
    """A garment with side panels."""
    return draw(NOOR, style, "easy", panel=PanelChoices(cm(from_neck)), **changes)


@STRAIGHT
@pytest.mark.parametrize("yoke", ["none", "shirt"])
def test_panels_are_the_sides_of_the_whole(style: str, yoke: str) -> None:
    """Nothing is added and nothing lost, the seams meet at the shoulder, and truing finds everything in order."""
    none: dict[str, Any] = {"pocket": PocketChoices()}
    from_neck = 2.5 if style == "vest" else 6
    chosen: dict[str, Any] = {"yoke": YokeChoices(YOKES[yoke])}
    whole, cut = draw(NOOR, style, "easy", **none, **chosen), panelled(style, from_neck, **none, **chosen)
    for half in ("back", "front"):
        assert cloth(cut, half, f"{half}_side") == pytest.approx(cloth(whole, half), rel=1e-9)
        assert cut.piece(f"{half}_side").cut.cloth == "contrast"
    assert holds(cut)
    if yoke == "none":
        inner = [cut.piece(half).edge("shoulder").length for half in ("back", "front")]
        assert inner == pytest.approx([10 * from_neck] * 2, abs=0.01)


@pytest.mark.parametrize("finish", [HemFinish.FACING, HemFinish.BINDING])
def test_the_hem_below_panels_is_finished_all_round(finish: HemFinish) -> None:
    """Each of the four pieces has its facing, or is bound."""
    cut = panelled("tee", hem=HemChoices(finish=finish), length=cm(8))
    assert holds(cut)
    edges = [piece.edge("hem") for piece in cut.pieces if piece.name in ("back", "back_side", "front", "front_side")]
    assert {str(edge.kind) for edge in edges} == {"seam"}


@pytest.mark.parametrize(
    ("code", "style", "changes"),
    [
        ("panel-off-shoulder", "tee", {"panel": PanelChoices(cm(1))}),
        ("panel-off-shoulder", "tee", {"panel": PanelChoices(cm(15))}),
        ("panel-with-block", "tee", {"panel": PanelChoices(cm(6)), "colour_block": ColourBlockChoices(cm(12))}),
        ("panel-through-pocket", "hooded", {"panel": PanelChoices(cm(4))}),
    ],
)
def test_panels_that_cannot_be_cut_are_refused(code: str, style: str, changes: dict[str, Any]) -> None:
    """The problem names what is in the way."""
    with pytest.raises(InputError) as refused:
        draw(NOOR, style, "easy", **changes)
    assert [problem.code for problem in refused.value.problems] == [code]
