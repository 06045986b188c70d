"""The page's application: one docket, looked at and changed; every answer carries all places of the page anew."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass, field
from importlib.resources import files
from typing import Any

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from tomlkit.exceptions import TOMLKitError

from tapeline.docket.edit import with_value
from tapeline.problems import InputError
from tapeline.web.download import DOWNLOADS, download
from tapeline.web.journal import Journal
from tapeline.web.places import page, places
from tapeline.web.view import View, look

__all__ = ["Table", "application"]


@dataclass(slots=True)
class Table:
    """The cutting table: the journal of one docket, and its name. One change at a time."""

    journal: Journal
    name: str
    busy: asyncio.Lock = field(default_factory=asyncio.Lock)

    @property
    def view(self) -> View:
        """The docket now."""
        return look(self.journal.text, self.name)

    def state(self) -> dict[str, Any]:
        """What a window needs to show the docket now."""
        journal, view = self.journal, self.view
        return {
            "version": journal.version,
            "text": journal.text,
            "undo": journal.can_undo,
            "redo": journal.can_redo,
            **places(view),
        }


def application(table: Table) -> Starlette:
    """The routes."""

    async def show(_request: Request) -> Response:
        return HTMLResponse(page(table.view, table.state()))

    async def state(_request: Request) -> Response:
        return JSONResponse(table.state())

    async def edit(request: Request) -> Response:
        """Set one value of the docket; works on the newest text, whichever window wrote it."""
        asked = await _asked(request)
        keys, value = asked.get("keys"), asked.get("value")
        if not (isinstance(keys, list) and keys and all(isinstance(k, str) for k in keys)):
            return _refused("keys is a list of words")
        if not (value is None or isinstance(value, str)):
            return _refused("value is a text, or null")
        async with table.busy:
            try:
                text = with_value(table.journal.text, tuple(keys), value)
            except TOMLKitError:
                return _refused("the docket cannot be read as it stands: mend it in Docket first", 409)
            table.journal.change(text, tuple(keys))
            if asked.get("done"):
                table.journal.settle()
            return JSONResponse(table.state())

    async def text(request: Request) -> Response:
        """Replace the whole text; refused when another window wrote in between."""
        asked = await _asked(request)
        async with table.busy:
            if asked.get("base") != table.journal.version:
                return JSONResponse({"problem": "another window has changed the docket", **table.state()}, 409)
            if not isinstance(asked.get("text"), str):
                return _refused("text is a text")
            table.journal.change(asked["text"])
            return JSONResponse(table.state())

    async def undo(_request: Request) -> Response:
        async with table.busy:
            table.journal.undo()
            return JSONResponse(table.state())

    async def redo(_request: Request) -> Response:
        async with table.busy:
            table.journal.redo()
            return JSONResponse(table.state())

    async def fetch(request: Request) -> Response:
        kind = request.path_params["kind"]
        if kind not in DOWNLOADS:
            return _refused("there is no such file", 404)
        try:
            made = await asyncio.to_thread(download, table.view, kind, request.query_params.get("paper", ""))
        except InputError as error:
            return _refused(str(error), 422)
        head = {"content-disposition": f'attachment; filename="{made.name}"'}
        return Response(made.data, media_type=made.media_type, headers=head)

    routes = [
        Route("/", show),
        Route("/state", state),
        Route("/edit", edit, methods=["POST"]),
        Route("/text", text, methods=["POST"]),
        Route("/undo", undo, methods=["POST"]),
        Route("/redo", redo, methods=["POST"]),
        Route("/download/{kind}", fetch),
        Mount("/static", StaticFiles(directory=str(files("tapeline.web") / "static"))),
    ]
    return Starlette(routes=routes)


async def _asked(request: Request) -> dict[str, Any]:
    try:
        asked = await request.json()
    except (ValueError, RecursionError):
        return {}
    return asked if isinstance(asked, dict) else {}


def _refused(why: str, status: int = 400) -> Response:
    return JSONResponse({"problem": why}, status)
