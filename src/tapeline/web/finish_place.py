"""Finish: allowances by edge, cutting list, papers."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tapeline.web.view import View

__all__ = ["PAPERS", "allowances", "general", "papers"]

PAPERS = ("A4", "Letter", "A3", "A2", "A1", "A0", "roll 610 mm", "roll 914 mm", "roll 36 in")


def allowances(view: View) -> list[dict[str, Any]]:
    """Each edge's allowance, and what is typed for it."""
    if view.finished is None:
        return []
    typed = view.section("finish", "allowance")
    return [
        {
            "piece": piece.piece.title,
            "name": f"{piece.piece.name}.{edge}",
            "label": f"{piece.piece.title}, {edge.replace('_', ' ')}",
            "now": f"{width / view.unit.mm:g}",
            "typed": str(typed.get(f"{piece.piece.name}.{edge}", "")),
        }
        for piece in view.finished.pieces
        for edge, width in piece.allowances
        if not piece.piece.edge(edge).fold
    ]


def papers(view: View) -> list[str]:
    """Papers to choose from, the docket's own among them."""
    own = str(view.section("finish").get("paper", "A4"))
    return [own, *(paper for paper in PAPERS if paper != own)]


def general(view: View) -> dict[str, Any]:
    """The allowance of all seams as typed, and whether the docket has a table of them by edge."""
    typed = view.section("finish").get("allowance", "")
    by_edge = isinstance(typed, Mapping)
    return {"by_edge": by_edge, "general": str(typed.get("default", "")) if by_edge else str(typed)}
