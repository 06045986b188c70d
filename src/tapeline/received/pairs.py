"""The lowest floor of DXF: a code on one line, its value on the next, and so on to the end.

Group codes are those of the DXF reference (from memory; read back against ezdxf in the tests).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from typing import NamedTuple

from tapeline.problems import InputError, Problem, Severity

__all__ = ["LARGEST_BYTES", "Pair", "pairs", "refused"]

LARGEST_BYTES = 20_000_000
"""A file of twenty sizes of thirty pieces has some ten million, written sparingly."""
LONGEST_LINE = 65_536
"""Letters of a line; the format itself allows 2049 in current releases."""
_KINDS: tuple[tuple[bytes, str], ...] = (
    (b"AC10", "a DWG drawing"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a ZIP archive"),
    (b"<", "an XML or HTML file, such as SVG"),
    (b"{", "a JSON file"),
    (b"IN;", "a plotter file"),
    (b"\xff\xfe", "text in UTF-16"),
    (b"\xfe\xff", "text in UTF-16"),
)
_BINARY = re.compile(rb"[A-Za-z]+ Binary DXF\r\n\x1a\x00")
_CODE = re.compile(rb"[ \t]*-?\d{1,4}[ \t]*\Z")


class Pair(NamedTuple):
    """A code, its value as it stands in the file, and the line of the code, from 1."""

    code: int
    value: bytes
    line: int


def pairs(data: bytes, name: str) -> Iterator[Pair]:
    """Codes and values in order; the last is not there when the file breaks off behind its code.

    Args:
        data: The whole file.
        name: What it is called in a refusal.

    Raises:
        InputError: `received-empty`, `received-too-large`, `received-not-dxf`, `received-broken`; the first three
            before anything is yielded.
    """
    data = data.removeprefix(b"\xef\xbb\xbf")
    _look_like_dxf(data, name)
    if b"\n" not in data[:LONGEST_LINE]:
        data = data.replace(b"\r", b"\n")
    lines = iter(BytesIO(data))
    number = 1
    for code in lines:
        stripped = code.rstrip(b"\r\n")
        if not _CODE.match(stripped):
            if not stripped.strip(b" \t\x1a\x00") and not any(line.strip(b" \t\r\n\x1a\x00") for line in lines):
                return
            raise refused(
                "received-broken",
                f"line {number} should be a group code, a whole number, and is {_quoted(stripped)}",
                name,
                "the file is damaged or was edited by hand: have it written anew",
            )
        value = next(lines, None)
        if value is None:
            return
        if len(value) > LONGEST_LINE:
            raise refused(
                "received-broken",
                f"line {number + 1} is {len(value)} bytes long, {LONGEST_LINE} are allowed",
                name,
                "no drawing has such a line: have the file written anew",
            )
        yield Pair(int(stripped), value.rstrip(b"\r\n"), number)
        number += 2


def refused(code: str, says: str, name: str, hint: str) -> InputError:
    """A file that is not read at all."""
    return InputError(Problem(code, Severity.ERROR, says, name, f"{hint}. Nothing was read."))


def _look_like_dxf(data: bytes, name: str) -> None:
    if not data.strip():
        raise refused("received-empty", "the file is empty", name, "have it written anew: its sender kept nothing")
    if len(data) > LARGEST_BYTES:
        says = f"the file has {len(data) / 1e6:.0f} MB, {LARGEST_BYTES / 1e6:.0f} MB are read"
        raise refused("received-too-large", says, name, "have fewer pieces or sizes written into one file")
    if _BINARY.match(data):
        says = "this is binary DXF, and only DXF written as text is read"
        raise refused("received-not-dxf", says, name, "have it saved as text (ASCII) DXF, R12 if there is a choice")
    begins = data[:64].lstrip()
    for start, kind in _KINDS:
        if begins.startswith(start):
            raise refused("received-not-dxf", f"this is {kind}, not DXF", name, "have it saved as text (ASCII) DXF")
    if b"\x00" in data[:4096]:
        raise refused("received-not-dxf", "this is no text, and so no DXF", name, "have it saved as text (ASCII) DXF")


def _quoted(line: bytes) -> str:
    text = line[:40].decode("ascii", "replace")
    return f'"{text}"' + (" ..." if len(line) > 40 else "")
