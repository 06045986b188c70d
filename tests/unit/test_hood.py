"""A hood is as long at the neck as the neckline, goes round a head and over it, and has no cord for a child."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.hood_choices import HoodChoices, HoodCord, HoodCut
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.draft import Draft
from tapeline.finish import FinishChoices
from tapeline.finish.choices import allowances
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError, Severity
from tapeline.styles import STYLES
from tapeline.styles.top import NecklineChoices
from tapeline.truing import Truing, true
from tests.properties.drafts import draw, style_choices, taped_children
from tests.properties.measuring import length, widths_at
from tests.unit.sizes import size

TAPES = {
    "bust": 960, "upper_chest": 910, "waist": 800, "hip": 1030, "shoulder_width": 400, "back_length": 410,
    "hip_depth": 205, "arm_length": 590, "head_girth": 560, "neck_to_crown": 280,
}  # fmt: skip
ILSE = Wearer("Ilse", Figure.WOMAN, TAPES)
MAN = Wearer(
    "Aksel", Figure.MAN, {"chest" if name == "bust" else name: mm for name, mm in list(TAPES.items())[:8]}
)  # fmt: skip
CHILD = taped_children()[4]
EITHER = pytest.mark.parametrize("cut", HoodCut)


def hooded(wearer: Wearer = ILSE, **choices: Any) -> Garment:
    """A hooded sweatshirt with that hood."""
    surveyed = wearer.figure.has_survey
    return draw(wearer, "hooded", "easy", surveyed=surveyed, hood=replace(HoodChoices(), **choices))


def trued(garment: Garment, wearer: Wearer) -> Truing:
    """In a cloth that stretches by a third."""
    return true(garment, wearer, Cloth(stretch_across=33), meaning={}, pull_on=True)


@EITHER
@pytest.mark.parametrize("overlap", [0, 3])
def test_the_neck_edge_is_as_long_as_the_neckline(cut: HoodCut, overlap: float) -> None:
    """Sides and half strip together are half the neckline; what overlaps lies on the other side of it."""
    garment = hooded(cut=cut, overlap=cm(overlap))
    neckline = sum(length(garment.piece(half).edge("neckline").path) for half in ("front", "back"))
    names = ["neckline", *(["overlapped"] if overlap else [])]
    sewn = sum(length(garment.piece("hood").edge(name).path) for name in names)
    sewn += length(garment.piece("hood_strip").edge("neckline").path) if cut is HoodCut.THREE else 0
    assert sewn == pytest.approx(neckline, abs=1e-4)
    if overlap:
        over, under = (length(garment.piece("hood").edge(name).path) for name in ("overlap", "overlapped"))
        assert over == pytest.approx(10 * overlap, abs=1e-6)
        assert under == pytest.approx(over, abs=1e-4)


def test_a_hood_is_as_deep_and_as_high_as_the_head_asks_for() -> None:
    """Three quarters of half the head and 6; from the shoulder up to the crown and 6: common practice, no source.

    The neckline begins 1.5 out on the shoulder, so that the hood begins there, too.
    """
    garment = hooded()
    points = garment.points
    assert points["hood.back_of_head"].x - points["hood.centre_front"].x == pytest.approx(0.75 * 280 + 60)
    assert points["hood.crown_level"].y - points["hood.shoulder"].y == pytest.approx(280 + 15 + 60)
    wider = draw(ILSE, "hooded", "easy", neckline=NecklineChoices(widen=cm(2.5), lower_front=cm(2.5)))
    assert size(wider, "hood_height") - size(garment, "hood_height") == pytest.approx(10)


def test_what_was_not_taped_is_typical_or_expected() -> None:
    """A woman's head is expected by the survey (its mean is 54.6), a man's is typical: 57, from memory.

    Up to the crown is half the girth: typical, no source.
    """
    bare = Wearer(
        "Ilse", Figure.WOMAN, {name: mm for name, mm in TAPES.items() if "head" not in name and "crown" not in name}
    )
    woman, man = hooded(bare), hooded(MAN)
    assert size(woman, "head_girth") == pytest.approx(546, abs=15)
    assert size(man, "head_girth") == 570
    for garment in (woman, man):
        assert size(garment, "hood_neck_to_crown") == pytest.approx(size(garment, "head_girth") / 2)
    assert size(hooded(), "hood_neck_to_crown") == 280


@pytest.mark.parametrize(("mm", "doubted"), [(220, True), (230, False), (330, False), (340, True)])
def test_a_neck_to_crown_that_goes_badly_with_the_head_is_doubted(mm: float, doubted: bool) -> None:
    """More than a fifth off half the head: a slip of the tape, or a head unlike most."""
    d = Draft(ILSE.with_tape("neck_to_crown", mm), {})
    STYLES["hooded"].page(d, style_choices("hooded", "easy"), surveyed=True)
    found = [(note.code, note.severity, note.where) for note in d.notes]
    assert found == ([("crown-unlikely", Severity.DOUBT, "tapes.neck_to_crown")] if doubted else [])


def test_a_childs_head_has_to_be_taped() -> None:
    """No survey of children stands in for it."""
    tapes = {name: mm for name, mm in CHILD.tapes.items() if name != "head_girth"}
    with pytest.raises(InputError) as refused:
        hooded(Wearer("Kim", Figure.CHILD, tapes))
    (problem,) = refused.value.problems
    assert (problem.code, problem.where) == ("no-estimate", "tapes.head_girth")


@EITHER
def test_seams_and_lines_of_a_hood_hold(cut: HoodCut) -> None:
    """Every seam fits between its marks, and face and neck run on over the crown, overlapped or not."""
    for overlap in (0, 2.5):
        for wearer in (ILSE, MAN, CHILD):
            found = trued(hooded(wearer, cut=cut, overlap=cm(overlap)), wearer)
            codes = {finding.code for finding in found.findings}
            assert not codes & {"seam-mismatch", "notch-mismatch", "join-bends", "fold-not-square", "outline-crosses"}
            walks = {walk.seam.name: walk for walk in found.walks}
            parts = 2 + (cut is HoodCut.THREE) + (overlap > 0)
            assert len(walks["neckline"].parts) == parts
            assert ("overlap" in walks) == (overlap > 0)


@pytest.mark.parametrize(("wide", "at_neck"), [(8, 8), (10, 7), (14, 4)])
def test_a_strip_is_as_long_as_the_crown(wide: float, at_neck: float) -> None:
    """Its long edge and the crown are equal, ends and notches; together three panels are as deep as two."""
    garment = hooded(cut=HoodCut.THREE, strip_width=cm(wide), strip_neck=cm(at_neck))
    strip, side = garment.piece("hood_strip"), garment.piece("hood")
    assert length(strip.edge("side").path) == pytest.approx(length(side.edge("crown").path), abs=1e-4)
    assert strip.notches_on("side")[0].at_mm == pytest.approx(side.notches_on("crown")[0].at_mm, abs=1e-6)
    assert strip.edge("face").length == pytest.approx(5 * wide)
    assert size(garment, "hood_depth") + 5 * wide == pytest.approx(size(hooded(), "hood_depth"))


def test_a_strip_that_reaches_the_shoulders_is_refused() -> None:
    """At the neck it lies between the shoulder seams."""
    with pytest.raises(InputError) as refused:
        hooded(taped_children()[0], cut=HoodCut.THREE, strip_neck=cm(12))
    assert [problem.code for problem in refused.value.problems] == ["hood-strip-wide"]


def test_a_hood_that_is_deep_and_low_is_refused() -> None:
    """Deeper than it is high by more than a tenth (our own limit), its crown would turn back."""
    with pytest.raises(InputError) as refused:
        hooded(height_ease=cm(0), depth_ease=cm(15))
    assert [problem.code for problem in refused.value.problems] == ["hood-too-deep"]


def test_no_cord_for_a_child() -> None:
    """EN 14682 (read in an authority's summary): none in hood and neck up to 7 years, none with free ends up to 14."""
    with pytest.raises(InputError) as refused:
        hooded(CHILD, cord=HoodCord.CORD)
    (problem,) = refused.value.problems
    assert (problem.code, problem.where) == ("cord-on-child", "garment.hood.cord")
    assert "EN 14682" in problem.says
    assert not any("cord" in name or "eyelet" in name for name in hooded(CHILD).points)


@EITHER
def test_an_adults_cord_has_its_eyelet_length_and_caution(cut: HoodCut) -> None:
    """The eyelet lies on the middle of the casing; the cord goes round the face and hangs out at both ends."""
    d = Draft(ILSE, {})
    hood = HoodChoices(cut=cut, cord=HoodCord.CORD, casing=cm(3), cord_end=cm(12))
    garment = STYLES["hooded"].page(d, style_choices("hooded", "easy", hood=hood), surveyed=True)
    assert [(note.code, note.severity) for note in d.notes] == [("cord-caution", Severity.NOTE)]
    face = garment.piece("hood").edge("face")
    assert face.path.distance_to(garment.points["hood.eyelet"]) == pytest.approx(15)
    assert {mark.name for mark in garment.piece("hood").marks} == {"casing", "eyelet"}
    strip = 100 if cut is HoodCut.THREE else 0
    assert size(garment, "cord_length") == pytest.approx(2 * face.length + strip + 240)
    assert "eyelet" not in {mark.name for mark in hooded(cut=cut).piece("hood").marks}


@EITHER
def test_the_casing_is_turned_in_by_its_own_width(cut: HoodCut) -> None:
    """Whatever the other hems are; a width for the edge by name still wins."""
    garment = hooded(cut=cut, casing=cm(3))
    for piece in garment.pieces[-2:] if cut is HoodCut.THREE else garment.pieces[-1:]:
        if piece.name.startswith("hood"):
            assert allowances(garment, FinishChoices(hem_mm=20))[piece.name]["face"] == 30
            assert allowances(garment, FinishChoices(by_name={"face": 12}))[piece.name]["face"] == 12


@EITHER
def test_a_hood_is_measured_inside(cut: HoodCut) -> None:
    """Round and over the head as a ruler on the pieces says, by a second way."""
    garment = hooded(cut=cut)
    fit = trued(garment, ILSE).hood
    assert fit is not None
    level = garment.points["hood.back_of_head"].y
    across = max(widths_at(garment.piece("hood").edge("crown").path, level))
    if cut is HoodCut.THREE:
        strip = garment.piece("hood_strip").edge("side").path
        down = garment.piece("hood_strip").notches_on("side")[0].at_mm
        across += min(strip.flattened(), key=lambda point: abs(strip.length_to(point) - down)).x
    assert fit.round_mm == pytest.approx(2 * across, abs=0.5)
    assert fit.to_cover_mm == pytest.approx(0.75 * 560)
    assert fit.over_head_mm == pytest.approx(2 * (280 + 15))
    assert fit.round_mm > fit.to_cover_mm + 60
    assert fit.over_mm > fit.over_head_mm
    assert fit.rim_mm > fit.head_mm


def test_a_hood_that_is_too_small_is_found() -> None:
    """Too shallow, too low, or too small to come out of: each named, with the ease that mends it."""
    low = trued(hooded(height_ease=cm(0)), ILSE)
    (finding,) = (one for one in low.findings if one.code == "hood-low")
    assert finding.severity is Severity.ERROR
    assert finding.change is not None
    key, more = finding.change
    assert key == "garment.hood.height_ease"
    mended = trued(hooded(height_ease=cm(more / 10)), ILSE)
    assert "hood-low" not in {one.code for one in mended.findings}
    # A hood made for one head, on another.
    small, large = ILSE.with_tape("head_girth", 480).with_tape("neck_to_crown", 240), ILSE.with_tape("head_girth", 660)
    codes = {one.code for one in trued(hooded(small, height_ease=cm(0)), large).findings}
    assert {"hood-shallow", "hood-rim-small"} <= codes
    assert not {one.code for one in trued(hooded(), ILSE).findings if one.severity is not Severity.NOTE}


def test_on_a_long_neckline_the_hood_is_deeper() -> None:
    """Its back is drawn out to the neck edge by 3 at most (our own rule), so that the crown does not turn back."""
    wide = NecklineChoices(widen=cm(6), lower_front=cm(10))
    garment = draw(ILSE, "hooded", "easy", neckline=wide, hood=HoodChoices(depth_ease=cm(0)))
    points = garment.points
    assert points["hood.neck_back"].x - points["hood.back_of_head"].x == pytest.approx(30)


def test_over_a_zip_the_sides_of_a_hood_meet() -> None:
    """They meet on the centre, and the zip is as long as hem band and front edge; what would overlap is refused."""
    garment = draw(ILSE, "zipped", "easy")
    front, band = garment.piece("front"), garment.piece("hem_band")
    assert (front.cut.quantity, front.on_fold) == (2, False)
    assert size(garment, "zip_length") == pytest.approx(
        front.edge("centre").length + band.edge("centre_front").length / 2
    )
    assert trued(garment, ILSE).holds
    for changes, code in (
        ({"hood": HoodChoices(overlap=cm(2))}, "hood-over-zip"),
        ({"neckline": NecklineChoices(shape=NECK_SHAPES["v"])}, "hood-on-corner"),
    ):
        with pytest.raises(InputError) as refused:
            draw(ILSE, "zipped", "easy", **changes)
        assert [problem.code for problem in refused.value.problems] == [code]


@pytest.mark.parametrize("shape", ["boat", "square"])
def test_a_neckline_with_a_corner_takes_no_hood(shape: str) -> None:
    """A v it takes, whose point lies where the sides meet."""
    for word, refuse in ((shape, True), ("v", False)):
        neckline = NecklineChoices(shape=NECK_SHAPES[word], widen=cm(1))
        if refuse:
            with pytest.raises(InputError) as refused:
                draw(ILSE, "hooded", "easy", neckline=neckline)
            assert [problem.code for problem in refused.value.problems] == ["hood-on-corner"]
        else:
            assert trued(draw(ILSE, "hooded", "easy", neckline=neckline), ILSE).holds
