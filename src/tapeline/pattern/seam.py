"""A `Seam` sews one run of edges to another; a `Join` is where a line runs on across a seam."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length

__all__ = ["EdgeRef", "Join", "Seam"]


@dataclass(frozen=True, slots=True)
class EdgeRef:
    """An edge of a piece, walked from its start or from its end."""

    piece: str
    edge: str
    backwards: bool = False

    @property
    def backward(self) -> EdgeRef:
        """The same edge, walked from its other end."""
        return EdgeRef(self.piece, self.edge, not self.backwards)

    def __str__(self) -> str:
        return f"{self.piece}.{self.edge}"


@dataclass(frozen=True, slots=True)
class Seam:
    """Two runs of edges that are sewn together, walked the same way; `a` is longer than `b` by the ease."""

    name: str
    a: tuple[EdgeRef, ...]
    b: tuple[EdgeRef, ...]
    ease: Length
    """How much longer `a` is meant to be than `b`: cap ease is positive, a stretched band's is negative."""
    reason: str = ""
    """Why they differ."""
    stretch: float | None = None
    """How far the cloth of `a` stretches, per cent, where it is another than the garment's."""

    def side_text(self, side: tuple[EdgeRef, ...]) -> str:
        """`back.neckline + front.neckline`."""
        return " + ".join(map(str, side))


@dataclass(frozen=True, slots=True)
class Join:
    """A line (neckline, armhole, hem) that must run straight on when a seam is sewn.

    Each corner is a piece, the edge on the line, and the edge in the seam.
    """

    line: str
    seam: str
    corners: tuple[tuple[str, str, str], tuple[str, str, str]]
    corner: str = ""
    """Why the line bends there, where it is meant to."""
