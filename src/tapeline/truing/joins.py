"""Joins and squares: lines that run across a seam run straight on when it is sewn, and meet every fold square."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.pattern import Garment
from tapeline.problems import Problem, Severity

__all__ = [
    "JOIN_TOLERANCE",
    "SQUARE_TOLERANCE",
    "JoinAngle",
    "SquareAngle",
    "join_angles",
    "joins_problems",
    "square_angles",
]

JOIN_TOLERANCE = math.radians(1)
"""A bend that a seam allowance swallows."""
SQUARE_TOLERANCE = math.radians(0.1)
"""Unfolded, the bend is twice as much, and there is no seam to hide it."""


@dataclass(frozen=True, slots=True)
class JoinAngle:
    """How far a line bends where it crosses a seam, in radians; 0 runs straight on, positive leaves a point."""

    line: str
    seam: str
    corners: tuple[str, str]
    bend: float
    meant: str = ""
    """Why it bends, where it is meant to."""


@dataclass(frozen=True, slots=True)
class SquareAngle:
    """How far an edge is from square where it meets a fold, in radians; positive leaves a point."""

    piece: str
    edge: str
    off: float


def join_angles(garment: Garment) -> list[JoinAngle]:
    """The bend of every line that crosses a seam."""
    return [
        JoinAngle(
            join.line,
            join.seam,
            (join.corners[0][0], join.corners[1][0]),
            sum(garment.piece(piece).corner(line, seam)[1] for piece, line, seam in join.corners) - math.pi,
            join.corner,
        )
        for join in garment.joins
    ]


def square_angles(garment: Garment) -> list[SquareAngle]:
    """How square the neighbours of every fold are to it."""
    found = []
    for piece in garment.pieces:
        edges = piece.edges
        for index, edge in enumerate(edges):
            if edge.fold:
                for neighbour in (edges[index - 1], edges[(index + 1) % len(edges)]):
                    if neighbour.name in piece.pointed:
                        continue
                    off = piece.corner(edge.name, neighbour.name)[1] - math.pi / 2
                    found.append(SquareAngle(piece.name, neighbour.name, off))
    return found


def joins_problems(joins: list[JoinAngle], squares: list[SquareAngle]) -> Iterator[Problem]:
    """Lines that bend at a seam or a fold."""
    for join in joins:
        if abs(join.bend) > JOIN_TOLERANCE and not join.meant:
            kind = "a point" if join.bend > 0 else "a dip"
            yield Problem(
                "join-bends",
                Severity.ERROR,
                f"the {join.line} bends by {math.degrees(abs(join.bend)):.1f} degrees where it crosses the seam "
                f"{join.seam}: {kind} when sewn",
                f"{join.corners[0]}, {join.corners[1]}",
                "a size set by hand may have turned it: take it out of garment.sizes",
            )
    for square in squares:
        if abs(square.off) > SQUARE_TOLERANCE:
            kind = "a point" if square.off > 0 else "a dip"
            yield Problem(
                "fold-not-square",
                Severity.ERROR,
                f"the {square.edge} of the {square.piece} meets the fold {math.degrees(abs(square.off)):.2f} degrees "
                f"off square: {kind} when unfolded",
                f"{square.piece}.{square.edge}",
                "a size set by hand may have turned it: take it out of garment.sizes",
            )
