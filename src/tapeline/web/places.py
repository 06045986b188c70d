"""The places of the page in the order of the day, each as HTML made from a view."""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

import tapeline
from tapeline.styles import STYLES
from tapeline.units import Unit
from tapeline.web.docket_place import lines
from tapeline.web.draft_place import construction
from tapeline.web.finish_place import allowances, general, papers
from tapeline.web.measure_place import tapes
from tapeline.web.style_place import choices
from tapeline.web.true_place import truing
from tapeline.web.view import View

__all__ = ["DAY", "fragment", "page", "places", "title"]

DAY = (
    ("measure", "Measure"),
    ("draft", "Draft"),
    ("style", "Style"),
    ("true", "True"),
    ("finish", "Finish"),
    ("docket", "Docket"),
)
"""The places, in the order of the day."""


@cache
def _templates() -> Environment:
    environment = Environment(
        loader=PackageLoader("tapeline.web"),
        autoescape=select_autoescape(default=True),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals["version"] = tapeline.__version__
    return environment


def places(view: View, only: str = "") -> dict[str, Any]:
    """Every place's HTML (or that of one only), and the findings counted."""
    asked = [name for name, _ in DAY if name == only] or [name for name, _ in DAY]
    made = {name: _templates().get_template(f"{name}.html").render(_shown(name, view)) for name in asked}
    return {
        "places": made,
        "errors": sum(problem.severity == "error" for problem in view.problems),
        "doubts": sum(problem.severity == "doubt" for problem in view.problems),
    }


def fragment(name: str, **shown: Any) -> str:  # noqa: ANN401 - whatever the template shows
    """A part of the page that is made when it is asked for."""
    return _templates().get_template(f"{name}.html").render(shown)


def page(view: View, state: dict[str, Any], shared: str = "") -> str:
    """The whole page; says so where others see it too."""
    return (
        _templates()
        .get_template("page.html")
        .render(
            day=DAY,
            view=view,
            state=state,
            state_json=json.dumps(state).replace("<", "\\u003c"),
            stamp=_stamp(),
            shared=shared,
        )
    )


@cache
def _stamp() -> str:
    """Changes with the static files, so that a new version is never mixed with an old one from a cache."""
    folder = files("tapeline.web") / "static"
    return format(hash(tuple(sorted((f.name, len(f.read_bytes())) for f in folder.iterdir()))) & 0xFFFFFFFF, "x")


def title(view: View) -> str:
    """What is being made, and for whom."""
    if view.docket is None:
        return view.name
    return f"{view.docket.style.title} for {view.docket.wearer.name}"


def _shown(name: str, view: View) -> dict[str, Any]:
    shown: dict[str, Any] = {"view": view, "docket": view.docket, "drafted": view.drafted, "unit": view.unit}
    if name == "measure":
        shown |= tapes(view)
    elif name == "draft":
        shown |= construction(view)
    elif name == "style":
        shown |= {"groups": choices(view)}
    elif name == "true":
        shown |= truing(view)
    elif name == "finish":
        shown |= {"allowances": allowances(view), "papers": papers(view), **general(view)}
    elif name == "docket":
        shown |= {"lines": lines(view), "styles": STYLES.values(), "units": list(Unit)}
    return shown
