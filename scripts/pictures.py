"""Makes pictures of the page: each place of the day at phone, laptop and wide size, in light and in dark.

They are for looking at. `--readme` makes the two that the README shows, in docs/images/.
"""

from __future__ import annotations

import argparse
import shutil
import sys
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "src")]

# Found only now that the path is set.
from PIL import Image  # noqa: E402 - the path is set only now
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright  # noqa: E402 - the path is set only now

from tapeline.web.places import DAY  # noqa: E402 - the path is set only now
from tests.browser.conftest import SWITCHES  # noqa: E402 - the path is set only now
from tests.browser.server import Server  # noqa: E402 - the path is set only now

Light = Literal["light", "dark"]
LIGHTS: tuple[Light, ...] = ("light", "dark")
SIZES = {"phone": (390, 800), "laptop": (1280, 800), "wide": (1920, 1080)}
PLACES = tuple(name for name, _ in DAY)
README: tuple[tuple[str, str, Light], ...] = (("measure", "laptop", "light"), ("draft", "laptop", "dark"))
COLOURS = 256
"""Of a picture in the README; more cannot be told apart on a page that has a dozen and their shades."""
DRAWN = 0.6
"""In the pictures of Draft this share of the construction is drawn, so that it is seen to grow."""


@dataclass(frozen=True, slots=True)
class Picture:
    """One place, as a maker sees it."""

    place: str
    size: str
    light: Light

    @property
    def name(self) -> str:
        """Of the file."""
        return f"{self.place}-{self.size}-{self.light}.png"


def make(pictures: Sequence[Picture], folder: Path, docket: Path = ROOT / "examples" / "tee.toml") -> list[Path]:
    """Makes them into a folder, from a server of its own that has nothing in its memory yet; gives their paths."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    with _browser() as browser, tempfile.TemporaryDirectory(prefix="tapeline pictures ") as state:
        shutil.copy(docket, state)
        server = Server(Path(state), Path(state) / docket.name)
        server.start()
        try:
            for size, light in dict.fromkeys((picture.size, picture.light) for picture in pictures):
                context = _context(browser, size, light)
                page = context.new_page()
                page.goto(server.address)
                now = [picture for picture in pictures if (picture.size, picture.light) == (size, light)]
                made += [_take(page, picture, folder) for picture in now]
                context.close()
        finally:
            server.kill()
    return made


@contextmanager
def _browser() -> Iterator[Browser]:
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    if not path:
        raise SystemExit("pictures: chromium is not there; ./check sets it up")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=list(SWITCHES))
        yield browser
        browser.close()


def _context(browser: Browser, size: str, light: Light) -> BrowserContext:
    width, height = SIZES[size]
    return browser.new_context(
        viewport={"width": width, "height": height},
        color_scheme=light,
        reduced_motion="reduce",
        device_scale_factor=1,
    )


def _take(page: Page, picture: Picture, folder: Path) -> Path:
    page.evaluate("(place) => { location.hash = `#/${place}`; }", picture.place)
    page.locator(f"#{picture.place}").wait_for()
    page.wait_for_selector("svg.sheet .piece")
    if picture.place == "draft":
        step = page.locator("#step")
        step.fill(str(int(float(step.get_attribute("max") or 1) * DRAWN)))
        # The picture is of the drawing, not of the slider's focus.
        step.blur()
    page.wait_for_load_state("networkidle")
    path, begun = folder / picture.name, folder / f".{picture.name}"
    begun.write_bytes(page.screenshot(type="png"))
    begun.replace(path)
    return path


def _fewer_colours(path: Path) -> None:
    """Keeps the rare ones: what is lit in the drawing is thin."""
    begun = path.with_name(f".{path.name}")
    with Image.open(path) as picture:
        picture.convert("RGB").quantize(COLOURS, Image.Quantize.MAXCOVERAGE).save(begun, "png", optimize=True)
    begun.replace(path)


def main(words: Sequence[str] | None = None) -> int:
    """Makes the pictures that are asked for, and says where they are."""
    parser = argparse.ArgumentParser(prog="scripts/pictures.py", description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", help="where they go; made when it is not there")
    parser.add_argument("--readme", action="store_true", help="the two of the README, into docs/images/")
    parser.add_argument("--place", choices=PLACES, action="append", help="only this place; may be said again")
    parser.add_argument("--size", choices=tuple(SIZES), action="append", help="only this size of window")
    parser.add_argument("--light", choices=LIGHTS, action="append", help="only in this light")
    parser.add_argument("--docket", type=Path, default=ROOT / "examples" / "tee.toml", help="shown instead of the tee")
    asked = parser.parse_args(words)
    if asked.readme == bool(asked.folder):
        parser.error("say a folder, or --readme")
    pictures = [Picture(*one) for one in README]
    if not asked.readme:
        pictures = [
            Picture(place, size, light)
            for size in asked.size or SIZES
            for light in asked.light or LIGHTS
            for place in asked.place or PLACES
        ]
    for path in make(pictures, asked.folder or ROOT / "docs" / "images", asked.docket):
        if asked.readme:
            _fewer_colours(path)
        print(path)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
