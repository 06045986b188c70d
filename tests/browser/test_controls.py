"""Every control says what it is, and the focus goes through the page as the day goes."""

from __future__ import annotations

import pytest

from tests.browser.window import Desk

pytestmark = pytest.mark.slow

UNNAMED = """() => [...document.querySelectorAll('button, input, select, textarea, summary, a')]
  .filter(control => control.checkVisibility({ visibilityProperty: true }) && control.type !== 'file')
  .filter(control => {
    const seen = [...(control.labels ?? [])].some(label => label.checkVisibility() && label.innerText.trim());
    const own = control.matches('button, summary, a') && control.innerText.trim();
    const beside = control.type === 'range' && control.closest('.choice, .player')?.innerText.trim();
    return !(seen || own || beside);
  })
  .map(control => control.outerHTML.slice(0, 120))"""
"""Controls that can be seen and have no words that can be seen: their own, a label's, or those of the field beside."""

REGION = """() => {
  const here = document.activeElement;
  return here.matches('.skip') ? 'skip' : (here.closest('header, nav, #place, #table') ?? document.body).id
    || here.closest('header, nav')?.localName || 'body';
}"""


@pytest.mark.parametrize("place", ["measure", "draft", "style", "true", "finish", "docket"])
def test_every_control_has_visible_words(marit: Desk, place: str) -> None:
    """No icon alone, and no field that only a screen reader can name."""
    page = marit.window(place)
    page.click("details.more summary")
    assert page.locator("button:visible").count() > 5
    assert page.evaluate(UNNAMED) == []


def test_focus_follows_the_day(marit: Desk) -> None:
    """From the top: undo, the places of the day, the place of work, and last the drawing; nothing in between twice."""
    page = marit.window("measure")
    page.reload()
    seen: list[str] = []
    for _ in range(200):
        page.keyboard.press("Tab")
        region = page.evaluate(REGION)
        if region == "body":
            break
        if not seen or seen[-1] != region:
            seen.append(region)
    assert seen[:5] in (["skip", "header", "nav", "place", "table"], ["skip", "nav", "place", "table"])
    assert len(set(seen)) == len(seen)
