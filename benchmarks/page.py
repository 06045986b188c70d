"""How long the page takes in a real Chromium: from key to painted drawing, to the first view, and what it holds.

A key is taken when the browser's event says it went down, and the drawing is painted when the frame that shows the new
version has been handed over. That frame waits for the screen's next refresh (60 a second in a headless browser), which
is part of what a maker sees.
"""

from __future__ import annotations

import shutil
import tempfile
import time
from pathlib import Path
from statistics import median, quantiles

from playwright.sync_api import BrowserContext, Page, sync_playwright

from benchmarks.clock import ROOT
from tests.browser.conftest import SWITCHES
from tests.browser.server import Server

__all__ = ["time_page"]

EVENTS = 100
"""Of each kind: key events in a tape, moves of a slider."""
PAUSE_MS = 100
"""A maker types no faster than ten figures a second."""
WINDOWS = 5
FIRST_VIEWS = 5
SLIDER = "#style input[type=range][data-keys]:visible"

WATCH = """() => {
  window.times = [];
  performance.setResourceTimingBufferSize(1000);
  let down = 0, typed = 0;
  addEventListener("keydown", (event) => { down = event.timeStamp; }, true);
  addEventListener("input", () => { typed = down; }, true);
  new MutationObserver(() => {
    const from = typed;
    if (!from) return;
    typed = 0;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => window.times.push(performance.now() - from);
      port2.postMessage(0);
    });
  }).observe(document.body, { attributeFilter: ["data-version"] });
}"""


def time_page() -> None:
    """Prints every figure; needs Chromium, and nothing else busy on the machine."""
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if not chromium:
        raise SystemExit("bench: chromium is not there; ./check sets it up")
    with tempfile.TemporaryDirectory(prefix="tapeline bench ") as folder, sync_playwright() as playwright:
        shutil.copy(ROOT / "examples" / "tee.toml", folder)
        server = Server(Path(folder), Path(folder) / "tee.toml")
        server.start()
        browser = playwright.chromium.launch(executable_path=chromium, args=list(SWITCHES))
        try:
            context = browser.new_context(viewport={"width": 1280, "height": 800})
            views = _first_views(context, server)
            page = context.pages[0]
            _show("first view, from the answer's first byte to the painted drawing", views, "s", 1000)
            _show("key in a tape to painted drawing", _keys(page, "#tape-upper_chest"), "ms", 1)
            _show("  of this until the server's answer is in", _server_ms(page), "ms", 1)
            page.goto(f"{server.origin}/#/style")
            _show("slider move to painted drawing", _slides(page), "ms", 1)
            while len(context.pages) < WINDOWS:
                context.new_page().goto(server.origin)
            print(f"{f'memory of the server with {WINDOWS} windows':64}{_memory_mb(server):9.0f} MB")
        finally:
            browser.close()
            server.kill()


def _first_views(context: BrowserContext, server: Server) -> list[float]:
    """Milliseconds from the first byte of the page to its first painted content, in new windows."""
    context.new_page().goto(server.address)
    taken = []
    for _ in range(FIRST_VIEWS):
        page = context.new_page()
        page.goto(server.origin)
        page.wait_for_selector("svg.sheet")
        taken.append(
            page.evaluate(
                """() => new Promise((done) => requestAnimationFrame(() => setTimeout(() => done(
                performance.now() - performance.getEntriesByType("navigation")[0].responseStart))))"""
            )
        )
        page.close()
    return taken


def _keys(page: Page, field: str) -> list[float]:
    """A maker types the last figures of a tape over and over; no tape comes twice, so none is remembered."""
    page.evaluate(WATCH)
    page.fill(field, "89.00")
    page.wait_for_timeout(500)
    page.evaluate("() => { window.times = []; }")
    tenth = hundredth = 0
    for count in range(EVENTS):
        page.locator(field).press("End")
        if count % 10 < 9:
            hundredth = (hundredth + 1) % 10
        else:
            tenth += 1
            page.locator(field).press("ArrowLeft")
        page.locator(field).press("Shift+ArrowLeft")
        _wait(page, str(hundredth if count % 10 < 9 else tenth % 10), count)
    return list(page.evaluate("window.times"))


def _slides(page: Page) -> list[float]:
    """Sliders moved by their arrow keys, each one way only."""
    page.evaluate("() => { window.times = []; }")
    count = 0
    for slider in page.locator(SLIDER).all():
        room = slider.evaluate("(one) => Math.floor((one.max - one.value) / one.step) || 0")
        slider.focus()
        for _ in range(min(int(room), 25, EVENTS - count)):
            _wait(page, "ArrowRight", count)
            count += 1
    return list(page.evaluate("window.times"))


def _wait(page: Page, key: str, done: int) -> None:
    page.keyboard.press(key)
    # Nothing is asked before it is over, nor at every frame: that would be work for the browser that no maker gives it.
    time.sleep(PAUSE_MS / 1000)
    page.wait_for_function("(done) => window.times.length > done", arg=done, polling=PAUSE_MS)


def _server_ms(page: Page) -> list[float]:
    """How long the answers to edits took, as the browser saw it."""
    return list(
        page.evaluate(
            """() => performance.getEntriesByType("resource").filter((entry) => entry.name.endsWith("/edit"))
            .map((entry) => entry.responseEnd - entry.requestStart)"""
        )
    )


def _show(name: str, milliseconds: list[float], unit: str, per: float) -> None:
    figures = [value / per for value in milliseconds]
    worst = quantiles(figures, n=20)[-1] if len(figures) >= 20 else max(figures)
    word = "95th percentile" if len(figures) >= 20 else "longest"
    places = 2 if unit == "s" else 0
    print(
        f"{name:64}{median(figures):9.{places}f} {unit}, {word} {worst:.{places}f} {unit}, of {len(figures)}",
        flush=True,
    )


def _memory_mb(server: Server) -> float:
    """Resident memory, as the kernel tells it."""
    if server.process is None:
        raise RuntimeError("the server is not running")
    status = Path(f"/proc/{server.process.pid}/status").read_text(encoding="utf-8")
    return next(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmRSS:")) / 1024
