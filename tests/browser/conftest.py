"""A server and a browser for each test of the page; whatever the test, the browser must have had nothing to say."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from tests.browser.server import Server
from tests.browser.window import Desk
from tests.cli.process import EXAMPLES

SWITCHES = ("--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking")
"""Without a sandbox, because tests may run as root, for whom it does not start; the rest keeps Chromium quiet."""


# For a module and not for the session: while playwright runs, no other test can have an event loop.
@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """The system's Chromium."""
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    assert path, "the tests of the page need chromium; ./check sets it up"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=list(SWITCHES))
        yield browser
        browser.close()


def _desk(chromium: Browser, server: Server) -> Iterator[Desk]:
    context = chromium.new_context(viewport={"width": 1280, "height": 800}, accept_downloads=True)
    try:
        desk = Desk(server, context)
        server.start()
        yield desk
        desk.is_content()
    finally:
        context.close()
        server.kill()


@pytest.fixture
def empty(chromium: Browser, tmp_path: Path) -> Iterator[Desk]:
    """A desk with nothing on it: no docket yet."""
    yield from _desk(chromium, Server(tmp_path))


@pytest.fixture
def marit(chromium: Browser, tmp_path: Path) -> Iterator[Desk]:
    """A desk with Marit's docket on it."""
    shutil.copy(EXAMPLES / "tee.toml", tmp_path / "tee.toml")
    yield from _desk(chromium, Server(tmp_path, tmp_path / "tee.toml"))
