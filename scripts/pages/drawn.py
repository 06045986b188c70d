"""Lines and frames of the docs' pictures."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from tapeline.geometry import Path

__all__ = ["INK", "MARK", "line", "svg"]

INK, MARK = "#1a1a1a", "#9a3412"
PANEL = ' stroke-linejoin="round" fill="none"'


def line(path: Path, colour: str, wide: float, more: str = "") -> str:
    """A line of a picture."""
    return f'<path d="{path.svg()}" stroke="{colour}" stroke-width="{wide:g}"{more}{PANEL}/>'


def svg(wide: float, tall: float, says: str, lines: Sequence[str]) -> str:
    """A picture so wide and tall, with what it says to those who cannot see it."""
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:.1f} {tall:.1f}" role="img" lang="en">',
            f"<title>{escape(says)}</title>",
            f'<rect width="{wide:.1f}" height="{tall:.1f}" fill="#ffffff"/>',
            f'<g font-family="DejaVu Sans, Verdana, Arial, sans-serif" fill="{INK}">',
            *lines,
            "</g>",
            "</svg>",
            "",
        ]
    )
