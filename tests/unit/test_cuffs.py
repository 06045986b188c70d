"""Rolled cuffs and buttoned cuffs, for invented wearers."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES
from tapeline.blocks.sleeve_fullness import SLEEVE_ENDS, SLEEVE_HEADS, CuffFullness, SleeveEnd
from tapeline.geometry import Line, Point, Rigid
from tapeline.lengths import cm
from tapeline.measures import size_wearer
from tapeline.pattern import EdgeKind, Garment, Seam
from tapeline.problems import InputError
from tests.alter.altered import errors
from tests.alter.whole import whole
from tests.properties.drafts import draw, style_choices

WEARER = size_wearer("92")


def ended(style: str, end: SleeveEnd, **changes: Any) -> Garment:
    """A garment whose sleeves end so."""
    own = style_choices(style, "easy").sleeve
    return draw(WEARER, style, "easy", sleeve=replace(own, end=end, **changes))


def the_seam(garment: Garment, name: str) -> Seam:
    """A seam by its name."""
    return next(seam for seam in garment.seams if seam.name == name)


@pytest.mark.parametrize("style", ["tee", "shirt", "polo", "dropped"])
@pytest.mark.parametrize("shape", ["straight", "easy", "tapered"])
@pytest.mark.parametrize("width", [2.0, 3.0, 4.5])
def test_the_layers_of_a_rolled_cuff_lie_on_each_other(style: str, shape: str, width: float) -> None:
    """Folded in along the cuff's own edge, then back along the sleeve's, both layers lie on the seam above."""
    end = SleeveEnd(rolled=cm(width))
    made = ended(style, end, length=SLEEVE_LENGTHS["short"], shape=SLEEVE_SHAPES[shape])
    assert whole(made) == []
    assert errors(made, WEARER) == []
    sleeve, lines = made.piece("sleeve"), made.lines
    edge, fold = lines["sleeve.cuff_edge"], lines["sleeve.cuff_fold"]
    assert edge.start.y - fold.start.y == pytest.approx(10 * width)
    assert edge.start.y == pytest.approx(edge.end.y)
    for half in ("front", "back"):
        seam = sleeve.edge(f"underarm_{half}").path
        seam = seam if half == "front" else seam.reversed()
        assert seam.start.y - seam.end.y > 20 * width
        # The seam is straight below its bend, so places level with the layers are read off its crossings.
        for line, below in ((fold, 0.4), (fold, 0.9), (edge, 0.3), (edge, 0.8)):
            level = Point(0, line.start.y - below * 10 * width)
            (place,) = seam.crossings(Line(level, Point(1, level.y)))
            over = Rigid.laying(line.start, line.leaves, line.start, line.leaves, turned_over=True).point(place)
            assert seam.distance_to(over) < 0.01
    assert sleeve.edge("hem").kind is EdgeKind.HEM
    assert sleeve.edge("hem").allowance_mm == 10


def test_a_sleeve_by_a_word_is_longer_for_its_rolled_cuff() -> None:
    """The cuff never covers the whole underarm seam of a sleeve whose length is a word: 4 cm are left above it."""
    made = ended("tee", SleeveEnd(rolled=cm(6)))
    points = made.points
    assert points["sleeve.cap_foot"].y - points["sleeve.front_edge"].y >= 100 - 0.01


@pytest.mark.parametrize("style", ["shirt", "pyjama", "tee", "dropped"])
@pytest.mark.parametrize("fullness", CuffFullness)
def test_a_buttoned_cuff_fits_its_sleeve(style: str, fullness: CuffFullness) -> None:
    """Whole and true; the cuff is the wrist and what is loose, and its lap 2.5 cm more (common practice, no source)."""
    made = ended(style, replace(SLEEVE_ENDS["cuff"], fullness=fullness), length=SLEEVE_LENGTHS["long"])
    assert whole(made) == []
    assert errors(made, WEARER) == []
    wrist = next(step.lengths[0].mm for step in made.steps if step.label == "wrist")
    cuff = made.piece("shirt_cuff")
    assert cuff.edge("sleeve").length == pytest.approx(wrist + 50)
    assert cuff.edge("lap").length == pytest.approx(25)
    seam = the_seam(made, "cuff")
    hem = made.piece("sleeve").edge("hem").length + made.piece("sleeve").edge("hem_back").length
    assert seam.ease.mm == pytest.approx(hem - wrist - 50)
    crown = made.points["sleeve.crown"].y - made.points["sleeve.hem_level"].y
    dropped = 60 if style == "dropped" else 0
    assert crown + 60 + dropped == pytest.approx(WEARER["arm_length"], abs=1e-6)


def test_pleats_take_up_what_the_sleeve_is_wider() -> None:
    """Laid from fold to mark, the hem is as long as the cuff; all pleats lie in front of the slit, none past 3 cm."""
    made = ended("shirt", SLEEVE_ENDS["cuff"])
    sleeve = made.piece("sleeve")
    hem = sleeve.edge("hem")
    notches = sleeve.notches_on("hem")
    pleats = [b.at_mm - a.at_mm for a, b in zip(notches[::2], notches[1::2], strict=True)]
    assert sum(pleats) == pytest.approx(the_seam(made, "cuff").ease.mm)
    assert max(pleats) <= 30 + 1e-6
    assert notches[-1].at_mm == pytest.approx(hem.length - 20)
    assert "pleats" in the_seam(made, "cuff").reason


def test_the_slit_lies_in_the_middle_of_the_back() -> None:
    """A quarter of the hem from the underarm seam, on the back half, straight up (common practice, no source)."""
    made = ended("shirt", replace(SLEEVE_ENDS["cuff"], slit=cm(9)))
    sleeve = made.piece("sleeve")
    whole_hem = sleeve.edge("hem").length + sleeve.edge("hem_back").length
    assert sleeve.edge("hem_back").length == pytest.approx(whole_hem / 4)
    (slit,) = [mark.path for mark in sleeve.marks if mark.name == "slit"]
    assert slit.length == pytest.approx(90)
    assert slit.start.x == pytest.approx(slit.end.x)
    back = made.points["sleeve.back_underarm"].x
    assert back < slit.start.x < made.points["sleeve.crown"].x
    assert made.piece("slit_binding").edge("slit").length == pytest.approx(2 * 90 + 20)


def test_button_and_buttonhole_meet() -> None:
    """When the cuff's end lies where the lap begins, the buttonhole lies over the button."""
    made = ended("shirt", SLEEVE_ENDS["cuff"])
    lap = made.points["shirt_cuff.lap_start"].x
    hole, button = made.points["shirt_cuff.buttonhole_place"], made.points["shirt_cuff.button"]
    assert hole.x + lap == pytest.approx(button.x)
    assert hole.y == pytest.approx(button.y)


@pytest.mark.parametrize(
    ("code", "style", "end", "changes"),
    [
        ("cuff-not-at-wrist", "shirt", SLEEVE_ENDS["cuff"], {"length": SLEEVE_LENGTHS["short"]}),
        ("nothing-to-gather", "shirt", replace(SLEEVE_ENDS["cuff"], loose=cm(15)), {}),
        ("sleeve-ends-twice", "sweatshirt", SLEEVE_ENDS["cuff"], {}),
        ("sleeve-ends-twice", "sweatshirt", SLEEVE_ENDS["rolled"], {}),
        ("sleeve-ends-twice", "shirt", SleeveEnd(cuff=cm(6), bell=cm(20)), {}),
        ("sleeve-ends-twice", "shirt", SleeveEnd(band=cm(3), rolled=cm(3)), {}),
        ("rolled-under-puff", "tee", SLEEVE_ENDS["rolled"], {"head": SLEEVE_HEADS["puffed"]}),
    ],
)
def test_what_cannot_be_cuffed_is_refused(code: str, style: str, end: SleeveEnd, changes: dict[str, Any]) -> None:
    """The problem names what does not fit, and what to try."""
    with pytest.raises(InputError) as refused:
        ended(style, end, **changes)
    (problem,) = refused.value.problems
    assert problem.code == code
    assert problem.hint


def test_pleats_that_do_not_fit_are_refused_and_gathers_are_not() -> None:
    """A very wide sleeve is gathered, for its pleats would go past the front seam."""
    wide = {"shape": SLEEVE_SHAPES["flared"], "length": SLEEVE_LENGTHS["long"]}
    with pytest.raises(InputError, match="pleats"):
        ended("shirt", SLEEVE_ENDS["cuff"], **wide)
    made = ended("shirt", replace(SLEEVE_ENDS["cuff"], fullness=CuffFullness.GATHERS), **wide)
    assert errors(made, WEARER) == []


def test_a_pointed_edge_is_doubted() -> None:
    """A tapered sleeve's straight fold meets itself in a point under the arm; a straight sleeve's does not."""
    tapered, straight = (
        ended("tee", SLEEVE_ENDS["rolled"], shape=SLEEVE_SHAPES[shape]) for shape in ("tapered", "straight")
    )
    for garment, bends in ((tapered, True), (straight, False)):
        (join,) = [join for join in garment.joins if join.line == "sleeve hem"]
        inside = sum(garment.piece(piece).corner(seam, line)[1] for piece, line, seam in join.corners)
        assert (abs(inside - 3.14159265) > 0.01) is bends
        assert join.corner
