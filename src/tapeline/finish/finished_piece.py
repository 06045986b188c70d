"""A finished piece: its cut line, ticks and words, ready to print and cut."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import Line, Path
from tapeline.pattern import NotchKind, Piece

__all__ = ["FinishedPiece", "Tick", "Title"]


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
