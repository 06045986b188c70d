"""The drawing follows a key before anything else is known of it; nothing is lost or stale for that."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow

REST = "**/state?place=measure"
LINES = """() => [...document.querySelectorAll("svg.sheet :is(.piece, .mark, .handle, path, title, desc, text)")]
    .filter((one) => !one.parentElement.closest("[data-dressed]"))
    .map((one) => [one.nodeName, one.dataset.step, one.dataset.needs, one.dataset.at, one.dataset.from, one.dataset.box,
        one.dataset.inside, one.getAttribute("d"), one.getAttribute("aria-valuenow"), one.getAttribute("class"),
        one.childElementCount || one.dataset.dressed ? "" : one.textContent].join("|")).sort()"""
"""What the server has drawn, without where the window has laid it."""


CHANGED = """(before) => document.querySelector('[data-step="front.armhole"] path').getAttribute("d") !== before"""


def course(page: Page) -> str:
    """Of the front's armhole."""
    return str(page.locator('[data-step="front.armhole"] path').first.get_attribute("d"))


def test_the_drawing_does_not_wait_for_the_place(marit: Desk) -> None:
    """While the rest is not answered the drawing is new; what is written meanwhile is drawn next."""
    page = marit.window("measure")
    held: list[Route] = []
    page.route(REST, lambda route: held.append(route))  # noqa: PLW0108 - playwright hangs what it needs on a function of ours
    for value in ("91", "93"):
        before = course(page)
        page.fill("#tape-upper_chest", value)
        if held:
            held.pop().continue_()
        page.wait_for_function(CHANGED, arg=before)
        page.wait_for_timeout(200)
        assert len(held) == 1
    held.pop().continue_()
    page.unroute(REST)
    marit.settle(page)
    expect(page.locator("#text")).to_have_value(re.compile(r"\nupper_chest = 93\b"))


def test_a_rest_that_is_lost_is_asked_for_again(marit: Desk) -> None:
    """A connection that breaks after the drawing is said, and the place is told when the server answers again."""
    page = marit.window("measure")
    marit.down = True
    lost: list[Route] = []

    def lose(route: Route) -> None:
        lost.append(route)
        if len(lost) == 1:
            route.abort()
        else:
            route.continue_()

    page.route(REST, lose)
    page.fill("#tape-hip", "88.9")
    expect(page.locator("#offline")).to_be_visible()
    expect(page.locator("#offline")).to_be_hidden()
    expect(page.locator(".tape", has=page.locator("#tape-hip")).locator(".problem")).to_have_count(1)
    page.unroute(REST)
    marit.settle(page)


def test_a_drawing_that_was_changed_is_the_one_that_is_loaded(marit: Desk) -> None:
    """After tapes, sliders, words and corrections every line is where, and what, it is when the page is loaded anew."""
    page = marit.window("measure")
    for tape, value in (("upper_chest", "91"), ("hip", "104.2"), ("bust", "97")):
        page.fill(f"#tape-{tape}", value)
        marit.settle(page)
    page.click("nav a[data-place=style]")
    slider = page.locator("#style input[type=range][data-keys]:visible").first
    slider.focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    page.select_option("#mark", "front.armhole")
    page.keyboard.press("ArrowRight")
    marit.settle(page)
    page.select_option("#mark", "")
    page.click("nav a[data-place=measure]")
    now = page.evaluate(LINES)
    page.reload()
    page.wait_for_selector("svg.sheet")
    assert page.evaluate(LINES) == now
