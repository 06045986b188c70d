"""A `Garment` is everything drafted for one wearer: pieces, how they are sewn, and why each line is there."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tapeline.geometry import Path, Point
from tapeline.pattern.girth import Girth
from tapeline.pattern.piece import Piece
from tapeline.pattern.seam import EdgeRef, Join, Seam
from tapeline.pattern.size import Size
from tapeline.pattern.step import Step, StepKind

__all__ = ["Garment"]


# Without slots: points and lines by their labels are looked through once.
@dataclass(frozen=True)
class Garment:
    """Pieces, seams, joins, girths, sizes and steps of one garment."""

    style: str
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    joins: tuple[Join, ...]
    girths: tuple[Girth, ...]
    sizes: tuple[Size, ...]
    steps: tuple[Step, ...]

    def piece(self, name: str) -> Piece:
        """The piece of that name; `KeyError` names the pieces there are."""
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(f"there is no piece {name}; there are {', '.join(p.name for p in self.pieces)}")

    def path(self, ref: EdgeRef) -> Path:
        """An edge as a seam walks it."""
        path = self.piece(ref.piece).edge(ref.edge).path
        return path.reversed() if ref.backwards else path

    def run_length(self, side: tuple[EdgeRef, ...]) -> float:
        """Millimetres along one side of a seam."""
        return sum(self.path(ref).length for ref in side)

    @cached_property
    def points(self) -> dict[str, Point]:
        """Every point drawn, by its label."""
        return {step.label: step.point for step in self.steps if step.point is not None}

    @cached_property
    def lines(self) -> dict[str, Path]:
        """Every line drawn, by its label."""
        return {step.label: step.path for step in self.steps if step.path is not None}

    def step(self, label: str) -> Step:
        """The step of that label; `KeyError` when there is none."""
        for step in self.steps:
            if step.label == label and step.kind is not StepKind.SECTION:
                return step
        raise KeyError(label)
