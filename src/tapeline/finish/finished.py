"""What leaves the drafting table: pieces with cut lines, ticks and words, ready to print and cut."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tapeline.geometry import Line, Path
from tapeline.pattern import Garment, NotchKind, Piece

__all__ = ["CuttingListRow", "Finished", "FinishedPiece", "Tick", "Title"]


@dataclass(frozen=True, slots=True)
class Title:
    """What is written on every piece and page, besides the piece's own name."""

    docket: str
    """`tee.toml`"""
    wearer: str
    """Name of the wearer, or the size: `Marit`, `size 88`."""
    style: str
    """`tee`"""
    date: str
    """ISO date of drafting; empty for output that must not change from day to day."""
    version: str
    """Version of Tapeline that drafted it."""


@dataclass(frozen=True, slots=True)
class Tick:
    """One notch as it is cut: short lines from the cut line inward, square to the edge."""

    edge: str
    at_mm: float
    kind: NotchKind
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class FinishedPiece:
    """A piece with its allowances."""

    piece: Piece
    cut_line: Path
    """Closed, clockwise; runs along the fold where the piece lies on one."""
    allowances: tuple[tuple[str, float], ...]
    """Allowance of each edge in mm, in the order of the edges."""
    ticks: tuple[Tick, ...]
    words: tuple[str, ...]
    """Lines of text for the piece: its title, wearer, cut quantity, date, docket."""


@dataclass(frozen=True, slots=True)
class CuttingListRow:
    """One line of the cutting list."""

    piece: str
    title: str
    cloth: str
    quantity: int
    on_fold: bool
    mirrored: bool
    width_mm: float
    """Across the grain, of the cut piece as laid out (a piece on the fold unfolded)."""
    length_mm: float
    """Along the grain."""


# Without slots: the cutting list is made once, when it is asked for; the drawing on the page needs none.
@dataclass(frozen=True)
class Finished:
    """A garment with all its pieces finished."""

    garment: Garment
    title: Title
    pieces: tuple[FinishedPiece, ...]

    @cached_property
    def cutting_list(self) -> tuple[CuttingListRow, ...]:
        """What has to come out of which cloth."""
        from tapeline.finish.cutting_list import cutting_list

        return cutting_list(self.pieces)
