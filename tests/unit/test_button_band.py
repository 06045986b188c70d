"""A cardigan that closes with buttons on two bands."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tapeline.blocks.button_band import BAND_CLOSURES, BandClosure
from tapeline.docket import docket_from_text
from tapeline.lengths import cm
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.project import draft
from tests.alter.altered import errors
from tests.alter.whole import whole
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw, style_choices


def buttoned(width: float = 3.0, apart: float = 8.0) -> Garment:
    """A cardigan for Marit."""
    return draw(MARIT, "cardigan", "easy", closure=BandClosure(cm(width), apart=cm(apart)))


@pytest.mark.parametrize("width", [2.5, 3, 5])
def test_fronts_are_cut_back_by_half_a_band(width: float) -> None:
    """On each other the bands lie over the centre; the cardigan is whole, and every seam is as it is meant."""
    made = buttoned(width)
    edge = made.piece("front").edge("centre").path
    assert edge.start.x == pytest.approx(5 * width)
    assert edge.end.x == pytest.approx(5 * width)
    assert whole(made) == []
    assert errors(made, MARIT) == []


def test_buttoned_it_is_as_wide_as_with_a_zip() -> None:
    """Round chest, waist and hip a cardigan with bands measures what one with a zip does."""
    text = "[wearer]\nfigure = 'woman'\nsize = '92'\n[garment]\nstyle = 'cardigan'\nclosure = '{}'\n"
    found = [
        {one.girth.name: one.garment_mm for one in draft(docket_from_text(text.format(word))).truing.girths}
        for word in BAND_CLOSURES
    ]
    assert found[0] == pytest.approx(found[1], abs=0.01)


def test_the_band_runs_from_hem_to_collar() -> None:
    """As long as the front's edge, the hem band and the collar together; folded it is as wide as was chosen."""
    made, choices = buttoned(), style_choices("cardigan", "easy")
    band, edge = made.piece("button_band"), made.piece("front").edge("centre").length
    meant = edge + choices.hem_band.width.mm + choices.collar.width.mm
    assert band.edge("front").length == pytest.approx(meant)
    assert band.edge("lower_end").length == pytest.approx(2 * 30)
    assert (band.cut.quantity, band.cut.mirrored) == (2, True)


def test_the_collar_is_shorter_by_what_the_bands_take() -> None:
    """It is sewn to what is left of the neckline, so its seam is as even as a zip cardigan's."""
    made, zipped = buttoned(), draw(MARIT, "cardigan", "easy")
    front, whole_front = (one.piece("front").edge("neckline").length for one in (made, zipped))
    assert 14 < whole_front - front < 20
    shares = []
    for one in (made, zipped):
        neckline = sum(one.piece(half).edge("neckline").length for half in ("front", "back"))
        shares.append(one.piece("collar").edge("neckline").length / neckline)
    assert shares[0] == pytest.approx(shares[1])


@pytest.mark.parametrize("apart", [5, 8, 12])
def test_buttons_are_even_in_the_middle_of_the_band(apart: float) -> None:
    """From 1.5 cm below the upper end to 1.5 cm above the lower one, no farther apart than was chosen."""
    made = buttoned(apart=apart)
    marks = {mark.name: mark.path for mark in made.piece("button_band").marks}
    found = {label: p for label, p in made.points.items() if label.startswith("button_band.button_")}
    places = sorted((p for label, p in found.items() if label[-1].isdigit()), key=lambda p: -p.y)
    gaps = [a.y - b.y for a, b in pairwise(places)]
    assert max(gaps) - min(gaps) < 1e-6
    assert gaps[0] <= 10 * apart + 1e-6
    length = made.piece("button_band").edge("front").length
    assert places[0].y == pytest.approx(length - 15)
    assert places[-1].y == pytest.approx(15)
    assert {round(p.x, 6) for p in places} == {-15.0}
    for number, place in enumerate(places, 1):
        assert marks[f"buttonhole_{number}"].distance_to(place) < 1e-9


def test_a_man_closes_left_over_right() -> None:
    """A convention of the trade, no source; the step of the first buttonhole says it."""
    made = draw(ARNE, "cardigan", "easy", closure=BAND_CLOSURES["buttons"])
    assert "left over right" in made.step("button_band.buttonhole_1").says


def test_a_button_wider_than_its_band_is_refused() -> None:
    """2.5 cm of button on 3 cm of band leave no edge."""
    with pytest.raises(InputError, match="wider than its buttons"):
        draw(MARIT, "cardigan", "easy", closure=BandClosure(cm(3), button=cm(2.5)))
