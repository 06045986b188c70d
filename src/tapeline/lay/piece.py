"""A `LayPiece` is a piece as it lies on the cloth: its outline with the grain along the cloth, and what it may do."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import Outline, Point

__all__ = ["LayLine", "LayPiece"]


@dataclass(frozen=True, slots=True)
class LayLine:
    """A line inside a piece, to be drawn where the piece is drawn."""

    kind: str
    """`notch`, `grain`, `fold`, `seam`, `mark`."""
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class LayPiece:
    """One piece of one garment or of several alike.

    All places are in the piece's own axes for the lay, mm: the grain points along +x, the cloth's right side is up,
    shrinkage is in it already.
    """

    name: str
    """`front`."""
    garment: str
    """Whose: the docket's or the wearer's name; alike for all pieces of a garment."""
    outline: Outline
    """The cut line, flattened to a hundredth of a millimetre."""
    upright: int = 1
    """How many one garment takes as drawn."""
    turned_over: int = 0
    """How many one garment takes turned over, mirrored across the grain."""
    garments: int = 1
    """How many garments alike are laid."""
    cloth: str = "shell"
    title: str = ""
    """In words, for the drawing."""
    on_fold: bool = False
    """Half a piece: its edge at y = 0 has to lie on the fold of the cloth, the rest above it."""
    alike_over: bool = False
    """Whether it is the same turned over, so that either layer of two may give it."""
    free: bool = False
    """May be turned any way: interlining without a grain."""
    block: str = ""
    """Pieces of one garment with the same word here are laid side by side, as one."""
    match: Point | None = None
    """The place that has to lie on a dominant line of stripes or checks; None where the piece need not match."""
    lines: tuple[LayLine, ...] = ()
    words: tuple[str, ...] = ()

    def __hash__(self) -> int:
        # Looked up thousands of times; a whole outline need not be gone through for that.
        return hash((self.name, self.garment, self.cloth))

    @property
    def key(self) -> str:
        """Unique in a plan: `marit/front`."""
        return f"{self.garment}/{self.name}"
