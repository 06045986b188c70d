"""The docket in several sizes, on the page: typed, shown, and taken away."""

from __future__ import annotations

import pytest

from tests.browser.window import Desk

pytestmark = pytest.mark.slow


def test_sizes_are_shown_and_taken_away(marit: Desk) -> None:
    """The nest is drawn, the chart is a table, a file can be had; a list that is none is told in words."""
    page = marit.window("finish")
    page.fill("#run-sizes", "84-92")
    page.click("#ask-run")
    page.wait_for_selector("#run table")
    assert "Tee in 3 sizes: 84, 88, 92." in page.inner_text("#run")
    page.locator("#run img.nest").scroll_into_view_if_needed()
    marit.settle(page)
    assert page.evaluate("document.querySelector('#run img.nest').naturalWidth") > 0
    with page.expect_download() as coming:
        page.click("#run a[href^='/sizes/chart']")
    assert coming.value.suggested_filename == "tee-sizes-chart.csv"
    marit.is_content()


def test_what_is_no_list_is_told_where_it_was_asked(marit: Desk) -> None:
    """A size that there is not is refused below the button, and nothing else changes."""
    page = marit.window("finish")
    page.fill("#run-sizes", "85")
    page.click("#ask-run")
    page.get_by_text("no size 85").wait_for()
    # The browser itself remarks that the answer was a refusal; that is all it may say.
    assert all("422" in complaint for complaint in marit.complaints)
    marit.complaints.clear()
