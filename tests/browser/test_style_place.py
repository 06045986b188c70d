"""Style: a choice changed by a handle on the drawing, and the old drawing laid under the new one."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow

HANDLE = "#drawing .handle[data-path='garment.neckline.lower_front']"


def test_a_handle_is_dragged(marit: Desk) -> None:
    """Pulled down by the mouse, the front neckline goes lower in field and docket, as one step that Undo takes back."""
    page = marit.window("style")
    field = page.locator("#garment-neckline-lower_front")
    before = float(field.input_value())
    grip = page.locator(f"{HANDLE} .hit").bounding_box()
    assert grip is not None
    x, y = grip["x"] + grip["width"] / 2, grip["y"] + grip["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    for down in range(2, 22, 2):
        page.mouse.move(x, y + down)
    expect(page.locator("#told-words")).to_contain_text("neckline lower front")
    page.mouse.up()
    marit.settle(page)
    after = float(field.input_value())
    assert after > before
    page.click("nav a[data-place=docket]")
    expect(page.locator("#text")).to_have_value(re.compile(rf"lower_front = {after:g}\b"))
    page.click("#undo")
    expect(page.locator("#text")).not_to_have_value(re.compile("lower_front = "))
    assert float(field.input_value()) == before


def test_a_handle_is_moved_by_keys(marit: Desk) -> None:
    """With the focus on it the arrow keys move it by its step, and the focus stays on it when the drawing is new."""
    page = marit.window("style")
    handle = page.locator(HANDLE)
    before = float(handle.get_attribute("aria-valuenow") or "nan")
    handle.focus()
    page.keyboard.press("ArrowDown")
    marit.settle(page)
    first = float(handle.get_attribute("aria-valuenow") or "nan")
    assert first > before
    expect(handle).to_be_focused()
    page.keyboard.press("ArrowDown")
    marit.settle(page)
    assert float(handle.get_attribute("aria-valuenow") or "nan") == pytest.approx(2 * first - before)


def test_before_and_after(marit: Desk) -> None:
    """The drawing that was kept stays under the new one, with what moved in millimetres, when loaded again too."""
    page = marit.window("style")
    page.get_by_text("More", exact=True).click()
    page.get_by_role("button", name="Keep this to compare").click()
    page.fill("#garment-length", "8")
    marit.settle(page)
    moved = page.locator("#moved")
    expect(moved).to_be_visible()
    # From 3 cm below the hip line to 8.
    expect(moved).to_contain_text(re.compile(r"hem.*50"))
    page.reload()
    expect(moved).to_contain_text(re.compile(r"hem.*50"))
    page.get_by_role("button", name="Take the old drawing away").click()
    expect(moved).to_be_hidden()
    page.reload()
    page.locator("svg.sheet .piece").first.wait_for()
    expect(moved).to_be_hidden()
