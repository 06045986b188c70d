"""What the page asks about a lay: the form, start and stop, news, the picture, files."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response, StreamingResponse
from starlette.routing import Route

from tapeline.export import lay_dxf, lay_pdf, lay_plot, lay_table
from tapeline.lay import Direction, Spread, cloths_of, taken_up
from tapeline.problems import InputError
from tapeline.web.laying import AlreadyLaying
from tapeline.web.places import fragment
from tapeline.web.table import Table

__all__ = ["FILES", "ROUTES"]

FILES = {
    "svg": ("Picture, as SVG", "image/svg+xml"),
    "pdf": ("True to scale, as PDF", "application/pdf"),
    "dxf": ("DXF for a cutting table", "image/vnd.dxf"),
    "plt": ("Plotter file, HP-GL/2", "application/vnd.hp-hpgl"),
    "csv": ("Coordinates, as a table", "text/csv"),
    "json": ("The plan, to go on from", "application/json"),
}
FIELDS = ("cloth", "width", "spread", "direction", "gap", "garments", "price", "seconds")
LONGEST = 60
"""Letters of a field."""
NO_PLAN = JSONResponse({"problem": "there is no plan yet"}, 404)


async def form(request: Request) -> Response:
    """The questions, for the docket as it is now, and the plan there is."""
    table = _table(request)
    view = table.view
    if view.finished is None:
        return JSONResponse({"problem": "there is nothing to lay yet"}, 409)
    shown = {
        "cloths": cloths_of([view.finished]),
        "spreads": list(Spread),
        "directions": list(Direction),
        "files": FILES,
        "unit": view.unit,
        "told": table.laying.told(),
    }
    return JSONResponse({"html": fragment("lay", **shown), "told": table.laying.told()})


async def start(request: Request) -> Response:
    """Begin to lay."""
    table = _table(request)
    try:
        asked = await request.json()
    except (ValueError, RecursionError):
        asked = None
    if not isinstance(asked, dict) or not all(_short(asked.get(name)) for name in FIELDS):
        return JSONResponse({"problem": f"{', '.join(FIELDS)} are short texts"}, 400)
    if table.view.drafted is None:
        return JSONResponse({"problem": "there is nothing to lay yet"}, 409)
    wanted: dict[str, Any] = {name: asked[name].strip() for name in FIELDS}
    try:
        await table.laying.start({**wanted, "text": table.journal.text, "name": table.name})
    except AlreadyLaying:
        return JSONResponse({"problem": "a lay is under way: stop it first"}, 409)
    return JSONResponse(table.laying.told())


async def stop(request: Request) -> Response:
    """Stop, and keep the best."""
    await _table(request).laying.stop()
    return JSONResponse(_table(request).laying.told())


async def news(request: Request) -> Response:
    """Better plans as they come: server-sent events."""
    seen = request.headers.get("last-event-id", "0")
    events = _table(request).laying.events(int(seen) if seen.isdecimal() and len(seen) < 10 else 0)
    return StreamingResponse(events, media_type="text/event-stream")


async def picture(request: Request) -> Response:
    """The best plan, to look at."""
    best = _table(request).laying.best
    return Response(best["picture"], media_type="image/svg+xml") if best else NO_PLAN


async def fetch(request: Request) -> Response:
    """A file of the best plan."""
    kind, table = request.path_params["kind"], _table(request)
    best = table.laying.best
    if kind not in FILES or not best:
        return NO_PLAN
    try:
        data = await table.bench.do(_made, kind, best)
    except InputError as error:
        return JSONResponse({"problem": str(error)}, 422)
    head = {"content-disposition": f'attachment; filename="lay.{kind}"'}
    return Response(data, media_type=FILES[kind][1], headers=head)


def _made(kind: str, best: dict[str, Any]) -> bytes:
    if kind in ("svg", "json"):
        text: str = best["picture" if kind == "svg" else "kept"]
        return text.encode()
    plan = taken_up(best["kept"])
    if kind == "csv":
        return lay_table(plan).encode()
    if kind == "dxf":
        return lay_dxf(plan).data
    return lay_pdf(plan).data if kind == "pdf" else lay_plot(plan, second=True).data


def _short(value: object) -> bool:
    return isinstance(value, str) and len(value) <= LONGEST and value.isprintable()


def _table(request: Request) -> Table:
    table: Table = request.app.state.table
    return table


ROUTES = [
    Route("/lay", form),
    Route("/lay/start", start, methods=["POST"]),
    Route("/lay/stop", stop, methods=["POST"]),
    Route("/lay/news", news),
    Route("/lay/picture", picture),
    Route("/lay/file/{kind}", fetch),
]
