"""A docket's file: opened, decoded and read as TOML, with one clear report for whatever is not a docket."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from tapeline.docket.places import LONGEST_SHOWN, printable
from tapeline.docket.reader import NOTHING_DONE, sentences
from tapeline.problems import InputError, Problem, Severity

__all__ = ["MOST_BYTES", "decoded", "docket_text", "file_bytes", "toml_table"]

MOST_BYTES = 256 * 1024
"""A docket is a page of text; a hundred pages are something else."""

_AT = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")


def docket_text(path: Path) -> str:
    """The text of a docket's file.

    Raises:
        InputError: `docket-missing`, `docket-is-folder`, `docket-unreadable`, `docket-too-large`, `docket-not-text`.
    """
    return decoded(file_bytes(path, MOST_BYTES, "a docket"), path)


def file_bytes(path: Path, most: int, what: str) -> bytes:
    """The bytes of a file that a person named; `what` says what it should be."""
    try:
        with path.open("rb") as file:
            data = file.read(most + 1)
    except IsADirectoryError:
        raise _wrong("docket-is-folder", path, f"{path} is a folder, not {what}", "name a file in it") from None
    except FileNotFoundError:
        near = sorted(p.name for p in _siblings(path) if p.suffix == path.suffix and p.is_file())[:8]
        hint = (
            f"in that folder there are: {', '.join(near)}" if near else "look at the folder, or write one: tapeline new"
        )
        raise _wrong("docket-missing", path, f"there is no file {path}", hint) from None
    except (OSError, ValueError) as error:  # ValueError: a name with a zero byte
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise _wrong("docket-unreadable", path, f"{path} cannot be read: {reason}", "look at its permissions") from None
    if len(data) > most:
        says = f"{path} is larger than {most // 1024} kB; {what} is smaller"
        raise _wrong("docket-too-large", path, says, "is it the right file?")
    return data


def _siblings(path: Path) -> list[Path]:
    try:
        return list(path.parent.iterdir())
    except OSError:
        return []


def decoded(data: bytes, path: Path) -> str:
    """Text that a person saved; a byte order mark in front is passed over."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _wrong("docket-not-text", path, f"{path} is written in UTF-16", "save it as UTF-8")
    if b"\0" in data:
        raise _wrong("docket-not-text", path, f"{path} is not text", "is it the right file?")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        byte = data[error.start]
        says = f"{path} is not written in UTF-8: byte {byte:#04x} in line {line} stands for nothing"
        raise _wrong("docket-not-text", path, says, "save it as UTF-8 in the editor") from None


def toml_table(text: str, name: str) -> dict[str, Any]:
    """The tables of a docket's text.

    Raises:
        InputError: `docket-empty`, `docket-not-toml`, `docket-too-deep`.
    """
    try:
        table = tomllib.loads(text)
    except RecursionError:
        says = f"{name} has tables in tables without end"
        raise _wrong("docket-too-deep", Path(name), says, "a docket has three levels") from None
    except ValueError as error:
        raise _not_toml(text, name, str(error)) from None
    if not table:
        hint = "write one with tapeline new, or see tapeline new --help"
        raise _wrong("docket-empty", Path(name), f"{name} is empty: a docket has a [wearer] and a [garment]", hint)
    return table


def _not_toml(text: str, name: str, message: str) -> InputError:
    found = _AT.search(message)
    what = _AT.sub("", message).strip() or "it is not understood"
    if "digits" in message:
        what = "a number has thousands of digits"
    lines = text.replace("\r\n", "\n").split("\n")
    if found is None:
        return _wrong("docket-not-toml", Path(name), f"{name} is not TOML: {what}", _slip("", what))
    number = int(found[1]) if found[1] else len(lines)
    line = lines[number - 1].strip() if number <= len(lines) else ""
    shown = printable(line[:LONGEST_SHOWN])
    says = f"line {number} is not TOML: {what[0].lower()}{what[1:]}"
    where = f"{name}, line {number}: {shown}" if shown else f"{name}, line {number}"
    return InputError(
        Problem("docket-not-toml", Severity.ERROR, says, where, sentences(_slip(line, what), NOTHING_DONE))
    )


def _slip(line: str, what: str) -> str:
    """What was probably meant."""
    if "overwrite" in what or "twice" in what:
        return "a key stands once in its table; a word and numbers for the same key (looseness) are one or the other"
    if re.search(r"=\s*\d+,\d", line):
        return 'a decimal comma stands in quotes: hip = "84,5"; or write a point'
    if re.search(r"=\s*\d[\d ./]*\s*(cm|mm|in|\"|/)", line) or "/" in line:
        return 'a length with its unit or with a fraction stands in quotes: hip = "33 1/4 in"'
    if re.search(r"=\s*[A-Za-z]", line):
        return 'words stand in quotes: figure = "woman"'
    if re.search(r"=\s*(#|$)", line):
        return "a key needs a value, or # in front of the line while there is none"
    return 'a docket is written in TOML: [wearer] on a line of its own, then name = "Marit"'


def _wrong(code: str, path: Path, says: str, hint: str) -> InputError:
    return InputError(Problem(code, Severity.ERROR, says, str(path), sentences(hint, NOTHING_DONE)))
