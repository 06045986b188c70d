"""The lay on the page: asked for by keyboard, redrawn while it becomes shorter, stopped, taken away; on every width."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import Page

from tapeline.lay import faults, taken_up
from tests.browser.test_accessible import violations
from tests.browser.window import Desk

pytestmark = pytest.mark.slow


def opened(marit: Desk) -> Page:
    """Finish, with the questions of the lay shown by keyboard alone."""
    page = marit.window("finish")
    page.focus("#ask-lay")
    page.keyboard.press("Enter")
    page.locator("#lay-cloth").wait_for()
    assert page.evaluate("document.activeElement.id") == "lay-cloth"
    return page


def picture_of(page: Page) -> str:
    """Where the picture of the plan comes from."""
    return page.get_attribute("#lay-picture", "src") or ""


def test_a_lay_is_stopped_and_taken_away(marit: Desk) -> None:
    """A first plan comes while the search goes on; stop keeps the best, whose files are a proved plan's."""
    page = opened(marit)
    page.fill("#lay-width", "150")
    page.fill("#lay-price", "12")
    page.select_option("#lay-seconds", "600")
    page.keyboard.press("Enter")
    page.locator("#lay-plan").wait_for(timeout=30_000)
    assert page.is_disabled("#lay-start")
    assert "150 cm wide" in page.inner_text("#lay-rows")
    page.locator("#lay-said", has_text="So far").wait_for(timeout=30_000)
    page.focus("#lay-stop")
    page.keyboard.press("Space")
    page.locator("#lay-said", has_text="Done.").wait_for(timeout=30_000)
    assert "cost" in page.inner_text("#lay-said")
    assert page.is_enabled("#lay-start")
    assert page.evaluate("document.querySelector('#lay-picture').naturalWidth") > 0
    plan = taken_up(page.request.get(f"{marit.server.origin}/lay/file/json").text())
    assert plan.cloth.width_mm == pytest.approx(1500)
    assert not faults(plan)
    for kind, begins in (("pdf", b"%PDF"), ("dxf", b"  0"), ("plt", b"\x1bE"), ("csv", b"piece"), ("svg", b"<svg")):
        assert page.request.get(f"{marit.server.origin}/lay/file/{kind}").body().startswith(begins)


def test_what_cannot_be_laid_is_told(marit: Desk) -> None:
    """A cloth narrower than a piece, and a number that is none: the words say why, and another try is free."""
    page = opened(marit)
    for field, typed, words in (("width", "20", "mm wide"), ("garments", "many", "garments is many")):
        page.fill(f"#lay-{field}", typed)
        page.click("#lay-start")
        page.locator("#lay-said", has_text=words).wait_for(timeout=30_000)
        page.locator("#lay-start:enabled").wait_for(timeout=10_000)
    assert page.is_hidden("#lay-plan")


@pytest.mark.parametrize(("width", "theme"), [(1440, "light"), (390, "dark")])
def test_no_violation_and_no_sideways_scroll(marit: Desk, width: int, theme: str) -> None:
    """With a plan shown, axe-core finds nothing, and the page is no wider than its window, laptop or phone."""
    page = opened(marit)
    page.emulate_media(color_scheme="dark" if theme == "dark" else "light", reduced_motion="reduce")
    page.set_viewport_size({"width": width, "height": 844})
    page.select_option("#lay-seconds", "10")
    page.click("#lay-start")
    page.locator("#lay-plan").wait_for(timeout=30_000)
    page.click("#lay-stop")
    page.locator("#lay-said", has_text="Done.").wait_for(timeout=30_000)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth - window.innerWidth") <= 0


def test_a_window_that_comes_later_sees_the_plan(marit: Desk) -> None:
    """The plan belongs to the table: another window shows it, and a second lay beside the first is refused."""
    page = opened(marit)
    page.select_option("#lay-seconds", "120")
    page.click("#lay-start")
    page.locator("#lay-plan").wait_for(timeout=30_000)
    asked = dict.fromkeys(("width", "spread", "direction", "gap", "garments", "price"), "")
    answer = page.request.post(
        f"{marit.server.origin}/lay/start", data=json.dumps({**asked, "cloth": "shell", "seconds": "5"})
    )
    assert answer.status == 409
    page.click("#lay-stop")
    page.locator("#lay-said", has_text="Done.").wait_for(timeout=30_000)
    other = opened(marit)
    other.locator("#lay-plan").wait_for()
    assert picture_of(other)
