"""True: findings worst first, ease as rings, seams laid along each other, corners enlarged."""

from __future__ import annotations

import math
from dataclasses import dataclass, is_dataclass
from typing import Any

from tapeline.lengths import Length
from tapeline.pattern import choices_of
from tapeline.problems import Problem
from tapeline.truing import JOIN_TOLERANCE, Truing
from tapeline.units import Unit
from tapeline.web.close_up import corner_view, strip
from tapeline.web.view import View

__all__ = ["Finding", "truing"]

RING = 46.0
"""Radius of the widest girth on its picture."""
NOTHING: dict[str, Any] = {"findings": [], "girths": [], "strips": [], "corners": [], "opening": None, "hood": None}


@dataclass(frozen=True, slots=True)
class Finding:
    """A problem, with what of it the page can show and do."""

    problem: Problem
    marks: tuple[str, ...]
    """Labels of the lines to be lit in the drawing."""
    keys: str
    """The docket line that the hint changes, dotted; empty when the hint is for the maker alone."""
    value: str
    """What the hint writes there, as it would be typed."""

    @property
    def seam(self) -> str:
        """The seam it is about, whose edges the page can lay on each other; empty when it is about none."""
        word, _, name = self.problem.where.partition(" ")
        return name if word == "seam" and self.marks else ""


def truing(view: View) -> dict[str, Any]:
    """Everything the place shows."""
    findings = [Finding(problem, _marks(view, problem), *_change(view, problem)) for problem in view.told]
    if view.drafted is None:
        return {**NOTHING, "findings": findings}
    true, garment = view.drafted.truing, view.drafted.garment
    return {
        "findings": findings,
        "girths": _girths(true, view.unit),
        "strips": [strip(walked, view.unit) for walked in true.walks],
        "corners": [corner_view(garment, join, angle) for join, angle in zip(garment.joins, true.joins, strict=True)],
        "opening": true.opening,
        "hood": true.hood,
    }


def _girths(true: Truing, unit: Unit) -> list[dict[str, Any]]:
    measured = true.girths
    widest = max((max(found.garment_mm, found.girth.tape.mm) for found in measured), default=1.0)
    return [
        {
            "name": found.girth.name.replace("_", " "),
            "tape": f"{found.girth.tape.mm / unit.mm:.1f}",
            "garment": f"{found.garment_mm / unit.mm:.1f}",
            "ease": f"{found.ease_mm / unit.mm:+.1f}",
            "inner": RING * found.girth.tape.mm / widest,
            "outer": RING * found.garment_mm / widest,
        }
        for found in measured
    ]


def _marks(view: View, problem: Problem) -> tuple[str, ...]:
    """What a problem's place means on the drawing: the edges of a seam, the sides at a girth, a bent line, an edge."""
    if view.drafted is None:
        return ()
    garment = view.drafted.garment
    word, _, name = problem.where.partition(" ")
    if word == "seam":
        return tuple(str(ref) for seam in garment.seams if seam.name == name for ref in (*seam.a, *seam.b))
    if word == "girth":
        across = next((girth.across for girth in garment.girths if girth.name == name), ())
        return tuple(label for piece, level, _ in across for label in (f"{piece}.{level}", f"{piece}.side"))
    if ", " in problem.where:
        return tuple(
            f"{piece}.{line}"
            for join, angle in zip(garment.joins, view.drafted.truing.joins, strict=True)
            if abs(angle.bend) > JOIN_TOLERANCE and ", ".join(angle.corners) == problem.where
            for piece, line, _ in join.corners
        )
    edges = [f"{piece.name}.{edge.name}" for piece in garment.pieces for edge in piece.edges]
    return tuple(edge for edge in edges if problem.where in (edge, edge.partition(".")[0]))


def _change(view: View, problem: Problem) -> tuple[str, str]:
    """The hint as an edit of the docket, where it is one that stays within the choice's range."""
    if problem.change is None or view.docket is None:
        return "", ""
    keys, more = problem.change
    holder: Any = view.docket.choices
    *path, name = keys.split(".")[1:]
    for key in path:
        holder = getattr(holder, key, None)
    now = getattr(holder, name, None)
    limit = choices_of(type(holder)).get(name) if is_dataclass(holder) else None
    if not isinstance(now, Length) or limit is None:
        return "", ""
    # Up to the next millimetre, so that the finding goes and does not stay by a hair.
    value = now.mm + (math.ceil(more) if more > 0 else math.floor(more))
    if not limit.least * 10 <= value <= limit.most * 10:
        return "", ""
    return keys, f"{round(value / view.unit.mm, 3):g}"
