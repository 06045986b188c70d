"""True: a seam's edges laid on each other and walked from start to end, by keyboard and by button."""

from __future__ import annotations

import math
import re

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow

LAID = "#laid-armhole_front"


def test_the_sleeve_is_walked_into_the_armhole(marit: Desk) -> None:
    """Fetched when it is opened; slider and buttons roll the sleeve on; a change elsewhere keeps the place."""
    page = marit.window("true")
    marit.settle(page)
    assert not any("/seam?" in url for url in marit.asked)
    page.click("#lay-armhole_front")
    rolling, says = page.locator(f"{LAID} .rolling"), page.locator(f"{LAID} .says")
    expect(says).to_have_text(re.compile(r"At the start: walked 0\.0 on 0\.0 cm"))
    expect(page.locator("#lay-armhole_front")).to_have_attribute("aria-expanded", "true")
    before = rolling.get_attribute("transform")
    page.focus("#walk-armhole_front")
    page.keyboard.press("ArrowRight")
    expect(says).to_have_text(re.compile("Between the marks"))
    assert rolling.get_attribute("transform") != before
    page.click("#next-armhole_front")
    expect(says).to_have_text(re.compile("At mark 1"))
    expect(page.get_by_label("Walk the seam").first).to_have_attribute("aria-valuetext", re.compile("At mark 1"))
    assert_touching(page.evaluate(TICKS))
    opened_out = rolling.get_attribute("transform") or ""
    page.check("#together-armhole_front")
    expect(rolling).not_to_have_attribute("transform", opened_out)
    expect(says).to_have_text(re.compile("At mark 1"))
    assert_touching(page.evaluate(TICKS))
    page.click("nav a[data-place=style]")
    page.fill("#garment-neckline-lower_front", "2")
    marit.settle(page)
    page.click("nav a[data-place=true]")
    expect(says).to_have_text(re.compile("At mark 1"))
    page.click("#lay-armhole_front")
    expect(page.locator(LAID)).to_be_hidden()


TICKS = """() => ['.lying', '.rolling'].map(side => {
  const tick = document.querySelector(`#laid-armhole_front ${side} .tick`);
  return [...tick.getAttribute('d').matchAll(/M([-.0-9]+),([-.0-9]+)/g)].map(([, x, y]) => {
    const start = new DOMPoint(Number(x), Number(y)).matrixTransform(tick.getScreenCTM());
    return [start.x, start.y];
  });
})"""
"""Where on the screen the notches of both sides meet the seam line; the sleeve has one more, at its crown."""


def assert_touching(sides: list[list[list[float]]]) -> None:
    """The armhole's notch begins at one place of the screen with one of the sleeve's, to half a pixel."""
    lying, rolling = sides
    assert (len(lying), len(rolling)) == (1, 2)
    assert min(math.dist(lying[0], other) for other in rolling) < 0.5
