"""The nouns of what is received: a `ReceivedPiece` as another program cut it, and a `Received` file of them."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import Line, Path, Point, Rigid, Vector, area, extent
from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["NotUnderstood", "Received", "ReceivedNotch", "ReceivedPiece", "whole_outline"]


@dataclass(frozen=True, slots=True)
class ReceivedNotch:
    """A notch: where it is, and of which kind the sender made it (`V or slit`, `T`, `castle`, `check`, `U`)."""

    at: Point
    kind: str


@dataclass(frozen=True, slots=True)
class ReceivedPiece:
    """One piece in one size as a file holds it; millimetres, y up, curves as chords within 0.01 mm.

    Nothing is known of how it was drafted: there are no seams with names, no steps and no reasons.
    """

    name: str
    size: str
    """Empty where the file says none."""
    block: str
    """Where it stands in the file."""
    outline: Path
    """The cut line, closed; on the fold it is half a piece."""
    quantity: int = 1
    """How many are cut of it; `mirrored` says whether half of them are turned over."""
    mirrored: bool = False
    material: str = ""
    sew_lines: tuple[Path, ...] = ()
    grain: Line | None = None
    fold: Line | None = None
    """Lies on the outline; the cloth is folded there."""
    notches: tuple[ReceivedNotch, ...] = ()
    corners: tuple[Point, ...] = ()
    """Turn points: where lines have corners."""
    inside: tuple[Path, ...] = ()
    """Lines drawn on the piece and not cut."""
    cutouts: tuple[Path, ...] = ()
    """Closed lines cut out of its middle."""
    drills: tuple[Point, ...] = ()
    stripes: tuple[Path, ...] = ()
    """Lines that lie on a stripe of the cloth."""
    checks: tuple[Path, ...] = ()
    """Lines that lie on a line of a check (plaid)."""
    texts: tuple[str, ...] = ()
    """All that is written on it, but for its labels."""

    @property
    def label(self) -> str:
        """How a person calls it: `Front, size 38`."""
        return f"{self.name}, size {self.size}" if self.size else self.name

    @property
    def area_mm2(self) -> float:
        """Inside the outline, cut-outs taken off, as it lies: half a piece where it has a fold."""
        return abs(area(self.outline)) - sum(abs(area(hole)) for hole in self.cutouts)

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height as it lies in the file."""
        return extent([self.outline], Vector(1, 0)), extent([self.outline], Vector(0, 1))

    @property
    def whole(self) -> Path:
        """The outline unfolded: what is cut of cloth that lies open."""
        return self.outline if self.fold is None else whole_outline(self.outline, self.fold)


def whole_outline(half: Path, fold: Line) -> Path:
    """An outline and its mirror image about a fold that it lies on, as one.

    >>> half = Path.through(Point(0, 0), Point(4, 0), Point(4, 10), Point(0, 10), Point(0, 0))
    >>> [(p.x, p.y) for p in whole_outline(half, Line(Point(0, 10), Point(0, 0))).knots]
    [(0, 0), (4, 0), (4, 10), (0, 10), (-4.0, 10.0), (-4.0, 0.0), (0.0, 0.0)]
    """
    way = fold.direction(0)
    over = Rigid.over(fold.start, way)
    segments = list(half.segments)
    lies = [max(abs(way.cross(p - fold.start)) for p in segment.control_points) <= ON_FOLD_MM for segment in segments]
    if not any(lies) or all(lies):
        return half
    # Begin behind the fold, so that what is not on it is one run.
    first = next(n for n in range(len(lies)) if lies[n - 1] and not lies[n])
    order = [*range(first, len(lies)), *range(first)]
    kept = [segments[n] for n in order if not lies[n]]
    path = Path(tuple(kept))
    back = path.moved(over).reversed()
    joined = [path]
    if path.end.distance_to(back.start) > 0:
        joined.append(Path((Line(path.end, back.start),)))
    joined.append(back)
    if back.end.distance_to(path.start) > 0:
        joined.append(Path((Line(back.end, path.start),)))
    return Path(tuple(segment for part in joined for segment in part.segments))


ON_FOLD_MM = 0.1
"""A side this near to the fold lies on it."""


@dataclass(frozen=True, slots=True)
class NotUnderstood:
    """Things of a file that were left out: what they are, on which layer, how many, why, and where the first stands."""

    what: str
    layer: str
    count: int
    why: str
    where: str

    def __str__(self) -> str:
        return f"{self.count} {self.what} on layer {self.layer}: {self.why} (first {self.where})"


@dataclass(frozen=True, slots=True)
class Received:
    """The pieces of a file, what else it says of itself, and everything that was not understood."""

    name: str
    pieces: tuple[ReceivedPiece, ...]
    unit: Unit
    """Centimetre for a metric file, which counts millimetres."""
    style: str
    author: str
    not_understood: tuple[NotUnderstood, ...]
    problems: tuple[Problem, ...]

    @property
    def holds(self) -> bool:
        """Whether nothing is wrong that would spoil cloth."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)

    @property
    def sizes(self) -> tuple[str, ...]:
        """The sizes that pieces say, in the order of the file."""
        return tuple(dict.fromkeys(piece.size for piece in self.pieces if piece.size))
