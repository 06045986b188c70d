"""A careless tape: found, shown and mended."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow


def test_a_doubt_is_found_and_mended(marit: Desk) -> None:
    """A hip 12 per cent too small is doubted at its field; the value that the other tapes suggest ends the doubt."""
    page = marit.window("measure")
    row = page.locator(".tape", has=page.locator("#tape-hip"))
    expect(row.locator(".problem")).to_have_count(0)
    page.fill("#tape-hip", "88.9")
    expect(row.locator(".problem")).to_have_count(1)
    page.locator("h1").click()
    row.get_by_role("button", name="Use ").click()
    expect(row.locator(".problem")).to_have_count(0)
    used = float(page.input_value("#tape-hip").removesuffix(" cm"))
    # Marit's hip was taken as 101: the survey may be off by a few centimetres, not by the mistake's twelve.
    assert abs(used - 101) < 6
    page.click("nav a[data-place=docket]")
    expect(page.locator("#text")).to_have_value(re.compile(rf"\nhip = \"?{used:g}\b"))


def test_a_suggested_value_is_tried_over_the_drawing(marit: Desk) -> None:
    """The drawing as it is lies dashed under the tried one, with what moves most in words; the docket stays."""
    page = marit.window("measure")
    page.fill("#tape-hip", "88.9")
    page.locator("h1").click()
    marit.settle(page)
    own = page.locator(".paper [data-step='front.side_hip']").get_attribute("data-at")
    button = page.get_by_role("button", name="Try ")
    tried = float(button.inner_text().split()[1])
    button.click()
    moved, words = page.locator("#moved"), page.locator("#told-words")
    expect(moved.locator("summary")).to_have_text(f"Tried: hip {tried:g} cm")
    expect(page.locator(".paper .before path.seam-line").first).to_be_attached()
    # The four side seams share what the hip is more.
    far = float(moved.get_by_role("row", name="front: side hip").locator("td").first.inner_text())
    assert abs(far - (tried - 88.9) * 10 / 4) < 0.5
    expect(words).to_contain_text(f"front: side hip {far:.1f} out")
    expect(words).to_contain_text("Nothing is written")
    marit.settle(page)
    expect(page.locator("#tape-hip")).to_have_value("88.9")
    expect(page.locator(".paper .before").first).to_be_attached()
    page.get_by_role("button", name="Back to the docket's drawing").click()
    expect(moved).to_be_hidden()
    expect(page.locator(".paper .before")).to_have_count(0)
    assert page.locator(".paper [data-step='front.side_hip']").get_attribute("data-at") == own


def test_what_is_written_ends_the_trial(marit: Desk) -> None:
    """A value typed while another is tried shows the docket's own drawing, with nothing laid under it."""
    page = marit.window("measure")
    page.fill("#tape-hip", "88.9")
    page.locator("h1").click()
    marit.settle(page)
    page.get_by_role("button", name="Try ").click()
    expect(page.locator("#moved")).to_be_visible()
    page.fill("#tape-waist", "78")
    expect(page.locator("#moved")).to_be_hidden()


def test_what_is_tried_is_for_measure_alone(marit: Desk) -> None:
    """Whoever goes on to another place sees the docket's own drawing there."""
    page = marit.window("measure")
    page.fill("#tape-hip", "88.9")
    page.locator("h1").click()
    marit.settle(page)
    own = page.locator(".paper [data-step='front.side_hip']").get_attribute("data-at")
    page.get_by_role("button", name="Try ").click()
    expect(page.locator("#moved")).to_be_visible()
    assert page.locator(".paper [data-step='front.side_hip']").get_attribute("data-at") != own
    page.click("nav a[data-place=finish]")
    expect(page.locator("#moved")).to_be_hidden()
    assert page.locator(".paper [data-step='front.side_hip']").get_attribute("data-at") == own
