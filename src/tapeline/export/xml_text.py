"""Text and numbers as drawings in SVG write them."""

from __future__ import annotations

from xml.sax.saxutils import escape

__all__ = ["digits", "xml_text"]


def xml_text(text: str) -> str:
    r"""Escaped; letters that XML does not allow are left out.

    >>> xml_text("Zoë & Ida\x01")
    'Zoë &amp; Ida'
    """
    return escape("".join(c for c in text if c in "\t\n" or (c >= " " and not "\ud800" <= c <= "\udfff")))


def digits(value: float) -> str:
    """To a ten-thousandth, and no longer than it has to be.

    >>> digits(12.50), digits(-0.00001)
    ('12.5', '0')
    """
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
