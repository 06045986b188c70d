"""The hand sheet's page that shows a looseness in its two ways: whole, on one page, in grey, and true to the drafts."""

from __future__ import annotations

import re
from itertools import combinations, product

import pytest

from tapeline.docket import Docket, docket_from_text
from tapeline.export import letters_width
from tapeline.pattern import Source
from tapeline.problems import InputError, Problem, Severity
from tapeline.project import draft, hand_sheet, products, two_ways
from tapeline.sheets import hand_sheet as laid_out
from tapeline.sheets.hand_sheet_marks import Page
from tapeline.sheets.hand_sheet_pages import Head, Leaves
from tapeline.sheets.hand_sheet_two_ways import two_ways_page
from tapeline.units import Unit
from tests.sheets.hand_sheets import MARIT as WEARER
from tests.sheets.hand_sheets import all_words, text_of, title_of

DOCKET = """
[wearer]
name = "Runa"
figure = "{figure}"
unit = "cm"

[wearer.tapes]
{tapes}

[garment]
style = "{style}"
looseness = {looseness}
"""
WOMAN = {"bust": 94, "upper_chest": 89, "waist": 77, "hip": 101, "shoulder_width": 39.5, "back_length": 40,
         "hip_depth": 20.5, "arm_length": 58}  # fmt: skip
CHILD = {"bust": 65, "upper_chest": 64, "waist": 59, "hip": 70, "shoulder_width": 30, "back_length": 29,
         "hip_depth": 15, "arm_length": 43, "wrist": 14, "upper_arm": 19}  # fmt: skip
EXTREMES = ('"slight"', '"loose"', "{ side = 6, drop = 0, shoulder = 0 }", "{ side = 4, drop = 6, shoulder = 2 }")


def docket(looseness: str, style: str = "tee", *, child: bool = False) -> Docket:
    """A docket of an invented wearer."""
    tapes = "\n".join(f"{name} = {value}" for name, value in (CHILD if child else WOMAN).items())
    figure = "child" if child else "woman"
    return docket_from_text(DOCKET.format(figure=figure, tapes=tapes, style=style, looseness=looseness), "runa.toml")


def last_page(order: Docket, *, blank: bool = False) -> Page:
    """The page, as it is laid out at the end of the sheet."""
    title = title_of(WEARER, order.style.name)
    return laid_out(draft(order).garment, title, letters_width, blank=blank, ways=two_ways(order)).pages[-1]


@pytest.mark.parametrize("looseness", EXTREMES)
@pytest.mark.parametrize("child", [False, True])
def test_it_is_one_page_with_nothing_over_anything(looseness: str, child: bool) -> None:
    """Heading, cuts, both pictures and the whole table stand on the last page, and no text lies over text."""
    ways = two_ways(docket(looseness, child=child))
    for unit, blank in product(Unit, (False, True)):
        leaves = Leaves((210.0, 297.0), Head("Runa", "cm"), letters_width)
        two_ways_page(leaves, ways, unit, None if blank else [4, 5, 6, 8])
        (page,) = leaves.done()
        text = " ".join(words.text for words in page.words)
        assert "Looser in two ways" in text
        assert "matter of drawing" in text
        assert [picture.sheet for _, picture in page.pictures] == ["back", "front"]
        places = [
            (w.text, w.x, w.y - 0.2 * w.size_mm, w.x + letters_width(w.text, w.size_mm, bold=w.bold),
             w.y + 0.72 * w.size_mm)
            for w in all_words(page)
        ]  # fmt: skip
        places += [("box", b.x, b.y, b.x + b.width, b.y + b.height) for b in page.boxes]
        assert all(left >= 9 and right <= 201 and low >= 9 and high <= 288 for _, left, low, right, high in places)
        for a, b in combinations(places, 2):
            assert a[3] <= b[1] or b[3] <= a[1] or a[4] <= b[2] or b[4] <= a[2], (a, b)


def test_its_numbers_are_those_of_the_two_drafts() -> None:
    """Each place is told as both blocks have it; the tee's own underarm lies there too, for it is drawn by the rule."""
    order = docket('"slight"')
    text = " ".join(words.text for words in last_page(order).words)
    underarm = draft(order).garment.points["back.underarm"]
    told = f"{round(underarm.x / 10, 2):g} cm, {round(-underarm.y / 10, 2):g} cm"
    assert text.count(told) >= 2
    assert text.count("0.0 mm") == 6
    assert "both ways are the same" in text


def test_a_class_sheet_tells_no_number_of_the_wearer() -> None:
    """Another wearer's page is the same, word for word, with a box for every measured number."""
    pages = [last_page(docket('"slight"', child=child), blank=True) for child in (False, True)]
    texts = [" ".join(words.text for words in page.words) for page in pages]
    said = [re.sub(r"page \d+ of \d+", "", text) for text in texts]
    assert said[0] == said[1]
    assert len(pages[0].boxes) == 8 + 6 * 5 + 2


def test_a_close_block_has_no_such_page() -> None:
    """Where nothing is looser there is nothing to show."""
    assert two_ways(docket('"close"', "block")) == ()
    assert "Looserintwoways" not in text_of(hand_sheet(draft(docket('"close"', "block"))).data)


def test_what_cannot_be_cut_is_said_and_the_sheet_is_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where scissors cannot do it (one of 340 random drafts) a note says so, and the page is left out."""

    def refused(_: Docket) -> None:
        raise InputError(Problem("overlap-too-wide", Severity.ERROR, "the fold swallows a corner", "back", "fold less"))

    monkeypatch.setattr(products, "two_ways", refused)
    made = hand_sheet(draft(docket('"slight"')))
    assert [(problem.code, problem.severity) for problem in made.problems] == [("looseness-not-spread", Severity.NOTE)]
    assert "the fold swallows a corner" in made.problems[0].says
    assert "Looserintwoways" not in text_of(made.data)


def test_sizes_by_hand_are_those_of_both_blocks() -> None:
    """An armhole depth that is set by hand rules both ways."""
    by_hand = DOCKET.format(figure="woman", tapes="\n".join(f"{k} = {v}" for k, v in WOMAN.items()), style="tee",
                            looseness='"slight"')  # fmt: skip
    order = docket_from_text(f"{by_hand}\n[garment.sizes]\narmhole_depth = 24\n", "runa.toml")
    sizes = {size.name: size for size in draft(order).garment.sizes}
    assert sizes["armhole_depth"].source is Source.BY_HAND
    back, _ = two_ways(order)
    assert back.same
    assert back.places[1].ruled.y == pytest.approx(-260)
