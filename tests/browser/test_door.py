"""The page behind its password, in a browser that comes from outside: the form, a wrong word, the right one."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.server import Server
from tests.browser.test_accessible import violations
from tests.cli.process import EXAMPLES

WORD = "blue thread, long seam"

pytestmark = pytest.mark.slow


@pytest.fixture
def house(tmp_path: Path) -> Iterator[Server]:
    """A page at another address than the usual one, with a password."""
    shutil.copy(EXAMPLES / "tee.toml", tmp_path / "tee.toml")
    path = tmp_path / "password.txt"
    path.write_text(WORD, encoding="utf-8")
    path.chmod(0o600)
    server = Server(tmp_path, tmp_path / "tee.toml", more=("--host", "127.0.0.2", "--password-file", str(path)))
    server.start()
    yield server
    server.kill()


def window(chromium: Browser, server: Server, theme: str = "light", width: int = 1280) -> tuple[Page, list[str]]:
    """A window of a browser of its own, and the addresses that it asks for."""
    page = chromium.new_context(viewport={"width": width, "height": 800}).new_page()
    page.emulate_media(color_scheme="dark" if theme == "dark" else "light")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(server.address)
    return page, asked


@pytest.mark.parametrize(("theme", "width"), [("light", 1280), ("dark", 390)])
def test_by_keyboard_alone(chromium: Browser, house: Server, theme: str, width: int) -> None:
    """The field has the focus; a wrong word is told beside it; the right one opens the docket, which can be changed."""
    page, asked = window(chromium, house, theme, width)
    assert page.evaluate("document.activeElement.id") == "password"
    assert violations(page) == []
    page.keyboard.type("red thread")
    page.keyboard.press("Enter")
    page.locator("[role=alert]").wait_for()
    assert page.evaluate("document.activeElement.id") == "password"
    assert page.input_value("#password") == ""
    assert violations(page) == []
    page.keyboard.type(WORD)
    page.keyboard.press("Enter")
    page.locator("#undo").wait_for()
    assert "everybody with the password" in page.inner_text("footer")
    page.fill("#tape-hip", "102")
    page.keyboard.press("Tab")
    page.locator("#undo:not([disabled])").wait_for()
    assert page.context.cookies()[0]["sameSite"] == "Strict"
    assert page.evaluate("document.cookie") == ""
    assert [url for url in asked if not url.startswith((house.address, "data:", "blob:"))] == []
    assert not [url for url in asked if "thread" in url or "key=" in url]
    page.context.close()


def test_a_new_start_asks_again(chromium: Browser, house: Server) -> None:
    """The cookie of an earlier start opens nothing; the password does, and what was written is there."""
    page, _ = window(chromium, house)
    page.fill("#password", WORD)
    page.click("button")
    page.locator("#tape-hip").wait_for()
    page.fill("#tape-hip", "102")
    page.keyboard.press("Tab")
    page.locator("#undo:not([disabled])").wait_for()
    house.kill()
    house.start()
    page.goto(house.address)
    page.fill("#password", WORD)
    page.click("button")
    page.locator("#tape-hip").wait_for()
    assert page.input_value("#tape-hip") == "102"
    page.context.close()
