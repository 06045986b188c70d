"""The docket in several sizes: what is shown of it and the files to take away, made when they are asked for."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from threading import Lock
from urllib.parse import urlencode

from tapeline.export import RunTable
from tapeline.grade import Meet
from tapeline.problems import InputError, Problem, Severity
from tapeline.project import SizeRun, run_file, run_tables, size_run, standard_sizes, today
from tapeline.project.run_products import RUN_FILES
from tapeline.web.download import Download, file_name
from tapeline.web.view import View

__all__ = ["RunView", "run_download", "run_view"]

MEDIA = {
    "print": "application/pdf",
    "drawing": "image/svg+xml",
    "projection": "application/pdf",
    "exchange": "image/vnd.dxf",
    "report": "text/html; charset=utf-8",
    "data": "application/json",
    "chart": "text/csv; charset=utf-8",
    "grade": "text/csv; charset=utf-8",
}
LONGEST = 200
"""Letters of a list of sizes."""
MOST_KEPT = 4
"""Runs that are remembered: what was shown is mostly taken away next."""

_kept: OrderedDict[tuple[str, str, str, bool], SizeRun] = OrderedDict()
_lock = Lock()


@dataclass(frozen=True, slots=True)
class RunView:
    """A run, as the page shows it."""

    words: str
    drawing: str
    """Where the nested drawing is had; empty for more sizes than there are lines for."""
    tables: tuple[RunTable, ...]
    problems: tuple[Problem, ...]
    query: str
    """Of the addresses of its files."""


def run_view(view: View, sizes: str, meet: str, *, go_on: bool = False) -> RunView:
    """The run of a docket; raises `InputError` when there is no garment, or a size cannot be made."""
    run, at = _run(view, sizes, go_on=go_on), _meet(meet)
    query = urlencode({"sizes": sizes, "meet": str(at), **({"go_on": "yes"} if go_on else {})})
    return RunView(
        run.title,
        f"/sizes/drawing?{query}",
        run_tables(run, at),
        run.problems,
        query,
    )


def run_download(view: View, kind: str, sizes: str, meet: str, *, go_on: bool = False) -> Download:
    """One file of a run, by its kind; the same bytes as the command line writes."""
    made = run_file(_run(view, sizes, go_on=go_on), kind, _meet(meet))
    return Download(file_name(view) + RUN_FILES[kind], MEDIA[kind], made.data)


def _run(view: View, sizes: str, *, go_on: bool) -> SizeRun:
    if view.docket is None:
        raise InputError(view.told)
    if len(sizes) > LONGEST:
        says = f"the list of sizes has {len(sizes)} letters; {LONGEST} are read"
        raise InputError(Problem("sizes-not-understood", Severity.ERROR, says, hint="write ranges, such as 84-104"))
    key = (view.text, sizes, today(), go_on)
    with _lock:
        if key in _kept:
            _kept.move_to_end(key)
            return _kept[key]
    made = size_run(view.docket, standard_sizes(view.docket, sizes), today(), go_on=go_on)
    with _lock:
        _kept[key] = made
        while len(_kept) > MOST_KEPT:
            _kept.popitem(last=False)
    return made


def _meet(word: str) -> Meet:
    return Meet(word) if word in list(Meet) else Meet.CHEST
