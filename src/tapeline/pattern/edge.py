"""An `Edge` is one side of a piece, from corner to corner."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from tapeline.geometry import Path

__all__ = ["Edge", "EdgeKind"]


class EdgeKind(StrEnum):
    """What becomes of an edge."""

    SEAM = "seam"
    """Sewn to another edge."""
    FOLD = "fold"
    """Laid on the fold of the cloth; the piece is one half."""
    HEM = "hem"
    """Turned up."""
    VENT = "vent"
    """One side of a slit, turned back."""
    NEATENED = "neatened"
    """Sewn to nothing: overlocked, or left as it is cut, as the outer edge of a facing is."""
    LAID = "laid"
    """Turned under and stitched flat on another piece, along a mark there: the edge of a patch pocket."""


@dataclass(frozen=True, slots=True)
class Edge:
    """One side of a piece; the edges of a piece follow each other clockwise."""

    name: str
    """`armhole`; unique in its piece."""
    path: Path
    kind: EdgeKind = EdgeKind.SEAM
    allowance_mm: float | None = None
    """How wide its allowance is where that is part of how it is made: a neck hem, an edge that is bound."""

    @property
    def fold(self) -> bool:
        """Whether it lies on the fold."""
        return self.kind is EdgeKind.FOLD

    @property
    def length(self) -> float:
        """Millimetres."""
        return self.path.length
