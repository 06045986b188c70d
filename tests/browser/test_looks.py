"""What a maker sees at one glance: nothing lies over what she looks at, and nothing is out of reach."""

from __future__ import annotations

import pytest
from playwright.sync_api import FloatRect, Page, ViewportSize, expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow

PHONE: ViewportSize = {"width": 390, "height": 800}


def _box(page: Page, what: str) -> FloatRect:
    box = page.locator(what).first.bounding_box()
    assert box is not None
    return box


def test_a_place_begins_at_its_top(marit: Desk) -> None:
    """Whoever read far down in one place sees the next one from its heading on."""
    page = marit.window("draft")
    page.locator("#draft .steps li").last.scroll_into_view_if_needed()
    assert page.evaluate("document.querySelector('#place').scrollTop") > 500
    page.click("nav a[data-place=style]")
    expect(page.locator("#style-title")).to_be_in_viewport()


def test_the_word_of_an_old_drawing_lies_beside_it(marit: Desk) -> None:
    """When the last change cannot be drafted, the words that say so cover no part of the drawing."""
    page = marit.window("measure")
    page.fill("#tape-hip", "8x")
    expect(page.locator("#old-drawing")).to_be_visible()
    words, drawing = _box(page, "#old-drawing"), _box(page, "#drawing")
    assert words["y"] >= drawing["y"] + drawing["height"] - 0.5


def test_every_tool_is_in_sight_on_a_phone(marit: Desk) -> None:
    """On a phone the tools of the drawing fit beside each other, and a line can be chosen in every place."""
    page = marit.window("measure")
    page.set_viewport_size(PHONE)
    for place in ("measure", "draft", "style", "true", "finish", "docket"):
        page.click(f"nav a[data-place={place}]")
        for tool in page.locator(".tools > *").all():
            box = tool.bounding_box()
            assert box is not None
            assert box["x"] >= 0
            assert box["x"] + box["width"] <= PHONE["width"]
        expect(page.locator("#mark")).to_be_in_viewport(ratio=1)


def test_an_opened_seam_is_not_under_the_drawing(marit: Desk) -> None:
    """On a phone a seam that was just opened is seen whole, above the day and not below the drawing."""
    page = marit.window("true")
    page.set_viewport_size(PHONE)
    page.click("#lay-armhole_front")
    page.locator("#laid-armhole_front svg").wait_for()
    marit.settle(page)
    seam, nav, drawing = _box(page, "#laid-armhole_front svg"), _box(page, "nav"), _box(page, "#drawing")
    assert seam["y"] >= max(0, drawing["y"] + drawing["height"]) - 0.5
    assert seam["y"] + seam["height"] <= nav["y"]


def test_sizes_before_the_first_line(marit: Desk) -> None:
    """While only tapes and sizes are said, words stand where nothing is drawn; they go with the first line."""
    page = marit.window("draft")
    expect(page.locator("#no-line")).to_be_hidden()
    page.locator("#step").fill("1")
    expect(page.locator("#no-line")).to_be_visible()
    first = page.evaluate(
        "[...document.querySelectorAll('#draft .steps li')].findIndex((row) => row.dataset.sheet) + 1"
    )
    page.locator("#step").fill(str(first - 1))
    expect(page.locator("#no-line")).to_be_visible()
    page.locator("#step").fill(str(first))
    expect(page.locator("#no-line")).to_be_hidden()


def test_large_letters_on_a_laptop(marit: Desk) -> None:
    """With letters twice as large the drawing keeps a quarter of the window's height at least."""
    page = marit.window("measure")
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    marit.settle(page)
    assert _box(page, "#drawing")["height"] >= 200
    assert _box(page, ".tools")["height"] < 120


def test_the_name_of_a_band_stands_below_it(marit: Desk) -> None:
    """On a wide screen the neckband has room for its name, but its fold would run through it; a sleeve has no fold."""
    page = marit.window("measure")
    page.set_viewport_size({"width": 1920, "height": 1080})
    marit.settle(page)
    for piece, below in (("neckband", True), ("sleeve", False)):
        name, cloth = (_box(page, f".piece[data-piece={piece}] > {part}") for part in (".title", ".cloth"))
        assert (name["y"] > cloth["y"] + cloth["height"] - 4) == below


def test_a_size_can_be_set_by_hand_on_a_phone(marit: Desk) -> None:
    """At a step that follows a size, the three tools below the drawing stand in one row inside the window."""
    page = marit.window("draft")
    page.set_viewport_size(PHONE)
    page.locator("#draft .steps button", has_text="back shoulder fall").first.click()
    tops = set()
    for tool in ("#mark", "#ask-movers", "#ask-size"):
        box = _box(page, tool)
        tops.add(round(box["y"] + box["height"] / 2))
        assert box["x"] + box["width"] <= PHONE["width"] - 4
        assert box["height"] < 50
    assert len(tops) == 1
