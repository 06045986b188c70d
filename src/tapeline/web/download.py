"""Files to take away: the same bytes as the command line writes."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from tapeline.export import text as json_text
from tapeline.problems import InputError
from tapeline.project import (
    Drafted,
    curve_file,
    document,
    drawing,
    exchange_file,
    hand_sheet,
    plotter_files,
    print_pdf,
    projection,
    report,
    today,
)
from tapeline.web.view import View

__all__ = ["DOWNLOADS", "Download", "download", "file_name"]

DOWNLOADS = {
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
    "json": "application/json",
    "html": "text/html; charset=utf-8",
    "toml": "application/toml",
    "dxf": "image/vnd.dxf",
    "curves": "image/vnd.dxf",
    "plotter": "application/vnd.hp-hpgl",
    "projection": "application/pdf",
    "hand-sheet": "application/pdf",
    "class-sheet": "application/pdf",
}
ENDINGS = {
    "hand-sheet": "-hand-sheet.pdf",
    "class-sheet": "-class-sheet.pdf",
    "curves": "-curves.dxf",
    "plotter": ".plt",
    "projection": "-projection.pdf",
}
"""Of files that are not simply named after their kind."""


@dataclass(frozen=True, slots=True)
class Download:
    """A file's name, kind and bytes."""

    name: str
    media_type: str
    data: bytes


def download(view: View, kind: str, paper: str = "") -> Download:
    """One file of a docket; raises `InputError` with the docket's problems when there is no garment to make it of."""
    name = file_name(view)
    if kind == "toml":
        return Download(f"{name}.toml", DOWNLOADS[kind], view.text.encode())
    drafted = view.drafted
    if drafted is None:
        raise InputError(view.told)
    data = print_pdf(drafted, paper, today()) if kind == "pdf" else _MAKERS[kind](drafted, today())
    return Download(name + ENDINGS.get(kind, f".{kind}"), DOWNLOADS[kind], data)


def file_name(view: View) -> str:
    """What a docket's files are called, without what each adds."""
    return re.sub(r"[^A-Za-z0-9._-]+", "-", view.name.removesuffix(".toml")) or "docket"


_MAKERS: dict[str, Callable[[Drafted, str], bytes]] = {
    "svg": lambda drafted, date: drawing(drafted, date).encode(),
    "json": lambda drafted, _: f"{json_text(document(drafted))}\n".encode(),
    "html": lambda drafted, date: report(drafted, date).encode(),
    "hand-sheet": lambda drafted, date: hand_sheet(drafted, date).data,
    "class-sheet": lambda drafted, date: hand_sheet(drafted, date, blank=True).data,
    "dxf": lambda drafted, date: exchange_file(drafted, date).data,
    "curves": lambda drafted, _: curve_file(drafted),
    "plotter": lambda drafted, _: plotter_files(drafted).frames[0],
    "projection": lambda drafted, date: projection(drafted, date=date).data,
}
"""What makes each file that is not printed on a paper of the maker's choice."""
