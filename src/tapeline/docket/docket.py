"""The `Docket`: the work order that travels with a garment, read and found usable."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from tapeline.docket.places import Keys
from tapeline.finish import FinishChoices
from tapeline.finish.tools import USUAL_TOOLS, Tool
from tapeline.lay.settings import LaySettings
from tapeline.measures import Wearer
from tapeline.pattern import Cloth, Corrections
from tapeline.problems import Problem
from tapeline.styles import Style
from tapeline.units import Unit

__all__ = ["Docket", "docket_keys"]

_ALLOWANCE = "allowance of "


@dataclass(frozen=True, slots=True)
class Docket:
    """Wearer, style, cloth and finish of one garment; every value is in its range."""

    name: str
    """Of the file: `marit.toml`."""
    wearer: Wearer
    style: Style
    choices: Any
    """The style's own dataclass, every length named."""
    surveyed: bool
    """Whether the frame follows the survey, or the rule of proportion."""
    by_hand: Mapping[str, float] = field(hash=False)
    """Sizes of the frame in mm that are set in place of the rule."""
    corrections: Corrections
    """What a fitting showed of the wearer."""
    cloth: Cloth
    finish: FinishChoices
    paper: str
    lay: LaySettings
    """How the cloth lies for cutting."""
    allow: frozenset[str]
    """Codes of problems that the maker lets pass."""
    table: Mapping[str, Any] = field(hash=False)
    """The docket as it was written."""
    where: Callable[[Keys], str] = field(hash=False, compare=False)
    """The place of a key, for a person."""
    notes: tuple[Problem, ...] = ()
    """What reading found worth saying."""
    tools: tuple[Tool, ...] = USUAL_TOOLS
    """Of the machine that cuts."""

    @property
    def unit(self) -> Unit:
        """In which bare numbers are read and lengths are shown."""
        return self.wearer.unit

    def placed(self, problems: Iterable[Problem]) -> list[Problem]:
        """The same problems, each at its line of the docket where it speaks of one (`tapes.hip`, `garment.waist`)."""
        return [self._placed(problem) for problem in problems]

    def _placed(self, problem: Problem) -> Problem:
        keys = docket_keys(problem.where)
        return problem if keys is None else replace(problem, where=self.where(keys))


def docket_keys(where: str) -> Keys | None:
    """The docket keys that a stage's own place means; None for a place on the garment.

    >>> docket_keys("tapes.hip"), docket_keys("allowance of front.hem: 9 mm"), docket_keys("back.armhole")
    (('wearer', 'tapes', 'hip'), ('finish', 'allowance', 'front.hem'), None)
    """
    if where.startswith(_ALLOWANCE):
        return ("finish", "allowance", where.removeprefix(_ALLOWANCE).partition(":")[0])
    first, *rest = where.partition(":")[0].split(".")
    if first == "tapes":
        return ("wearer", "tapes", *rest)
    return (first, *rest) if first in {"wearer", "garment", "cloth", "finish", "cutter", "lay"} else None
