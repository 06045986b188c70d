"""What a page of the hand sheet is made of: words, strokes, dots and boxes, in mm from the page's lower left corner."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

from tapeline.geometry import Path, Point

__all__ = ["Box", "Dot", "Label", "Page", "Picture", "Stroke", "WidthOf", "Words"]


class WidthOf(Protocol):
    """How wide a text is in mm, at a size in mm: whoever writes the letters knows."""

    def __call__(self, text: str, size_mm: float, *, bold: bool = False) -> float:
        """As above."""


@dataclass(frozen=True, slots=True)
class Words:
    """One line of text, from the left end of its base line."""

    text: str
    x: float
    y: float
    size_mm: float
    bold: bool = False
    grey: float = 0.0
    """0 black, 1 white."""

    def moved(self, x: float, y: float) -> Words:
        """The same words elsewhere."""
        return replace(self, x=self.x + x, y=self.y + y)


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line of the pencil."""

    path: Path
    width_mm: float
    grey: float = 0.0
    dashes_mm: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Dot:
    """A point, filled."""

    at: Point
    radius_mm: float
    grey: float = 0.0


@dataclass(frozen=True, slots=True)
class Box:
    """An empty box to write a number into, from its lower left corner."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Label:
    """The name of a point or a line in a picture."""

    words: Words
    width_mm: float
    lead: Path | None = None
    """From the point to its name, where the two lie apart."""

    @property
    def corners(self) -> tuple[float, float, float, float]:
        """Left, lower, right and upper end of what the letters cover."""
        w = self.words
        return w.x, w.y - 0.25 * w.size_mm, w.x + self.width_mm, w.y + 0.8 * w.size_mm


@dataclass(frozen=True, slots=True)
class Picture:
    """A piece so far, or the part of it where something is new; its marks are from its own lower left corner."""

    sheet: str
    """`back`"""
    scale: float
    """How many times smaller than the paper pattern."""
    width: float
    height: float
    window: tuple[float, float]
    """Between these two heights the strokes are shown."""
    strokes: tuple[Stroke, ...]
    dots: tuple[Dot, ...]
    labels: tuple[Label, ...]
    words: tuple[Words, ...]
    """Title, and the words of the scale bar."""
    bar: tuple[Stroke, ...]
    """The scale bar and the edges where the piece goes on: not cut off by the window."""


@dataclass(frozen=True, slots=True)
class Page:
    """One page."""

    words: tuple[Words, ...]
    strokes: tuple[Stroke, ...]
    boxes: tuple[Box, ...]
    pictures: tuple[tuple[Point, Picture], ...]
    """Each with the place of its lower left corner."""
