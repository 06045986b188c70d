"""Every place of the page meets the rules that axe-core can check (WCAG 2.2 A and AA, and its best practices)."""

from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from tests.browser.window import Desk

PLACES = ("measure", "draft", "style", "true", "finish", "docket")

pytestmark = pytest.mark.slow


def violations(page: Page) -> list[str]:
    """What axe-core finds, with the place of each."""
    found = Axe().run(page).response["violations"]
    return [
        f"{rule['id']}: {node['target']} {node.get('failureSummary', '')}" for rule in found for node in rule["nodes"]
    ]


@pytest.mark.parametrize("width", [1280, 390])
@pytest.mark.parametrize("theme", ["light", "dark"])
def test_no_violation(marit: Desk, theme: str, width: int) -> None:
    """On each of the six places, in both themes, on a laptop and on a phone; with a doubt, so that one is seen too."""
    page = marit.window("measure")
    page.emulate_media(color_scheme="dark" if theme == "dark" else "light", reduced_motion="reduce")
    page.set_viewport_size({"width": width, "height": 800})
    page.fill("#tape-hip", "88.9")
    marit.settle(page)
    found = []
    for place in PLACES:
        page.click(f"nav a[data-place={place}]")
        marit.settle(page)
        found += [f"{place}: {one}" for one in violations(page)]
    assert found == []


def test_the_empty_page(empty: Desk) -> None:
    """Nor is there one before the first tape."""
    page = empty.window("measure")
    assert violations(page) == []


def test_a_violation_would_be_found(marit: Desk) -> None:
    """A label taken away, and a text made pale, are told."""
    page = marit.window("measure")
    page.evaluate(
        "() => { document.querySelector('label[for=tape-hip]').remove();"
        " document.querySelector('h2').style.color = '#bbb'; }"
    )
    rules = {one.partition(":")[0] for one in violations(page)}
    assert {"label", "color-contrast"} <= rules


def test_no_violation_when_things_go_wrong(marit: Desk) -> None:
    """Nor with a docket that cannot be drafted, tools unfolded, a line explained, or the server gone."""
    page = marit.window("draft")
    page.select_option("#mark", "armhole_depth")
    page.click("#ask-movers")
    page.locator("#told-more table").wait_for()
    page.click("details.more summary")
    found = violations(page)
    page.click("nav a[data-place=docket]")
    page.fill("#text", page.input_value("#text").replace("bust = 94", "bust = 940"))
    page.click("#take-text")
    page.locator("#old-drawing").wait_for()
    marit.settle(page)
    found += violations(page)
    marit.down = True
    marit.server.kill()
    page.click("nav a[data-place=measure]")
    page.fill("#tape-hip", "100")
    page.locator("#offline").wait_for()
    assert found + violations(page) == []
