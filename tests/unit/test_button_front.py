"""A front that laps over and is buttoned: lap, facing, and where the buttons lie."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from tapeline.blocks.front_edge import FRONT_EDGES, FrontEdge
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.docket import docket_from_text
from tapeline.draft import Draft
from tapeline.geometry import Point
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.project import draft
from tapeline.styles import STYLES
from tapeline.styles.top import NecklineChoices
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw, style_choices


def button_places(garment: Garment) -> list[Point]:
    """Where the buttons of the front lie, from above."""
    places = {
        int(label.rpartition("_")[2]): p for label, p in garment.points.items() if label.startswith("front.button_")
    }
    return [places[number] for number in sorted(places)]


def said(style: str, wearer: Wearer = MARIT, **changes: object) -> set[str]:
    """Codes of what drafting found worth saying."""
    d = Draft(wearer, {})
    STYLES[style].page(d, style_choices(style, "easy", **changes), surveyed=True)
    return {note.code for note in d.notes}


@pytest.mark.parametrize("button", [0.9, 1.2, 2.0])
def test_the_lap_follows_the_button(button: float) -> None:
    """Half a button and 1 cm beyond its rim (common practice, no source); both edges of the lap lie on the centre."""
    garment = draw(MARIT, "shirt", "easy", front=FrontEdge(button=cm(button)))
    lap = 10 * (button / 2 + 1)
    front = garment.piece("front")
    assert front.edge("lap").length == pytest.approx(lap)
    assert garment.points["front.front_edge_low"].x == pytest.approx(-lap)
    assert front.cut.quantity == 2
    assert front.cut.mirrored


def test_folded_back_the_facing_lies_on_the_front() -> None:
    """Every place of the folded-out facing is the mirror image of one on the front, about the front edge."""
    garment = draw(MARIT, "shirt", "easy")
    front = garment.piece("front")
    edge = garment.points["front.front_edge_top"].x
    for turned, under in (("facing_neckline", "neckline"), ("facing_shoulder", "facing_shoulder_line")):
        path = front.edge(turned).path
        other = garment.lines[f"front.{under}"]
        for share in (0, 0.3, 0.7, 1):
            place = path.at(path.length * share)
            assert other.distance_to(Point(2 * edge - place.x, place.y)) < 0.01, turned
    assert garment.points["front.facing_chest"].x - edge == pytest.approx(70)


def test_what_laps_over_is_not_counted_as_width() -> None:
    """Buttoned, a shirt is as wide round the body as with a zip: tape and ease, lap and facing left out."""
    docket = "[wearer]\nfigure = 'woman'\nsize = '88'\n[garment]\nstyle = 'shirt'\nfront = '{}'\n"
    girths = [
        {found.girth.name: found.garment_mm for found in draft(docket_from_text(docket.format(way))).truing.girths}
        for way in ("buttons", "zip")
    ]
    assert girths[0] == pytest.approx(girths[1])
    assert girths[0]["chest"] == pytest.approx(880 + 120, abs=0.1)


@pytest.mark.parametrize("apart", [5, 7, 9, 12])
def test_a_womans_buttons_are_even_and_one_lies_at_her_bust(apart: float) -> None:
    """Level with the bust, where the front would gape, and even from there: common practice, no source."""
    wearer = MARIT.with_tape("bust_point_depth", 270)
    garment = draw(wearer, "shirt", "easy", front=replace(FRONT_EDGES["buttons"], apart=cm(apart)))
    places = button_places(garment)
    bust = garment.points["front.front_neck_point"].y - 270
    assert min(abs(place.y - bust) for place in places) < 1e-6
    gaps = [a.y - b.y for a, b in pairwise(places)]
    assert max(gaps) - min(gaps) < 1e-6
    assert gaps[0] <= apart * 10 + 1e-6
    assert {place.x for place in places} == {0.0}
    neck, hem = garment.points["front.neckline_centre"].y, garment.points["front.hem_centre"].y
    assert neck - places[0].y == pytest.approx(60)
    assert 100 <= places[-1].y - hem < 100 + gaps[0]


def test_a_mans_buttons_are_spread_evenly_from_first_to_last() -> None:
    """No bust to meet: the last lies exactly as far above the hem as was chosen."""
    garment = draw(ARNE, "shirt", "easy")
    places = button_places(garment)
    gaps = [a.y - b.y for a, b in pairwise(places)]
    assert max(gaps) - min(gaps) < 1e-6
    assert 45 < gaps[0] <= 90
    assert places[-1].y - garment.points["front.hem_centre"].y == pytest.approx(100)


def test_every_button_has_its_mark_and_buttonhole() -> None:
    """A buttonhole is as long as the button and its thickness, and holds the button's place (common practice)."""
    garment = draw(ARNE, "pyjama", "loose")
    marks = {mark.name: mark.path for mark in garment.piece("front").marks}
    for number, place in enumerate(button_places(garment), 1):
        assert marks[f"button_{number}"].distance_to(place) < 1e-9
        hole = marks[f"buttonhole_{number}"]
        assert hole.length == pytest.approx(15)
        assert hole.distance_to(place) < 1e-9
    assert {"centre", "front_edge"} < set(marks)


@pytest.mark.parametrize(("wearer", "way"), [(MARIT, "right over left"), (ARNE, "left over right")])
def test_women_close_right_over_left_and_men_left_over_right(wearer: Wearer, way: str) -> None:
    """A convention of the trade, no source; the step of the first buttonhole says it."""
    assert way in draw(wearer, "shirt", "easy").step("front.buttonhole_1").says


def test_a_button_too_near_the_bust_is_doubted() -> None:
    """With 1 cm between first button and bust there is no other to put level with it."""
    low = MARIT.with_tape("bust_point_depth", 160)
    assert "no-button-at-bust" in said("shirt", low, first_button=cm(8))
    assert "no-button-at-bust" not in said("shirt", MARIT)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("kangaroo-on-opening", {"pocket": PocketChoices(kind=PocketKind.KANGAROO)}),
        ("facing-too-narrow", {"front": FrontEdge(button=cm(4), facing=cm(4))}),
        (
            "no-room-for-buttons",
            {
                "front": FrontEdge(above_hem=cm(40)),
                "first_button": cm(20),
                "length": cm(0),
                "neckline": NecklineChoices(lower_front=cm(15)),
            },
        ),
    ],
)
def test_a_front_that_cannot_be_buttoned_is_refused(code: str, changes: dict[str, Any]) -> None:
    """The problem names what does not fit."""
    with pytest.raises(InputError) as refused:
        draw(MARIT, "shirt", "easy", **changes)
    assert [problem.code for problem in refused.value.problems] == [code]


def test_a_child_is_told_both_ways() -> None:
    """What is not known is not chosen for the maker: nothing says whether a child is a girl or a boy."""
    child = Wearer("Ada", Figure.CHILD, {
        "bust": 640, "upper_chest": 640, "waist": 580, "hip": 680, "shoulder_width": 300, "back_length": 290,
        "hip_depth": 150, "arm_length": 440, "wrist": 140, "upper_arm": 200,
    })  # fmt: skip
    says = draw(child, "pyjama", "easy", surveyed=False).step("front.buttonhole_1").says
    assert "girls close right over left, boys left over right" in says
