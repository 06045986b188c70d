"""Windows closed, servers killed: what was written stays."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow


def test_reload_and_second_window(marit: Desk) -> None:
    """What one window writes is there after a reload, and in another window, whose changes join it."""
    page = marit.window("measure")
    page.fill("#tape-bust", "96")
    marit.settle(page)
    page.reload()
    expect(page.locator("#tape-bust")).to_have_value("96")
    other = marit.window("measure")
    expect(other.locator("#tape-bust")).to_have_value("96")
    other.fill("#tape-hip", "104")
    marit.settle(other)
    # The first window does not know of it yet; its own change must not undo the other's.
    page.fill("#tape-waist", "79")
    expect(page.locator("#tape-hip")).to_have_value("104")
    for line in ("bust = 96", "waist = 79", "hip = 104"):
        expect(page.locator("#text")).to_have_value(re.compile(rf"\n{line}\b"))


def test_text_over_a_newer_docket_is_refused(marit: Desk) -> None:
    """A text written over what another window wrote meanwhile is kept, and not used until the maker has seen that."""
    page, other = marit.window("docket"), marit.window("measure")
    other.fill("#tape-hip", "104")
    marit.settle(other)
    page.fill("#text", page.input_value("#text").replace("waist = 77", "waist = 79"))
    marit.down = True  # the refusal is an answer of 409, which the console tells as a failed load
    page.click("#take-text")
    expect(page.locator("#told-words")).to_contain_text("another window has changed the docket")
    expect(page.locator("#changed")).to_be_visible()
    text = page.locator("#text")
    expect(text).to_have_value(re.compile(r"\nwaist = 79\b"))
    page.click("#take-theirs")
    expect(text).to_have_value(re.compile(r"\nhip = 104\b"))
    expect(text).to_have_value(re.compile(r"\nwaist = 77\b"))
    text.fill(text.input_value().replace("waist = 77", "waist = 79"))
    page.click("#take-text")
    expect(other.locator("#tape-waist")).to_have_value("77")
    other.reload()
    expect(other.locator("#tape-waist")).to_have_value("79")
    expect(other.locator("#tape-hip")).to_have_value("104")


def test_server_killed_and_started_again(marit: Desk) -> None:
    """What was written before is kept; what is written meanwhile waits, and is sent when the server is back."""
    page = marit.window("measure")
    page.fill("#tape-bust", "96")
    marit.settle(page)
    marit.down = True
    marit.server.kill()
    page.fill("#tape-hip", "104")
    expect(page.locator("#offline")).to_be_visible()
    expect(page.locator("#tape-hip")).to_have_value("104")
    marit.server.start()
    again = marit.window("measure")
    expect(again.locator("#tape-bust")).to_have_value("96")
    expect(page.locator("#offline")).to_be_hidden()
    marit.settle(page)
    again.reload()
    expect(again.locator("#tape-hip")).to_have_value("104")
    expect(again.locator("#tape-bust")).to_have_value("96")
