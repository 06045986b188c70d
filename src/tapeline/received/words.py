"""Text of DXF: its encoding, its escapes, and the labels of the convention.

Escapes are those of the DXF reference, labels those of ASTM D6673 (both from memory).
"""

from __future__ import annotations

import codecs
import re

__all__ = ["LABELS", "TURNED_OVER", "encoding_of", "label_of", "plain"]

LABELS = (
    "piece name",
    "size",
    "quantity",
    "material",
    "annotation",
    "category",
    "style name",
    "creation date",
    "creation time",
    "author",
    "sample size",
    "grading rule table",
    "units",
)
"""What text may begin with, before a colon."""
TURNED_OVER = "cut half of them turned over"
"""What Tapeline writes on a piece that is cut in pairs; the convention has no label for it."""
LONGEST_WORDS = 500
_UNICODE = re.compile(r"\\[Uu]\+([0-9A-Fa-f]{4})")
_SIGNS = {"c": "\N{LATIN CAPITAL LETTER O WITH STROKE}", "d": "°", "p": "±", "%": "%", "u": "", "o": "", "k": ""}
_PERCENT = re.compile(r"%%(\d{3}|[cCdDpPuUoOkK%])")
# Of MTEXT: a new line; stacked letters; and codes with or without an argument.
_BREAK = re.compile(r"\\P")
_FORMAT = re.compile(r"\\[ACcFfHpQTW][^;\\]*;|\\[LlOoKkNX]|(?<!\\)[{}]")
_STACKED = re.compile(r"\\S([^;]*?)[\^#/]([^;]*);")


def encoding_of(version: bytes, page: bytes) -> str:
    """The encoding that a header promises; UTF-8 since release 2007 (`AC1021`).

    >>> encoding_of(b"AC1032", b"ANSI_1252"), encoding_of(b"AC1015", b"ANSI_1250"), encoding_of(b"", b"")
    ('utf-8', 'cp1250', 'cp1252')
    """
    if version >= b"AC1021":
        return "utf-8"
    named = page.strip().lower().decode("ascii", "replace")
    for name in (re.sub(r"^(ansi|dos|oem)_?", "cp", named), named):
        try:
            return codecs.lookup(name).name if name else "cp1252"
        except LookupError:
            continue
    return "cp1252"


def plain(value: bytes, encoding: str, *, formatted: bool = False) -> tuple[str, bool]:
    r"""Text as a person reads it, and whether every letter of it was understood.

    >>> plain(rb"L\U+00E4nge 5%%d", "cp1252"), plain("Größe".encode(), "ascii"), plain(b"Gr\xf6", "utf-8")
    (('Länge 5°', True), ('Größe', True), ('Grö', False))
    """
    sure = True
    text = ""
    # Many senders write UTF-8 whatever their header says, and no other encoding reads as UTF-8 by chance.
    for name in ("utf-8", encoding):
        try:
            text = value.decode(name)
            break
        except (UnicodeDecodeError, LookupError):
            continue
    else:
        text, sure = value.decode("cp1252", "replace"), False
    text = _UNICODE.sub(lambda found: chr(int(found[1], 16)), text)
    text = _PERCENT.sub(_sign, text)
    if formatted:
        text = _STACKED.sub(r"\1/\2", _BREAK.sub("\n", text))
        text = _FORMAT.sub("", text).replace("\\\\", "\\").replace("\\~", " ")
    # What could steer a terminal or is half a letter is no text.
    shown = "".join(c if c == "\n" or c.isprintable() else "?" for c in text)
    return shown.strip()[:LONGEST_WORDS], sure and "\N{REPLACEMENT CHARACTER}" not in shown and shown == text


def label_of(text: str) -> tuple[str, str] | None:
    """A label of the convention and what it says; None for other text.

    >>> label_of("PIECE NAME : Front"), label_of("see: page 3")
    (('piece name', 'Front'), None)
    """
    label, colon, value = text.partition(":")
    known = " ".join(label.split()).casefold()
    return (known, value.strip()) if colon and known in LABELS else None


def _sign(found: re.Match[str]) -> str:
    word = found[1].lower()
    return chr(int(word)) if word.isdigit() and int(word) < 256 else _SIGNS.get(word, found[0])
