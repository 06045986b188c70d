"""Writes files whole or not at all."""

from __future__ import annotations

import os
import stat
import tempfile
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path

from tapeline.problems import InputError, Problem, Severity

__all__ = ["place_of", "writable", "write_all", "write_whole"]


def write_whole(path: Path, data: bytes) -> None:
    """Write a file under a temporary name in its folder, and rename it when every byte is on the disk.

    Raises `InputError` (`cannot-write`) when the file cannot be written; what was there before is then as it was.
    """
    write_all({path: data})


def write_all(files: Mapping[Path, bytes]) -> None:
    """Write several files; none gets its name before all of them are on the disk.

    Raises `InputError` (`cannot-write`) as `write_whole` does.
    """
    waiting: dict[Path, Path] = {}
    path = Path()
    written = 0
    try:
        for path, data in files.items():
            place = place_of(path)
            waiting[place] = _temporary(place, data)
        for place, temporary in list(waiting.items()):
            os.replace(temporary, place)  # noqa: PTH105 - says that it replaces
            del waiting[place]
            written += 1
    except OSError as error:
        raise InputError(_problem(path, error, written)) from error
    finally:  # whatever stopped it, Ctrl-C too
        for temporary in waiting.values():
            with suppress(OSError):
                temporary.unlink()


def writable(paths: Iterable[Path]) -> None:
    """Look whether files could be written there, before hours of work are spent on what is in them.

    Raises `InputError` (`cannot-write`) as `write_all` does; nothing is left behind.
    """
    for path in paths:
        try:
            place = place_of(path)
            _temporary(place, b"").unlink()
        except OSError as error:
            raise InputError(_problem(path, error, 0)) from error


def place_of(path: Path) -> Path:
    """Where a file of that name lies: a link is followed, so that it stays one.

    Raises `OSError` for what a file must not take the place of: a folder, a device, a pipe.
    """
    place = Path(os.path.realpath(path))
    try:
        kind = place.stat().st_mode
    except FileNotFoundError:
        return place
    if stat.S_ISDIR(kind):
        raise IsADirectoryError(21, "it is a folder")
    if not stat.S_ISREG(kind):
        raise OSError(22, "it is no file but a device or a pipe")
    return place


def _temporary(path: Path, data: bytes) -> Path:
    handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", suffix=".part", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        _usual_rights(name)
    except BaseException:
        with suppress(OSError):
            os.unlink(name)  # noqa: PTH108 - the name is what mkstemp gave
        raise
    return Path(name)


def _usual_rights(name: str) -> None:
    """A temporary file is for its owner only; give it the rights that a new file has here."""
    mask = os.umask(0)
    os.umask(mask)
    os.chmod(name, 0o666 & ~mask)  # noqa: PTH101 - as above


def _problem(path: Path, error: OSError, written: int) -> Problem:
    reason = (error.strerror or str(error)).lower()
    hint = "choose another place"
    if isinstance(error, FileNotFoundError):
        folder = (Path(os.path.realpath(path)) if path.is_symlink() else path).parent
        reason, hint = f"there is no folder {folder}", "make the folder first, or choose another"
    elif isinstance(error, IsADirectoryError):
        reason, hint = "it is a folder", "give the name of a file"
    left = "Not all files were written" if written else "Nothing was written"
    return Problem("cannot-write", Severity.ERROR, f"cannot write {path}: {reason}", str(path), f"{hint}. {left}.")
