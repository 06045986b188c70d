"""One looseness in its two ways, side by side: what the rule extends, and what is cut and spread."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.alter.loosened import fold_line, loosened, lowering_line, outer_cut, shoulder_cut
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.story import latest
from tapeline.geometry import Path, Point
from tapeline.lengths import Length
from tapeline.pattern import Garment, Piece, StepKind

__all__ = ["SAME_MM", "Placed", "TwoWays", "two_ways"]

SAME_MM = 1.0
"""The two ways agree within this: a pencil line is half of it, and nobody cuts paper more exactly."""
LOOKED_AT = 100
"""So many places along a line are looked at."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A place that the rule fixes, and where each way puts it."""

    name: str
    """`shoulder tip`"""
    ruled: Point
    cut: Point

    @property
    def apart_mm(self) -> float:
        """How far the two lie from each other."""
        return self.ruled.distance_to(self.cut)


@dataclass(frozen=True, slots=True)
class TwoWays:
    """One half: as it was, extended by the rule, and cut and spread."""

    half: str
    side: Length
    drop: Length
    shoulder: Length
    close: Piece
    ruled: Piece
    cut: Piece
    lines: tuple[tuple[str, Path], ...]
    """Where the close half is cut before anything moves: `strip`, `fold`, `shoulder`, `armhole`, as far as needed."""
    places: tuple[Placed, ...]
    out: Length
    """How far out what is beyond the shoulder's cut goes."""
    fall: Length
    """How far down it goes meanwhile, for it follows the shoulder seam."""

    @property
    def same(self) -> bool:
        """Whether every place that the rule fixes is where the paper has it."""
        return all(place.apart_mm <= SAME_MM for place in self.places)

    @property
    def armhole_apart_mm(self) -> float:
        """How far the two armholes lie apart at the widest: between their ends they are a matter of drawing."""
        ruled, cut = (piece.edge("armhole").path for piece in (self.ruled, self.cut))
        places = (cut.at(cut.length * k / LOOKED_AT) for k in range(LOOKED_AT + 1))
        return max(ruled.distance_to(place) for place in places)


def two_ways(close: Garment, ruled: Garment, half: str, *, side: Length, drop: Length, shoulder: Length) -> TwoWays:
    """A half of two drafts of the block, the close one cut and spread to the looseness of the other.

    Args:
        close: The block without looseness.
        ruled: The same wearer's block, extended by the rule.
        half: `back` or `front`.
        side: The looseness at the side,
        drop: at the armhole,
        shoulder: and at the shoulder.

    Raises `InputError` where the paper cannot be cut so: see `loosened`.

    >>> from tapeline.blocks.looseness import LOOSENESS
    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> from tapeline.styles.block import BlockChoices
    >>> def block(looseness):
    ...     return STYLES["block"].page(Draft(size_wearer("92"), {}), BlockChoices(looseness), surveyed=True)
    >>> by = LOOSENESS["slight"]
    >>> both = two_ways(block(LOOSENESS["close"]), block(by), "back", side=by.side, drop=by.drop, shoulder=by.shoulder)
    >>> [place.name for place in both.places], both.same
    (['shoulder tip', 'underarm', 'side at the hip'], True)
    """
    cut = loosened(close, half, side=side, drop=drop, shoulder=shoulder)
    whole = close.piece(half)
    across = (("strip", lowering_line), ("fold", fold_line)) if drop.mm else ()
    up = (("shoulder", shoulder_cut),) if shoulder.mm else ()
    aside = (("armhole", outer_cut),) if side.mm or shoulder.mm else ()
    lines = tuple((name, cut_outline(whole, line(close, half)).path) for name, line in (*across, *up, *aside))

    def at(garment: Garment, name: str) -> Point:
        point = latest(garment, f"{half}.{name}", StepKind.POINT).point
        assert point is not None  # noqa: S101 - a step of that kind has one
        return point

    fixed = (("shoulder tip", f"{half}_shoulder_tip"), ("underarm", "underarm"), ("side at the hip", "side_hip"))
    places = tuple(Placed(says, at(ruled, name), at(cut, name)) for says, name in fixed)
    moved = at(cut, f"{half}_shoulder_tip") - at(close, f"{half}_shoulder_tip")
    return TwoWays(
        half,
        side,
        drop,
        shoulder,
        whole,
        ruled.piece(half),
        cut.piece(half),
        lines,
        places,
        Length(moved.x),
        Length(-moved.y),
    )
