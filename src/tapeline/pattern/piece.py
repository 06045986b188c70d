"""A `Piece` is one part of a garment as it is drawn: seam line, marks, grain, and how it is cut."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import reduce

from tapeline.geometry import Line, Path, Point
from tapeline.pattern.edge import Edge
from tapeline.pattern.notch import Notch

__all__ = ["Cut", "Mark", "Piece"]


@dataclass(frozen=True, slots=True)
class Cut:
    """How a piece is cut from the cloth."""

    quantity: int
    """How many come out of the cloth."""
    cloth: str = "shell"
    """`shell` for the body, `rib` for a band."""
    mirrored: bool = False
    """One of each pair is turned over: left and right."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A line inside a piece that is drawn, not cut: chest line, band fold."""

    name: str
    path: Path


@dataclass(frozen=True, slots=True)
class Piece:
    """Edges clockwise from corner to corner, in the piece's own axes, mm; right side of the cloth up."""

    name: str
    title: str
    edges: tuple[Edge, ...]
    grain: Line
    cut: Cut
    notches: tuple[Notch, ...] = ()
    marks: tuple[Mark, ...] = ()
    pointed: tuple[str, ...] = ()
    """Edges that are meant to meet the fold in a point: a v neck."""

    def edge(self, name: str) -> Edge:
        """The edge of that name; `KeyError` names the edges there are."""
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise KeyError(f"{self.name} has no edge {name}; it has {', '.join(e.name for e in self.edges)}")

    def marked(self, *notches: Notch, marks: tuple[Mark, ...] = ()) -> Piece:
        """The same piece with more notches and marks, for a part that is sewn to it."""
        return replace(self, notches=(*self.notches, *notches), marks=(*self.marks, *marks))

    def along(self, name: str) -> float:
        """Millimetres along the mark of that name, or else along the edge."""
        return next((mark.path.length for mark in self.marks if mark.name == name), None) or self.edge(name).length

    @property
    def seam_line(self) -> Path:
        """The whole outline, as sewn (folds included)."""
        return reduce(Path.joined, (edge.path for edge in self.edges))

    @property
    def on_fold(self) -> bool:
        """Whether an edge lies on the fold."""
        return any(edge.fold for edge in self.edges)

    def corner(self, first: str, second: str) -> tuple[Point, float]:
        """Where two neighbouring edges meet, and the angle inside the piece there, in radians.

        The edges run clockwise, so the inside lies to the right.
        """
        a, b = self.edge(first), self.edge(second)
        if self.edges[(self.edges.index(a) + 1) % len(self.edges)] is not b:
            a, b = b, a
        turn = a.path.arrives.turn_to(b.path.leaves)
        return b.path.start, math.pi + turn

    def notches_on(self, edge: str) -> tuple[Notch, ...]:
        """The notches of an edge, from its start."""
        return tuple(sorted((n for n in self.notches if n.edge == edge), key=lambda n: n.at_mm))
