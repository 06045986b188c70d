"""A hand sheet's layout as text, for comparing; places in whole millimetres, which is what an eye sees."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from tapeline.sheets import HandSheet
from tapeline.sheets.hand_sheet_marks import Picture, Words

__all__ = ["GOLDEN", "dump"]

GOLDEN = Path(__file__).parent / "hand_sheet_block_inch.txt"


def dump(sheet: HandSheet) -> str:
    """Every page with its words, boxes and pictures."""
    return "\n".join(_lines(sheet)) + "\n"


def _lines(sheet: HandSheet) -> Iterator[str]:
    yield f"{sheet.paper_mm[0]:g} x {sheet.paper_mm[1]:g} mm, 1:{sheet.scale:g}"
    for number, page in enumerate(sheet.pages, start=1):
        yield f"\nPAGE {number}, {len(page.strokes)} strokes, {len(page.boxes)} boxes"
        yield from map(_words, page.words)
        for corner, picture in page.pictures:
            yield f"  PICTURE at {corner.x:.0f}, {corner.y:.0f}: {picture.width:.0f} x {picture.height:.0f}"
            yield from _picture(picture)


def _picture(picture: Picture) -> Iterator[str]:
    yield f"    {len(picture.strokes)} strokes, {len(picture.dots)} dots"
    for words in (*picture.words, *(label.words for label in picture.labels)):
        yield f"  {_words(words)}"


def _words(words: Words) -> str:
    strong = "*" if words.bold else ""
    return f"  {words.x:.0f}, {words.y:.0f}: {strong}{words.text}{strong}"
