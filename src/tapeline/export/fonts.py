"""Letters for the print: Bitstream Vera, which comes inside reportlab, so nothing has to be installed.

It holds the letters of western and central Europe and Turkish. Others are written with the nearest letters that it has,
and the print says so; nothing is dropped without a word.
"""

# ruff: noqa: RUF001 - letters of other scripts stand here on purpose

from __future__ import annotations

import unicodedata
from functools import cache
from pathlib import Path

from tapeline.problems import Problem, Severity

__all__ = ["BOLD", "REGULAR", "in_ascii", "letters_problem", "register", "writable"]

REGULAR, BOLD = "TapelineWords", "TapelineTitles"

_NEAREST = {
    "″": '"',
    "′": "'",
    "¼": "1/4",
    "½": "1/2",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
    "→": "->",
    "\u2011": "-",
}
_OTHERS = """
а:a б:b в:v г:g д:d е:e ж:zh з:z и:i й:y к:k л:l м:m н:n о:o п:p р:r с:s т:t у:u ф:f х:kh ц:ts ч:ch ш:sh щ:shch ъ:'
ы:y ь:' э:e ю:yu я:ya і:i ї:yi є:ye ґ:g
α:a β:v γ:g δ:d ε:e ζ:z η:i θ:th ι:i κ:k λ:l μ:m ν:n ξ:x ο:o π:p ρ:r σ:s ς:s τ:t υ:y φ:f χ:ch ψ:ps ω:o
ħ:h ŧ:t đ:d ŋ:ng ə:e ł:l ø:o ß:ss æ:ae œ:oe þ:th ð:d ı:i
"""
_LETTERS = dict(pair.split(":") for pair in _OTHERS.split())
"""Common ways to write these in Latin letters (from memory)."""


_ASCII = frozenset(range(32, 127))


@cache
def register() -> frozenset[int]:
    """Make the letters known to reportlab, once; returns the code points that they hold."""
    import reportlab
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    folder = Path(reportlab.__file__).parent / "fonts"
    faces = [TTFont(REGULAR, str(folder / "Vera.ttf")), TTFont(BOLD, str(folder / "VeraBd.ttf"))]
    for face in faces:
        pdfmetrics.registerFont(face)
    return frozenset.intersection(*(frozenset(face.face.charToGlyph) for face in faces))


def writable(text: str) -> tuple[str, str]:
    """The text in letters that the print has, and those of its letters that had to be replaced.

    >>> writable("Zoë Łuczak, 33¼″")
    ('Zoë Łuczak, 33¼"', '')
    >>> writable("Erdős Жанна")
    ('Erdos Zhanna', 'őЖан')
    """
    return _in_letters(text, register())


def in_ascii(text: str) -> tuple[str, str]:
    """The same in the 95 plain letters, figures and signs that every file and machine knows.

    >>> in_ascii("Zoë Łuczak, 33¼″")
    ('Zoe Luczak, 33 1/4"', 'ëŁ')
    """
    return _in_letters(text, _ASCII)


def _in_letters(text: str, held: frozenset[int]) -> tuple[str, str]:
    done, replaced = [], []
    for letter in unicodedata.normalize("NFC", text):
        if ord(letter) in held:
            done.append(letter)
            continue
        near = _near(letter, held)
        # 33 1/8, not 331/8.
        done.append(f" {near}" if "/" in near and "".join(done)[-1:].isdigit() else near)
        if letter not in _NEAREST and not unicodedata.combining(letter):
            replaced.append(letter)
    # Plain stand-ins such as " for inches say the same, so only true letters are reported.
    return "".join(done), "".join(dict.fromkeys(_reported(replaced)))


def letters_problem(replaced: str, what: str = "print") -> Problem:
    """What the print, or another file, says about letters that it does not have."""
    return Problem(
        "letters-replaced",
        Severity.NOTE,
        f"the {what} has no letters {' '.join(replaced)}; it shows the nearest Latin ones",
        hint="the drawing (SVG) and the data (JSON) keep them",
    )


def _reported(letters: list[str]) -> list[str]:
    return [letter for letter in letters if not letter.isspace()]


def _near(letter: str, held: frozenset[int]) -> str:
    if letter in _NEAREST:
        return _NEAREST[letter]
    if unicodedata.combining(letter) or unicodedata.category(letter) in ("Cf", "Cc"):
        return ""
    if letter.isspace():
        return " "
    base = "".join(c for c in unicodedata.normalize("NFKD", letter) if ord(c) in held and not unicodedata.combining(c))
    if base:
        return base
    plain = unicodedata.normalize("NFD", letter.casefold())[:1]
    latin = _LETTERS.get(letter.lower()) or _LETTERS.get(letter.casefold()) or _LETTERS.get(plain)
    if latin is None:
        return "?"
    return latin.capitalize() if letter != letter.casefold() else latin
