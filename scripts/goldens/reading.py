"""The drawing in a golden text: pieces and their edges, as they were written down to a hundredth of a millimetre."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import reduce

from tapeline.geometry import Cubic, Line, Path, Point, Segment

__all__ = ["DrawnPiece", "pieces_in"]

_PIECE = re.compile(r"PIECE (\w+): (.*), cut \d+ of ")
_EDGE = re.compile(r"(\w+), \w+, -?[\d.]+ long")
_POINT = r"(-?[\d.]+), (-?[\d.]+)"
_FROM = re.compile(rf"    from {_POINT}$")
_TO = re.compile(rf"    to {_POINT}(?: by {_POINT} and {_POINT})?$")


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """One piece, edge by edge."""

    name: str
    title: str
    edges: tuple[tuple[str, Path], ...]

    @property
    def outline(self) -> Path:
        """The whole seam line."""
        return reduce(Path.joined, (path for _, path in self.edges))


def pieces_in(text: str) -> dict[str, DrawnPiece]:
    r"""Every piece of a golden text by its name; empty for a text without drawings.

    >>> text = "PIECE bag: Pocket, cut 1 of shell\nside, seam, 5.00 long\n    from 0.00, 0.00\n    to 3.00, 4.00\n"
    >>> pieces_in(text)["bag"].outline.length
    5.0
    """
    found: dict[str, DrawnPiece] = {}
    for block in text.split("\n\n"):
        lines = block.strip("\n").splitlines()
        head = _PIECE.match(lines[0]) if lines else None
        if head:
            found[head[1]] = DrawnPiece(head[1], head[2], tuple(_edges(lines[1:])))
    return found


def _edges(lines: list[str]) -> list[tuple[str, Path]]:
    edges: list[tuple[str, list[Segment]]] = []
    here = Point(0, 0)
    for line in lines:
        if edge := _EDGE.match(line):
            edges.append((edge[1], []))
        elif start := _FROM.match(line):
            here = Point(float(start[1]), float(start[2]))
        elif to := _TO.match(line):
            numbers = [float(number) for number in to.groups() if number]
            end, *handles = (Point(*pair) for pair in zip(numbers[::2], numbers[1::2], strict=True))
            edges[-1][1].append(Cubic(here, handles[0], handles[1], end) if handles else Line(here, end))
            here = end
    return [(name, Path(tuple(segments))) for name, segments in edges if segments]
