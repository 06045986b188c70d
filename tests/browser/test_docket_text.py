"""The docket as text: written wrongly, told where, mended, taken back and brought again."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk
from tests.cli.process import MARIT

pytestmark = pytest.mark.slow


def test_an_error_is_told_at_its_line_and_mended(marit: Desk) -> None:
    """A misspelled tape is named with its line; pressing that selects the line; the mended text drafts again."""
    page = marit.window("docket")
    wrong = MARIT.replace("bust = 94 ", "busst = 94", 1)
    line = next(n for n, row in enumerate(wrong.splitlines(), 1) if row.startswith("busst"))
    page.fill("#text", wrong)
    page.click("#take-text")
    expect(page.locator("#count")).to_contain_text("to mend")
    expect(page.locator("#old-drawing")).to_be_visible()
    told = page.locator("#docket .problem", has_text="busst").first
    told.get_by_role("button", name=f"Line {line}").click()
    chosen = page.evaluate(
        "() => { const t = document.activeElement; return t.value.slice(t.selectionStart, t.selectionEnd); }"
    )
    assert chosen.startswith("busst = 94")
    page.fill("#text", MARIT.replace("bust = 94 ", "bust = 95 ", 1))
    page.click("#take-text")
    expect(page.locator("#count")).to_have_text("all true")
    expect(page.locator("#old-drawing")).to_be_hidden()
    page.click("nav a[data-place=measure]")
    expect(page.locator("#tape-bust")).to_have_value("95")


def test_undo_and_redo(marit: Desk) -> None:
    """Each change can be taken back and brought again, by button and by key."""
    page = marit.window("measure")
    bust, hip = page.locator("#tape-bust"), page.locator("#tape-hip")
    bust.fill("96")
    hip.fill("103")
    marit.settle(page)
    page.click("h1")
    page.click("#undo")
    expect(hip).to_have_value("101")
    expect(bust).to_have_value("96")
    page.click("#undo")
    expect(bust).to_have_value("94")
    expect(page.locator("#undo")).to_be_disabled()
    page.click("#redo")
    expect(bust).to_have_value("96")
    page.keyboard.press("Control+Shift+z")
    expect(hip).to_have_value("103")
    expect(page.locator("#redo")).to_be_disabled()
