"""How wide the allowances are: one number, or by seam, by edge, by edge of one piece."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from tapeline.pattern import Edge, EdgeKind, Garment, Piece
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["MOST_ALLOWANCE_MM", "MOST_HEM_MM", "VENT_MM", "FinishChoices", "allowances"]

MOST_ALLOWANCE_MM = 50.0
"""Wider is no seam allowance any more: it would not lie flat inside a curve."""
MOST_HEM_MM = 100.0
"""A deep hem on a straight coat; no top has more."""
VENT_MM = 15.0
"""Turned back at each edge of a vent that is not named; common practice in the trade, no source."""
NOTCH_DEPTH_MM = (1.0, 10.0)
"""A notch that can be seen, and one that does not come near the stitches of a wide allowance."""


@dataclass(frozen=True, slots=True)
class FinishChoices:
    """Allowances, hem depth and notch depth, in mm.

    Widths are common practice in the trade, no source: 10 for woven cloth sewn in a workshop, 15 sewn at home, 6 to 10
    overlocked; hem of a tee 20 to 25; notches 3 to 6 deep.

    >>> FinishChoices(by_name={"neckline": 6, "front.shoulder": 15}).by_name["neckline"]
    6
    """

    allowance_mm: float = 10.0
    """For every seam that is neither named nor says so itself."""
    by_name: Mapping[str, float] = field(default_factory=dict, hash=False)
    """By name of a seam, of an edge on all pieces (`neckline`), or of an edge of one piece (`front.neckline`).

    The most exact name wins: an edge of one piece, then an edge, then a seam.
    """
    hem_mm: float = 25.0
    """Depth of every hem that is neither named nor says so itself."""
    notch_depth_mm: float = 5.0
    """How far a notch is cut in, at most half the allowance."""

    def problems(self) -> Iterator[Problem]:
        """What is out of range, whatever the garment."""
        yield from _out_of_range("allowance", self.allowance_mm, 0.0, MOST_ALLOWANCE_MM)
        yield from _out_of_range("hem", self.hem_mm, 0.0, MOST_HEM_MM)
        yield from _out_of_range("notch depth", self.notch_depth_mm, *NOTCH_DEPTH_MM)
        for name, width in self.by_name.items():
            yield from _out_of_range(f"allowance of {name}", width, 0.0, MOST_HEM_MM)


def allowances(garment: Garment, choices: FinishChoices) -> dict[str, dict[str, float]]:
    """Allowance in mm of every edge, by piece and edge. An edge on the fold has none.

    Raises `InputError` with everything that is wrong: a width that is negative, not a number or too wide
    (`allowance-range`), a name that no seam or edge has (`allowance-unknown`), a width for an edge on the fold
    (`allowance-on-fold`).
    """
    problems = [*choices.problems(), *_name_problems(garment, choices)]
    if problems:
        raise InputError(problems)
    return {
        piece.name: {edge.name: _width(garment, piece, edge, choices) for edge in piece.edges}
        for piece in garment.pieces
    }


def _width(garment: Garment, piece: Piece, edge: Edge, choices: FinishChoices) -> float:
    if edge.fold:
        return 0.0
    seams = [seam.name for seam in garment.seams if (piece.name, edge.name) in _edges_of_seam(garment, seam.name)]
    for name in (f"{piece.name}.{edge.name}", edge.name, *seams):
        if name in choices.by_name:
            return float(choices.by_name[name])
    if edge.allowance_mm is not None:
        return edge.allowance_mm
    usual = {EdgeKind.HEM: choices.hem_mm, EdgeKind.VENT: VENT_MM, EdgeKind.NEATENED: 0.0}
    return float(usual.get(edge.kind, choices.allowance_mm))


def _edges_of_seam(garment: Garment, name: str) -> set[tuple[str, str]]:
    return {(ref.piece, ref.edge) for seam in garment.seams if seam.name == name for ref in (*seam.a, *seam.b)}


def _named(garment: Garment, name: str) -> list[Edge]:
    """Every edge that a name means."""
    sewn = _edges_of_seam(garment, name)
    return [
        edge
        for piece in garment.pieces
        for edge in piece.edges
        if name in (edge.name, f"{piece.name}.{edge.name}") or (piece.name, edge.name) in sewn
    ]


def _name_problems(garment: Garment, choices: FinishChoices) -> Iterator[Problem]:
    known = {seam.name for seam in garment.seams}
    known |= {edge.name for piece in garment.pieces for edge in piece.edges}
    known |= {f"{piece.name}.{edge.name}" for piece in garment.pieces for edge in piece.edges}
    for name, width in choices.by_name.items():
        edges = _named(garment, name)
        where = f"allowance of {name}: {width} mm"
        if not edges:
            yield Problem(
                "allowance-unknown",
                Severity.ERROR,
                f"no seam or edge of the {garment.style} is called {name}",
                where=where,
                hint=closest(name, known),
            )
        elif all(edge.fold for edge in edges) and width != 0:
            yield Problem(
                "allowance-on-fold",
                Severity.ERROR,
                f"{name} lies on the fold of the cloth: nothing is cut there, so it has no allowance",
                where=where,
                hint="leave it out",
            )
        elif any(edge.kind is EdgeKind.SEAM for edge in edges) and _number(width) and width <= MOST_HEM_MM:
            yield from _out_of_range(f"allowance of {name}", width, 0.0, MOST_ALLOWANCE_MM)


def _number(value: object) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value) and value >= 0


def _out_of_range(what: str, value: float, least: float, most: float) -> Iterator[Problem]:
    if _number(value) and least <= value <= most:
        return
    yield Problem(
        "allowance-range",
        Severity.ERROR,
        f"{what} is {value} mm; it lies between {least:g} and {most:g} mm",
        where=what,
        hint="widths are in millimetres here: 1 cm is 10 mm",
    )
