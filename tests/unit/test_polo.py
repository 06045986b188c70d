"""A placket: cut out of the front, closed by two strips, and as long as the head needs."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from tapeline.blocks.collar import COLLARS
from tapeline.blocks.placket import PlacketChoices
from tapeline.docket import docket_from_text
from tapeline.geometry import Point
from tapeline.lengths import cm
from tapeline.measures import Figure
from tapeline.problems import InputError
from tapeline.project import draft
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw, style_choices, taped_children
from tests.unit.sizes import size

DOCKET = """
[wearer]
figure = "woman"
size = "88"
tapes = {{ head_girth = 57 }}
[garment]
style = "polo"
{choices}
[cloth]
stretch_across = {stretch}
"""


@pytest.mark.parametrize("width", [2, 3, 5])
def test_two_strips_fill_what_is_cut_out(width: float) -> None:
    """Unfolded, the window is as wide as one strip; on it both strips lie exactly, half of each beyond the centre."""
    garment = draw(MARIT, "polo", placket=PlacketChoices(width=cm(width)))
    front, strip = garment.piece("front"), garment.piece("placket")
    assert 2 * front.edge("placket_foot").length == pytest.approx(10 * width)
    layer = strip.edge("foot").length + strip.edge("foot_lap").length
    assert layer == pytest.approx(10 * width)
    assert strip.edge("foot_turned").length == pytest.approx(layer)
    assert strip.edge("placket").length == pytest.approx(front.edge("placket").length)
    assert strip.cut.quantity == 2


def test_the_strip_takes_up_the_neckline_where_the_front_leaves_off() -> None:
    """Front and strip together have the whole neckline of a front without a slit, and meet without a bend."""
    slit, whole = draw(MARIT, "polo"), draw(MARIT, "shirt", "slight", neckline=style_choices("polo", "slight").neckline)
    rest, part = slit.piece("front").edge("neckline").path, slit.piece("placket").edge("neckline").path
    assert part.length + rest.length == pytest.approx(whole.piece("front").edge("neckline").length, abs=1e-6)
    assert part.end.distance_to(rest.start) < 1e-6
    assert abs(part.arrives.turn_to(rest.leaves)) < 1e-6


def test_folded_along_its_edge_the_inner_layer_lies_under_the_outer() -> None:
    """The strip is its own mirror image about the edge that it is folded along."""
    garment = draw(ARNE, "polo")
    strip, edge = garment.piece("placket"), garment.points["placket.edge_top"].x
    outline = strip.seam_line
    for share in range(20):
        place = outline.at(outline.length * share / 20)
        assert outline.distance_to(Point(2 * edge - place.x, place.y)) < 0.01


def test_the_slit_is_as_long_as_the_head_needs() -> None:
    """Each side of the slit gives half of what the neckline wants of the head; it is never shorter than chosen."""
    short = PlacketChoices(length=cm(8))
    small, large = (draw(MARIT.with_tape("head_girth", girth), "polo", placket=short) for girth in (500, 640))
    assert size(small, "placket_length") == pytest.approx(80)
    assert size(large, "placket_length") == pytest.approx(320 - size(large, "neckline"))
    assert size(large, "placket_length") > 80
    foot, top = large.points["front.placket_end"], large.points["front.neckline_centre"]
    assert top.y - foot.y == pytest.approx(size(large, "placket_length"))


def test_truing_counts_both_sides_of_the_slit() -> None:
    """A cloth that does not stretch opens to neckline and slit together: measured on the pieces, added up by hand."""
    drafted = draft(docket_from_text(DOCKET.format(choices="", stretch=0)))
    opening, garment = drafted.truing.opening, drafted.garment
    assert opening is not None
    around = 2 * (garment.piece("back").edge("neckline").length + garment.piece("front").edge("neckline").length)
    around += 2 * garment.piece("placket").edge("neckline").length
    assert opening.stretched_mm == pytest.approx(around + 2 * garment.piece("front").edge("placket").length)
    assert "head-does-not-pass" not in {problem.code for problem in drafted.problems}


def test_what_is_cut_out_for_the_strips_is_no_width_lost() -> None:
    """Where the placket passes the chest line, tape and ease are still round the chest: the strips fill in."""
    drafted = draft(docket_from_text(DOCKET.format(choices="neckline = { lower_front = 10 }", stretch=20)))
    points = drafted.garment.points
    assert points["front.placket_end"].y < points["front.chest_level"].y
    assert "girth-mismatch" not in {problem.code for problem in drafted.problems}
    (chest,) = [found for found in drafted.truing.girths if found.girth.name == "chest"]
    assert chest.garment_mm == pytest.approx(880 + 80, abs=0.1)


def test_buttons_are_even_down_the_strip() -> None:
    """From 1.5 cm below the neckline to a strip's width above its foot: common practice in the trade, no source."""
    garment = draw(ARNE, "polo")
    places = [garment.points[f"placket.button_{n}"] for n in range(1, 4)]
    assert "placket.button_4" not in garment.points
    gaps = [a.y - b.y for a, b in pairwise(places)]
    assert gaps[0] == pytest.approx(gaps[1])
    assert garment.points["placket.centre_top"].y - places[0].y == pytest.approx(15)
    assert places[-1].y - garment.points["placket.centre_foot"].y == pytest.approx(30)
    assert "left over right" in garment.step("placket.buttonhole_1").says


@pytest.mark.parametrize("word", sorted(COLLARS))
def test_every_collar_fits_a_placket(word: str) -> None:
    """As long as the neckline from centre to centre, and with a stand over the lap of the strip as well."""
    garment = draw(MARIT, "polo", collar=COLLARS[word])
    long = size(garment, "neckline")
    if word == "stand":
        assert garment.piece("stand").edge("neckline").length == pytest.approx(long + 15, abs=0.01)
    else:
        assert garment.piece("collar").edge("neckline").length == pytest.approx(long, abs=0.01)


def test_a_rib_collar_is_straight() -> None:
    """A knitted collar has no curve: its seam is level from end to end."""
    garment = draw(MARIT, "polo", collar=COLLARS["rib"])
    seam = garment.piece("collar").edge("neckline").path
    assert {round(point.y, 9) for point in seam.knots} == {0.0}
    assert garment.piece("collar").cut.cloth == "rib"


def test_a_placket_that_would_reach_the_hem_is_refused() -> None:
    """On a top that ends under the bust there is no room for 30 cm of placket."""
    with pytest.raises(InputError) as refused:
        draw(MARIT, "polo", length=cm(-25), placket=PlacketChoices(length=cm(30)))
    assert [problem.code for problem in refused.value.problems] == ["placket-too-long"]


def test_a_childs_placket_is_as_long_as_chosen_until_the_head_is_taped() -> None:
    """There is no survey of children's heads; taped, the head is what the slit is made for."""
    child = next(one for one in taped_children() if one.figure is Figure.CHILD and one["bust"] > 600)
    untaped = replace(child, tapes={name: mm for name, mm in child.tapes.items() if name != "head_girth"})
    choices = replace(style_choices("polo", "slight").placket, length=cm(9))
    assert size(draw(untaped, "polo", surveyed=False, placket=choices), "placket_length") == pytest.approx(90)
    taped = draw(untaped.with_tape("head_girth", 560), "polo", surveyed=False, placket=choices)
    assert size(taped, "placket_length") == pytest.approx(max(90, 280 - size(taped, "neckline")))
