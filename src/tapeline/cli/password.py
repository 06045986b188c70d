"""The password of a page that other machines may reach: in a file, so that it stands in no list of commands."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from tapeline.problems import InputError, Problem, Severity

__all__ = ["SHORTEST", "password_of"]

SHORTEST = 12
"""Letters. At the rate at which tries are looked at, a shorter one of plain words could be found in days."""
LONGEST = 1024
"""Bytes of a file with one line."""
NOTHING_DONE = "Nothing was opened."


def password_of(path: Path) -> str:
    """The one line of a password file.

    Raises:
        InputError: `password-file-unreadable`, `password-file-shared`, `password-short`, `password-not-a-line`.
    """
    data = _read(path)
    try:
        word = data.decode("utf-8-sig").removesuffix("\n").removesuffix("\r")
    except UnicodeDecodeError:
        raise _wrong("password-not-a-line", path, "it is no text in UTF-8", "write it with a text editor") from None
    if not word.strip():
        raise _wrong("password-short", path, "it is empty", f"write a password of at least {SHORTEST} letters in it")
    if len(data) > LONGEST or word != word.strip() or not word.isprintable():
        says = "a password is one line, without a space at either end or a sign that cannot be seen"
        raise _wrong("password-not-a-line", path, says, "write the password alone, in one line")
    if len(word) < SHORTEST:
        says = (
            f"the password has {len(word)} letters, and needs at least {SHORTEST}: whoever reaches the page can guess"
        )
        raise _wrong("password-short", path, says, "four or five words that do not belong together do well")
    return word


def _read(path: Path) -> bytes:
    if os.name != "posix":
        says = "who else may read the file cannot be told on this system"
        raise _wrong("password-file-shared", path, says, "open the page on this machine only, without --host")
    try:
        # Not waiting: a pipe with nobody at the other end would never open.
        handle = os.open(path, os.O_RDONLY | os.O_NONBLOCK | os.O_CLOEXEC)
        with os.fdopen(handle, "rb") as file:
            # Asked of the open file, so that no other one can be put in its place in between.
            kept = os.fstat(handle)
            if not stat.S_ISREG(kept.st_mode):
                raise _wrong("password-file-unreadable", path, "it is not a plain file", "name a file")
            if kept.st_uid != os.geteuid():
                raise _wrong(
                    "password-file-shared", path, "it belongs to somebody else", f"make one of your own: {_how(path)}"
                )
            if kept.st_mode & (stat.S_IRWXG | stat.S_IRWXO):
                says = "others on this machine may read or write it"
                raise _wrong("password-file-shared", path, says, f"make it yours alone: chmod 600 {path}")
            return file.read(LONGEST + 1)
    except (OSError, ValueError) as error:  # ValueError: a name with a zero byte
        if isinstance(error, InputError):
            raise
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise _wrong(
            "password-file-unreadable", path, f"it cannot be read: {reason}", f"make one: {_how(path)}"
        ) from None


def _how(path: Path) -> str:
    return f"umask 077, then write the password into {path.name} with a text editor"


def _wrong(code: str, path: Path, says: str, hint: str) -> InputError:
    return InputError(Problem(code, Severity.ERROR, f"password file {path}: {says}", hint=f"{hint}. {NOTHING_DONE}"))
