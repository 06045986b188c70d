"""Files that a command writes: whole or not at all, and never over something of somebody else's."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TextIO

from tapeline.problems import InputError, Problem, Severity

__all__ = ["may_write", "written_whole"]

_OURS: Mapping[str, tuple[bytes, ...]] = {
    ".pdf": (b"%PDF",),
    ".svg": (b"<svg", b"<?xml"),
    ".html": (b"<!doctype html", b"<!DOCTYPE html"),
    ".json": (b"{",),
    ".jsonl": (b"{",),
    ".dxf": (b"0\nSECTION", b"0\r\nSECTION"),
    ".png": (b"\x89PNG",),
    ".glb": (b"glTF",),
    ".plt": (b"IN;", b"\x1bE\x1b%0BIN;"),
    ".csv": (b"piece,title,garment,", b"measure,unit", b"piece,point,kind"),
}
"""How a file begins that may be written over without asking: an older one of the same kind."""


def may_write(path: Path, docket: Path, *, force: bool) -> None:
    """Refuse to write over the docket, and over a file that is not of the kind written there.

    Raises:
        InputError: `would-overwrite`.
    """
    if path.exists() and docket.exists() and path.samefile(docket):
        raise _refused(path, f"{path} is the docket itself", "give another name with --out")
    if force or not path.is_file():
        return
    with suppress(OSError), path.open("rb") as file:
        begins = file.read(64).lstrip()
        if not begins or begins.startswith(_OURS.get(path.suffix.lower(), ())):
            return
    raise _refused(path, f"{path} is there and was not made by Tapeline", "give another name, or add --force")


@contextmanager
def written_whole(path: Path) -> Iterator[TextIO]:
    """A text file to write line by line; it gets its name when all of it is on the disk.

    Raises:
        InputError: `cannot-write`; nothing is left behind, and what was there is as it was.
    """
    from tapeline.export.write import place_of

    temporary = ""
    try:
        place = place_of(path)
        handle, temporary = tempfile.mkstemp(prefix=f".{place.name[:40]}.", suffix=".part", dir=place.parent)
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(temporary, 0o666 & ~mask)  # noqa: PTH101 - a temporary file is for its owner only
        os.replace(temporary, place)  # noqa: PTH105 - says that it replaces
        temporary = ""
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        says = f"cannot write {path}: {reason}"
        raise _refused(path, says, "choose another place with --out", "cannot-write") from error
    finally:
        if temporary:
            with suppress(OSError):
                os.unlink(temporary)  # noqa: PTH108 - the name is what mkstemp gave


def _refused(path: Path, says: str, hint: str, code: str = "would-overwrite") -> InputError:
    return InputError(Problem(code, Severity.ERROR, says, str(path), f"{hint}. Nothing was written."))
