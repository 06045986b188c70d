"""Draft: the construction step by step, and what a line says of itself."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk


def test_a_docket_is_drawn(marit: Desk) -> None:
    """The page opens with the drawing in view and nothing to look at."""
    page = marit.window()
    expect(page.locator("h1")).to_have_text("Tee for Marit")
    expect(page.locator("#count")).to_have_text("all true")
    expect(page.locator("#drawing .mark").first).to_be_attached()


@pytest.mark.slow
def test_the_construction_plays(marit: Desk) -> None:
    """On and back move the step and tell its words; before the last step less is drawn than after it."""
    page = marit.window("draft")
    number, words = page.locator("#step-number"), page.locator("#told-words")
    count = int(page.inner_text("#step-count"))
    assert count > 30
    page.locator("#step").fill("20")
    expect(number).to_have_text("20")
    at_20 = words.inner_text()
    page.get_by_role("button", name="On", exact=True).click()
    expect(number).to_have_text("21")
    at_21 = words.inner_text()
    assert at_21 != at_20
    page.get_by_role("button", name="Back", exact=True).click()
    expect(number).to_have_text("20")
    expect(words).to_have_text(at_20)
    hidden = page.locator("#drawing .mark.later").count()
    assert hidden > 0
    says = page.locator("#draft .steps li[aria-current=step] .says").text_content()
    assert says
    assert says.strip() in at_20
    page.locator("#step").fill(str(count))
    expect(page.locator("#drawing .mark.later")).to_have_count(0)


@pytest.mark.slow
def test_a_line_tells_its_formula(marit: Desk) -> None:
    """Chosen from the list or pointed at in the drawing, a line says its formula with the numbers in."""
    page = marit.window("draft")
    words = page.locator("#told-words")
    page.select_option("#mark", "armhole_depth")
    expect(words).to_contain_text("armhole depth")
    expect(words.locator(".formula")).to_contain_text(re.compile(r"=.*\d"))
    chosen = words.inner_text()
    line = page.locator("#drawing .mark[data-step='back.hem'] path.hit").first
    at = line.evaluate(
        "path => { const p = path.getPointAtLength(path.getTotalLength() / 2).matrixTransform(path.getScreenCTM());"
        " return [p.x, p.y]; }"
    )
    page.mouse.move(at[0] - 3, at[1])
    page.mouse.move(*at)
    expect(words).to_contain_text("back: hem")
    assert words.inner_text() != chosen
