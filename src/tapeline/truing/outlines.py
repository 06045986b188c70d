"""Outlines: no piece crosses itself, and all turn the same way."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.geometry import area, crosses_itself
from tapeline.pattern import Garment
from tapeline.problems import Problem, Severity

__all__ = ["outline_problems"]


def outline_problems(garment: Garment) -> Iterator[Problem]:
    """Pieces that cannot be cut as drawn."""
    for piece in garment.pieces:
        if crosses_itself(piece.seam_line):
            yield Problem(
                "outline-crossed",
                Severity.ERROR,
                f"the outline of the {piece.name} crosses itself",
                piece.name,
                "take the tapes again that place its corners; `explain` names them",
            )
        elif area(piece.seam_line) >= 0:
            yield Problem(
                "outline-inside-out",
                Severity.ERROR,
                f"the outline of the {piece.name} runs the wrong way round: its sides lie crosswise",
                piece.name,
                "take the tapes again that place its corners; `explain` names them",
            )
