"""The page's application: one docket, looked at and changed; every answer carries all places of the page anew."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any

from starlette.applications import Starlette
from starlette.background import BackgroundTask
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from tapeline.docket import template
from tapeline.docket.edit import NotToml, with_value
from tapeline.docket.file import MOST_BYTES
from tapeline.problems import InputError
from tapeline.project.run_products import RUN_FILES
from tapeline.styles import STYLES
from tapeline.units import Unit
from tapeline.web.download import DOWNLOADS, download
from tapeline.web.drawing import drawing
from tapeline.web.explained import explained
from tapeline.web.lay_routes import ROUTES as LAY_ROUTES
from tapeline.web.places import fragment, page
from tapeline.web.run_view import run_download, run_view
from tapeline.web.seam_view import seam_view
from tapeline.web.sheet_map import sheet_map
from tapeline.web.table import Table
from tapeline.web.unfolded import unfolded
from tapeline.web.view import look
from tapeline.web.workbench import Busy

__all__ = ["application"]

MOST_KEYS = 5
"""No value of a docket lies deeper."""
TOO_LONG = f"that is longer than {MOST_BYTES // 1024} kB; a docket is a page of text, and the one you have stays"


def application(table: Table) -> Starlette:
    """The page of one table."""
    app = Starlette(
        routes=[
            Route("/", show),
            Route("/state", state),
            Route("/edit", edit, methods=["POST"]),
            Route("/text", replace_text, methods=["POST"]),
            Route("/try", try_out, methods=["POST"]),
            Route("/template", begin),
            Route("/undo", undo, methods=["POST"]),
            Route("/redo", redo, methods=["POST"]),
            Route("/explain", explain),
            Route("/map", show_map),
            Route("/seam", show_seam),
            Route("/download/{kind}", fetch),
            Route("/sizes", show_run),
            Route("/sizes/{kind}", fetch_run),
            *LAY_ROUTES,
            Mount("/static", StaticFiles(directory=str(files("tapeline.web") / "static"))),
        ],
        exception_handlers={Busy: too_busy},
    )
    app.state.table = table
    return app


async def too_busy(_request: Request, _busy: Exception) -> Response:
    """More is asked for than can be made in a while."""
    return _refused("too much is asked for at once: ask again in a moment", 503)


async def show(request: Request) -> Response:
    """The whole page."""
    table = _table(request)
    return HTMLResponse(page(table.view, table.state(), table.shared))


async def state(request: Request) -> Response:
    """The docket now, for a window that comes back; with one place only, when it is asked for."""
    return JSONResponse(_table(request).state(request.query_params.get("place", "")))


async def edit(request: Request) -> Response:
    """Set one value of the docket; works on the newest text, whichever window wrote it.

    Who asks for the drawing `first` gets it without the places, and asks for those when nothing else is to be written.
    Where nothing can be drawn, the places say why at once.
    """
    table, asked = _table(request), await _asked(request)
    keys, value = asked.get("keys"), asked.get("value")
    if not (isinstance(keys, list) and 0 < len(keys) <= MOST_KEYS and all(isinstance(k, str) and k for k in keys)):
        return _refused("keys is a list of one to five words")
    if not (value is None or isinstance(value, str)):
        return _refused("value is a text, or null")
    async with table.busy:
        try:
            text = with_value(unfolded(table.view, tuple(keys)), tuple(keys), value)
        except NotToml:
            return _refused("the docket cannot be read as it stands: mend it in Docket first", 409)
        if len(text.encode()) > MOST_BYTES:
            return _refused(TOO_LONG, 413)
        table.journal.change(text, tuple(keys))
        if asked.get("done"):
            table.journal.settle()
        if asked.get("first") is True and table.view.finished is not None:
            return _written(table, table.drawn())
        only = asked.get("place")
        return _written(table, table.state(only if isinstance(only, str) else ""))


async def try_out(request: Request) -> Response:
    """The drawing as it would be with one value changed; nothing is written."""
    table, asked = _table(request), await _asked(request)
    keys, value = asked.get("keys"), asked.get("value")
    if not (isinstance(keys, list) and all(isinstance(k, str) and k for k in keys) and isinstance(value, str)):
        return _refused("keys is a list of words, and value a text")
    try:
        text = with_value(table.journal.text, tuple(keys), value)
    except NotToml:
        return _refused("the docket cannot be read as it stands: mend it in Docket first", 409)
    return JSONResponse({"drawing": drawing(look(text, table.name))})


async def begin(request: Request) -> Response:
    """A new docket's text, for a style and perhaps a standard size."""
    asked = request.query_params
    style, unit = STYLES.get(asked.get("style", "tee")), asked.get("unit", "cm")
    if style is None or unit not in list(Unit):
        return _refused("style and unit are words of the docket")
    try:
        text = template(style, Unit(unit), asked.get("size") or None)
    except InputError as error:
        return _refused(str(error))
    return JSONResponse({"text": text})


async def replace_text(request: Request) -> Response:
    """Replace the whole text; refused when another window wrote in between."""
    table, asked = _table(request), await _asked(request)
    async with table.busy:
        if not isinstance(asked.get("text"), str):
            return _refused("text is a text")
        if len(asked["text"].encode()) > MOST_BYTES:
            return _refused(TOO_LONG, 413)
        if asked.get("base") != table.journal.version:
            return JSONResponse({"problem": "another window has changed the docket", **table.state()}, 409)
        table.journal.change(asked["text"])
        return _written(table, table.state())


async def undo(request: Request) -> Response:
    """Take the last change back."""
    table = _table(request)
    async with table.busy:
        table.journal.undo()
        return _written(table, table.state())


async def redo(request: Request) -> Response:
    """Bring it again."""
    table = _table(request)
    async with table.busy:
        table.journal.redo()
        return _written(table, table.state())


async def explain(request: Request) -> Response:
    """What moves a line, point or size: each tape is drafted a little shorter and longer, which takes a while."""
    view = _table(request).view
    if view.drafted is None:
        return _refused("nothing is drafted yet", 409)
    try:
        return JSONResponse(
            await _table(request).bench.do(explained, view.drafted, request.query_params.get("what", ""))
        )
    except InputError as error:
        return _refused(str(error), 422)


async def fetch(request: Request) -> Response:
    """A file to take away."""
    kind = request.path_params["kind"]
    if kind not in DOWNLOADS:
        return _refused("there is no such file", 404)
    try:
        made = await _table(request).bench.do(
            download, _table(request).view, kind, request.query_params.get("paper", "")
        )
    except InputError as error:
        return _refused(str(error), 422)
    head = {"content-disposition": f'attachment; filename="{made.name}"'}
    return Response(made.data, media_type=made.media_type, headers=head)


async def show_run(request: Request) -> Response:
    """The docket in several sizes, as HTML; made when it is asked for."""
    asked = request.query_params
    try:
        made = await _table(request).bench.do(
            run_view, _table(request).view, asked.get("sizes", ""), asked.get("meet", ""), go_on=_yes(request)
        )
    except InputError as error:
        return _refused(str(error), 422)
    return JSONResponse({"html": fragment("run", run=made)})


async def fetch_run(request: Request) -> Response:
    """A file of the sizes, to take away."""
    asked, kind = request.query_params, request.path_params["kind"]
    if kind not in RUN_FILES:
        return _refused("there is no such file", 404)
    try:
        made = await _table(request).bench.do(
            run_download, _table(request).view, kind, asked.get("sizes", ""), asked.get("meet", ""), go_on=_yes(request)
        )
    except InputError as error:
        return _refused(str(error), 422)
    head = {"content-disposition": f'attachment; filename="{made.name}"'}
    return Response(made.data, media_type=made.media_type, headers=head)


def _yes(request: Request) -> bool:
    """Whether the other sizes are to be made when one cannot be."""
    return request.query_params.get("go_on") == "yes"


async def show_map(request: Request) -> Response:
    """How the printed sheets lie, as HTML; it takes a moment, so it is made when it is asked for."""
    try:
        made = await _table(request).bench.do(sheet_map, _table(request).view, request.query_params.get("paper", ""))
    except InputError as error:
        return _refused(str(error), 422)
    return JSONResponse({"html": fragment("map", map=made)})


async def show_seam(request: Request) -> Response:
    """The two edges of a seam laid on each other, and where they lie as it is walked; made when it is asked for."""
    try:
        name, together = request.query_params.get("name", ""), request.query_params.get("together") == "yes"
        made = await _table(request).bench.do(seam_view, _table(request).view, name, together=together)
    except InputError as error:
        return _refused(str(error), 422)
    return JSONResponse({"html": fragment("seam", seam=made), "places": made.places})


def _table(request: Request) -> Table:
    table: Table = request.app.state.table
    return table


def _written(table: Table, state: dict[str, Any]) -> Response:
    """An answer to what was written, which goes to the disk when the answer is out."""
    return JSONResponse(state, background=BackgroundTask(table.journal.onto_disk))


async def _asked(request: Request) -> dict[str, Any]:
    try:
        asked = await request.json()
        json.dumps(asked, ensure_ascii=False).encode()  # half of a sign is no text, and could not be shown again
    except (ValueError, RecursionError):
        return {}
    return asked if isinstance(asked, dict) else {}


def _refused(why: str, status: int = 400) -> Response:
    return JSONResponse({"problem": why}, status)
