"""What the page says when a part of it, or the server, is not there."""

from __future__ import annotations

import pytest
from playwright.sync_api import Route, expect

from tests.browser.window import Desk

pytestmark = pytest.mark.slow


def test_what_cannot_be_asked_is_said_where_it_was_asked_for(marit: Desk) -> None:
    """With the server gone, asking what moves a line, how the sheets lie, or for a new text says so."""
    page = marit.window("finish")
    page.select_option("#mark", label="neckline")
    marit.settle(page)
    marit.down = True
    marit.server.kill()
    page.click("#ask-movers")
    expect(page.locator("#told-more")).to_have_text("Tapeline does not answer.")
    page.click("#ask-map")
    expect(page.locator("#map")).to_have_text("Tapeline does not answer.")
    page.click("nav a[data-place=docket]")
    page.locator("#new-text").dispatch_event("click")
    expect(page.locator("#told-words")).to_have_text("Tapeline does not answer.")


def test_an_element_that_is_missing_is_named(marit: Desk) -> None:
    """When the page and its modules do not fit each other, the fault says which element it is about."""
    page = marit.browser.new_page()

    def without_the_slider(route: Route) -> None:
        answer = route.fetch()
        route.fulfill(response=answer, body=answer.text().replace('id="step"', 'id="other"'))

    page.route(marit.server.address, without_the_slider)
    page.goto(marit.server.address)
    marit.settle(page)
    said, marit.complaints[:] = list(marit.complaints), []
    assert len(said) == 1
    assert "The page has no #step" in said[0]
