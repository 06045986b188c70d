"""From an empty page to a printed pattern."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.window import Desk
from tests.cli.process import tapeline

TAPES = {
    "bust": "88",
    "upper_chest": "84",
    "waist": "70",
    "hip": "95",
    "shoulder_width": "38",
    "back_length": "39",
    "hip_depth": "20",
    "arm_length": "57",
}
"""Solveig is invented; no doubt stands against these."""

pytestmark = pytest.mark.slow


def same_as_the_command(printed: Path, text: str, folder: Path) -> None:
    """The command line prints the same docket to the same bytes; both date it by SOURCE_DATE_EPOCH."""
    (folder / "new.toml").write_text(text, encoding="utf-8", newline="")
    done = tapeline("print", "new.toml", "--out", "command.pdf", cwd=folder)
    assert done.code == 0, done.err
    command = (folder / "command.pdf").read_bytes()
    assert command.startswith(b"%PDF")
    assert printed.read_bytes() == command


def test_by_mouse(empty: Desk, tmp_path: Path) -> None:
    """Tapes typed into fields that are clicked, a style chosen, the print and the docket fetched."""
    page = empty.window()
    expect(page.locator("#no-drawing")).to_be_visible()
    page.click("#name")
    page.keyboard.type("Solveig")
    for name, value in TAPES.items():
        page.click(f"#tape-{name}")
        page.keyboard.type(value)
    expect(page.locator("#no-drawing")).to_be_hidden()
    page.click("nav a[data-place=style]")
    page.check("#garment-looseness-easy")
    page.click("#garment-length")
    page.keyboard.press("Control+a")
    page.keyboard.type("6")
    empty.settle(page)
    page.click("nav a[data-place=finish]")
    with page.expect_download() as printing:
        page.get_by_role("link", name="Print, as PDF").click()
    with page.expect_download() as saving:
        page.get_by_role("link", name="Docket").and_(page.locator("[download]")).click()
    assert (printing.value.suggested_filename, saving.value.suggested_filename) == ("new.pdf", "new.toml")
    text = saving.value.path().read_text(encoding="utf-8")
    assert 'name = "Solveig"' in text
    assert 'looseness = "easy"' in text
    assert "\nlength = 6" in text
    same_as_the_command(printing.value.path(), text, tmp_path)


def tab_to(page: Page, wanted: str) -> None:
    """Tab until something has the focus, which must be within sight then."""
    for _ in range(150):
        page.keyboard.press("Tab")
        if page.evaluate("wanted => document.activeElement.matches(wanted)", wanted):
            expect(page.locator(wanted)).to_be_in_viewport()
            return
    pytest.fail(f"{wanted} was not reached")


def test_by_keyboard(empty: Desk, tmp_path: Path) -> None:
    """Tab, arrows, Enter and letters alone do the same; the fields come in the order in which tapes are taken."""
    page = empty.window()
    tab_to(page, "#name")
    page.keyboard.type("Solveig")
    for name, value in TAPES.items():
        tab_to(page, f"#tape-{name}")
        page.keyboard.type(value)
    expect(page.locator("#no-drawing")).to_be_hidden()
    empty.settle(page)
    tab_to(page, "nav a[data-place=style]")
    page.keyboard.press("Enter")
    tab_to(page, "#garment-looseness-slight")
    page.keyboard.press("ArrowDown")
    tab_to(page, "#garment-length-slide")
    page.keyboard.press("ArrowRight")
    empty.settle(page)
    tab_to(page, "nav a[data-place=finish]")
    page.keyboard.press("Enter")
    tab_to(page, "#finish a[href='/download/pdf']")
    with page.expect_download() as printing:
        page.keyboard.press("Enter")
    tab_to(page, "#finish a[href='/download/toml']")
    with page.expect_download() as saving:
        page.keyboard.press("Enter")
    text = saving.value.path().read_text(encoding="utf-8")
    assert 'looseness = "easy"' in text
    assert "\nlength = 3.1" in text
    same_as_the_command(printing.value.path(), text, tmp_path)
