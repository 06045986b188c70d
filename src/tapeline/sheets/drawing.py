"""The drawing of the pieces, set into the page."""

from __future__ import annotations

import re

from tapeline.sheets.html import paragraph, part

__all__ = ["drawing"]

_PROLOGUE = re.compile(r"\s*<\?xml[^>]*\?>\s*")


def drawing(svg: str) -> str:
    """An SVG document as a part of the page: true lines, each with its reason under the pointer."""
    inside = _PROLOGUE.sub("", svg, count=1)
    return part(
        "pieces",
        "The pieces",
        f'<div class="drawing" role="region" aria-label="Drawing of the pieces" tabindex="0">{inside}</div>',
        paragraph(
            "Thin: seam line. Strong: cut line. Dashed: fold, or a line inside the piece. Point at a line to read why "
            "it is there.",
            "legend",
        ),
    )
