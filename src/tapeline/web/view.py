"""A docket's text, looked at: what is in it, what is wrong with it, and the garment when there is one."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

from tapeline.docket import Docket, docket_from_text
from tapeline.finish import Finished
from tapeline.measures import Figure
from tapeline.problems import InputError, Problem, worst_first
from tapeline.project import Drafted, draft, finished
from tapeline.units import Unit

__all__ = ["View", "look"]

MOST_KEPT = 16
"""Texts that are remembered: those that a maker goes back to, by undo and redo; each holds a few hundred kilobytes."""
MOST_TOLD = 100


# Looking at the same text gives the same view, so each is equal to itself alone: what is made from it can be kept.
# Without slots: what is wrong is found out when it is asked for, after the drawing.
@dataclass(frozen=True, eq=False)
class View:
    """Everything the page shows is made from this."""

    name: str
    text: str
    table: Mapping[str, Any] | None
    """The values as typed; None when the text is no TOML."""
    docket: Docket | None
    drafted: Drafted | None
    finished: Finished | None
    refused: tuple[Problem, ...] = ()
    """Why it could not be drafted or finished."""

    @cached_property
    def problems(self) -> tuple[Problem, ...]:
        """Everything that is wrong or worth a look, worst first."""
        return tuple(worst_first((*(self.drafted.problems if self.drafted else ()), *self.refused)))

    @property
    def told(self) -> tuple[Problem, ...]:
        """The problems that are listed: the worst; a page of thousands is of use to nobody, and takes long to make."""
        return self.problems[:MOST_TOLD]

    @property
    def untold(self) -> int:
        """How many more there are."""
        return len(self.problems) - len(self.told)

    @property
    def figure(self) -> Figure:
        """The figure as typed, or a woman's."""
        said = self.section("wearer").get("figure")
        return Figure(said) if said in list(Figure) else Figure.WOMAN

    @property
    def unit(self) -> Unit:
        """The unit as typed, or centimetres."""
        said = self.section("wearer").get("unit")
        return Unit(said) if said in list(Unit) else Unit.CM

    def section(self, *keys: str) -> Mapping[str, Any]:
        """A table of the docket, as typed; empty when it is not there."""
        table: Any = self.table or {}
        for key in keys:
            table = table.get(key) if isinstance(table, Mapping) else None
        return table if isinstance(table, Mapping) else {}


@lru_cache(maxsize=MOST_KEPT)
def look(text: str, name: str) -> View:
    """Look at a docket's text; never raises for what a maker can write."""
    docket: Docket | None = None
    drafted: Drafted | None = None
    done: Finished | None = None
    refused: tuple[Problem, ...] = ()
    try:
        docket = docket_from_text(text, name)
        drafted = draft(docket)
        done = finished(drafted)
    except InputError as error:
        refused = tuple(error.problems)
    return View(name, text, docket.table if docket else _typed(text), docket, drafted, done, refused)


def _typed(text: str) -> Mapping[str, Any] | None:
    """The values of a text that is no docket; None when it is no TOML."""
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError):
        return None
