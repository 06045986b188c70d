"""A browser that is watched: what its windows ask for, and what they complain about."""

from __future__ import annotations

from dataclasses import dataclass, field

from playwright.sync_api import BrowserContext, ConsoleMessage, Page, Request

from tests.browser.server import Server

__all__ = ["Desk"]

QUIET_STEPS = 6
"""The page fetches the places out of view 150 ms after an answer; a step is 50 ms."""


# Without slots: playwright hangs what it wraps a listener in on the listener's object.
@dataclass
class Desk:
    """A maker's browser in front of a server."""

    server: Server
    browser: BrowserContext
    down: bool = False
    """The server was killed, so requests may fail."""
    complaints: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    open_requests: int = 0

    def __post_init__(self) -> None:
        self.browser.set_default_timeout(15_000)
        self.browser.on("request", self._request)
        self.browser.on("requestfinished", self._answered)
        self.browser.on("requestfailed", self._answered)
        self.browser.on("console", self._console)
        self.browser.on("weberror", lambda error: self.complaints.append(str(error.error)))

    def window(self, place: str = "") -> Page:
        """A new window, at a place of the day."""
        page = self.browser.new_page()
        page.goto(self.server.address)
        if place:
            page.click(f"nav a[data-place={place}]")
        return page

    def is_content(self) -> None:
        """No complaint, and nothing asked of anybody but the server."""
        assert self.complaints == []
        assert self.asked
        here = (f"{self.server.origin}/", "data:", "blob:")
        assert [url for url in self.asked if not url.startswith(here)] == []

    def settle(self, page: Page) -> None:
        """Wait until everything that was written has been answered, and nothing more is asked for a while."""
        quiet = 0
        for _ in range(200):
            page.wait_for_timeout(50)
            quiet = 0 if self.open_requests else quiet + 1
            if quiet > QUIET_STEPS:
                return
        raise AssertionError("the page did not come to rest in ten seconds")

    def _request(self, request: Request) -> None:
        self.asked.append(request.url)
        self.open_requests += 1

    def _answered(self, _request: Request) -> None:
        self.open_requests -= 1

    def _console(self, message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"} and not (self.down and "Failed to load resource" in message.text):
            self.complaints.append(message.text)
