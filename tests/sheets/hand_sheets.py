"""Hand sheets to look at, and how to look at them: as values, and as a reader finds them in the file."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from functools import cache

from tapeline.export import letters_width, written
from tapeline.finish import Title
from tapeline.measures import Wearer
from tapeline.pattern import Garment
from tapeline.sheets import HandSheet, hand_sheet
from tapeline.sheets.hand_sheet_marks import Page, Words
from tapeline.units import Unit
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw

__all__ = ["ARNE", "MARIT", "PDF_NAMES", "all_words", "garment_of", "pdf_of", "sheet_of", "text_of", "title_of"]

PDF_NAMES = {"Marit": MARIT, "Arne": ARNE}


@cache
def garment_of(name: str = "Marit", style: str = "tee") -> Garment:
    """An invented wearer's garment."""
    return draw(PDF_NAMES[name], style, "easy" if name == "Arne" else "slight")


def title_of(wearer: Wearer, style: str) -> Title:
    """A title with a date that stays."""
    return Title("test.toml", wearer.name, style, "2026-01-31", "0")


@cache
def sheet_of(
    name: str = "Marit",
    style: str = "tee",
    unit: Unit = Unit.CM,
    scale: float | None = None,
    blank: bool = False,
) -> HandSheet:
    """The hand sheet as it is laid out, with the letters of the print."""
    title = title_of(PDF_NAMES[name], style)
    return hand_sheet(garment_of(name, style), title, letters_width, unit=unit, scale=scale, blank=blank)


def pdf_of(sheet: HandSheet, style: str = "tee") -> bytes:
    """The file."""
    return written(sheet.pages, sheet.paper_mm, title_of(MARIT, style), "hand sheet").data


def text_of(data: bytes) -> str:
    """All text as poppler finds it, in the order of the file, without any space: lines may break anywhere."""
    done = subprocess.run(["pdftotext", "-raw", "-", "-"], input=data, capture_output=True, check=True)
    return "".join(done.stdout.decode().split())


def all_words(page: Page) -> Iterator[Words]:
    """The words of a page and of its pictures, where they stand on the page."""
    yield from page.words
    for corner, picture in page.pictures:
        for words in (*picture.words, *(label.words for label in picture.labels)):
            yield words.moved(corner.x, corner.y)
