"""A `LayPlan` says where every piece lies on the cloth, as coordinates; what it takes follows from them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tapeline.geometry import Outline, Rigid, Vector, bounds, ground, placed
from tapeline.lay.cloth import LayCloth
from tapeline.lay.piece import LayPiece

__all__ = ["LayPlan", "Placement"]


@dataclass(frozen=True, slots=True)
class Placement:
    """One piece on the cloth: turned over (y to -y) where it says so, then turned about its origin, then shifted."""

    piece: str
    """Key of the piece: `marit/front`."""
    garment: int
    """Which of the garments alike it belongs to, from 1."""
    x: float
    """Along the cloth from its beginning, mm."""
    y: float
    """Across the cloth from the lower edge of the strip (the fold, on folded cloth), mm."""
    turn: float = 0.0
    """Radians to the left."""
    turned_over: bool = False

    @property
    def move(self) -> Rigid:
        """From the piece's own axes onto the cloth.

        >>> from tapeline.geometry import Point
        >>> Placement("marit/front", 1, 100, 50, turned_over=True).move.point(Point(3, 4))
        Point(x=103.0, y=46.0)
        """
        over = Rigid(d=-1.0) if self.turned_over else Rigid()
        return over.then(Rigid.turn(self.turn)).then(Rigid.shift(Vector(self.x, self.y)))


@dataclass(frozen=True)
class LayPlan:
    """Pieces, cloth and a place for every copy; the strip runs from x = 0 to the length, from y = 0 to its height."""

    cloth: LayCloth
    pieces: tuple[LayPiece, ...]
    placements: tuple[Placement, ...]
    found: str = ""
    """How it was found, in a few words."""
    seconds: float = 0.0
    """After how long it was found."""

    def piece(self, key: str) -> LayPiece:
        """The piece of that key; `KeyError` when there is none."""
        return self.by_key[key]

    @cached_property
    def by_key(self) -> dict[str, LayPiece]:
        """The pieces by their keys."""
        return {piece.key: piece for piece in self.pieces}

    @cached_property
    def outlines(self) -> tuple[Outline, ...]:
        """Where each placement lies on the cloth, in their order."""
        return tuple(placed(self.by_key[p.piece].outline, p.move) for p in self.placements)

    def laid(self) -> Iterator[tuple[Placement, LayPiece, Outline]]:
        """Each placement with its piece and where it lies."""
        for placement, outline in zip(self.placements, self.outlines, strict=True):
            yield placement, self.by_key[placement.piece], outline

    @cached_property
    def length_mm(self) -> float:
        """From the beginning of the cloth to the end of the last piece."""
        return max((bounds(outline)[2] for outline in self.outlines), default=0.0)

    @cached_property
    def laid_mm2(self) -> float:
        """Ground that the pieces cover, on one layer."""
        return math.fsum(ground(outline) for outline in self.outlines)

    @property
    def density(self) -> float:
        """Share of the strip that is covered, 0 to 1."""
        return self.laid_mm2 / (self.cloth.strip_mm * self.length_mm) if self.length_mm else 0.0

    @property
    def bound_mm(self) -> float:
        """No plan can be shorter: all the ground, without any waste."""
        return self.laid_mm2 / self.cloth.strip_mm

    @property
    def bought_mm(self) -> float:
        """Off the roll."""
        return self.cloth.bought_mm(self.length_mm)

    @property
    def waste_mm2(self) -> float:
        """Cloth that is bought and lies between and beside the pieces, selvedges with it, all layers."""
        return self.bought_mm * self.cloth.width_mm - self.laid_mm2 * self.cloth.spread.layers

    @property
    def yield_share(self) -> float:
        """Share of the bought cloth, selvedges with it, that becomes pieces, 0 to 1."""
        bought = self.bought_mm * self.cloth.width_mm
        return self.laid_mm2 * self.cloth.spread.layers / bought if bought else 0.0

    @property
    def cost(self) -> float | None:
        """Of the bought cloth; None when the price is not known."""
        return None if self.cloth.price is None else self.cloth.price * self.bought_mm / 1000
