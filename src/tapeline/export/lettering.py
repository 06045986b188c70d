"""Words on a picture of dots, in the letters of the print."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from tapeline.export.fonts import writable

__all__ = ["lettered"]

_INK = (26, 26, 26)


@cache
def _face(size: int, *, bold: bool) -> ImageFont.FreeTypeFont:
    import reportlab

    name = "VeraBd.ttf" if bold else "Vera.ttf"
    layout = ImageFont.Layout.BASIC  # the same dots with and without the libraries for other scripts
    return ImageFont.truetype(str(Path(reportlab.__file__).parent / "fonts" / name), size, layout_engine=layout)


def lettered(
    dots: NDArray[np.uint8], words: list[tuple[str, float, float]], size: int, *, bold: bool = False, anchor: str = "lt"
) -> NDArray[np.uint8]:
    """The picture with words on it.

    Args:
        dots: (rows, columns, 3).
        words: Each text, and where it stands: columns from the left and rows from the top.
        size: Height of the letters, in dots.
        bold: For titles.
        anchor: Which place of the text is meant: `lt` its upper left corner, `mt` the middle of its upper edge.
    """
    picture = Image.fromarray(dots)
    pen = ImageDraw.Draw(picture)
    for text, across, down in words:
        pen.text((across, down), writable(text)[0], fill=_INK, font=_face(size, bold=bold), anchor=anchor)
    return np.asarray(picture, np.uint8)
