"""Rolling a seam: the one edge laid on the other at a point, and rolled along it as a maker walks paper on paper.

The pieces lie on either side of the seam, as they do when it is sewn and opened out, so that at both ends it shows
whether the neighbouring edges run on; or right sides together, as they are pinned.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from functools import reduce
from itertools import accumulate

from tapeline.geometry import Path, Rigid
from tapeline.pattern import EdgeRef, Garment
from tapeline.truing.walk import SeamWalk

__all__ = ["LaidPiece", "Placement", "Rolled", "Run", "roll"]

SAME_MM = 1e-6
"""Two lengths along a seam that differ by less are one."""


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece of a run, and the move that brings it to its neighbours."""

    ref: EdgeRef
    move: Rigid
    start_mm: float
    """How far along the run its edge begins."""


@dataclass(frozen=True, slots=True)
class Run:
    """One side of a seam: its edges end to end, each running on from the one before, as one line."""

    path: Path
    pieces: tuple[LaidPiece, ...]

    @property
    def inside_left(self) -> bool:
        """Whether the pieces lie to the left of the line as it is walked; edges run clockwise, so mostly not."""
        return self.pieces[0].ref.backwards


@dataclass(frozen=True, slots=True)
class Placement:
    """The rolling side so laid that a length along it touches a length along the lying side, tangent on tangent."""

    rolling_mm: float
    lying_mm: float
    move: Rigid
    mark: int | None
    """Number of the pair of marks that meets here, from 1; 0 at the start, one more than there are marks at the end."""


@dataclass(frozen=True, slots=True)
class Rolled:
    """A seam with the side that lies still (`b`), the side that rolls along it (`a`), and where it comes to lie."""

    lying: Run
    rolling: Run
    placements: tuple[Placement, ...]


def roll(garment: Garment, walked: SeamWalk, count: int = 25, *, together: bool = False) -> Rolled:
    """Roll side `a` of a seam along side `b`: at `count` even places, and at every pair of marks.

    Between two pairs of marks the sides are walked in even shares: by equal lengths where both are of one length, and
    with the ease spread evenly where one is longer. `together` lays the pieces right sides together, the one on the
    other, instead of on either side of the seam: hollow edges, as those under the arm, lie on each other then.
    """
    lying, rolling = _run(garment, walked.seam.b), _run(garment, walked.seam.a)
    ends_a = [0.0, *accumulate(part[0] for part in walked.parts)]
    ends_b = [0.0, *accumulate(part[1] for part in walked.parts)]
    even = [ends_b[-1] * step / (count - 1) for step in range(count)]
    # A place next to a mark gives way to the mark, or the two would be one step apart by a hair.
    near = ends_b[-1] / (count - 1) / 4
    between = [length for length in even if all(abs(length - mark) > near for mark in ends_b)]
    over = (lying.inside_left == rolling.inside_left) is not together

    def placed(length: float) -> Placement:
        part = min(max(bisect_left(ends_b, length - SAME_MM), 1), len(ends_b) - 1)
        share = (length - ends_b[part - 1]) / (ends_b[part] - ends_b[part - 1])
        along = ends_a[part - 1] + share * (ends_a[part] - ends_a[part - 1])
        move = Rigid.laying(
            rolling.path.at(along),
            rolling.path.direction_at(along),
            lying.path.at(length),
            lying.path.direction_at(length),
            turned_over=over,
        )
        mark = next((number for number, end in enumerate(ends_b) if abs(length - end) < SAME_MM), None)
        return Placement(along, length, move, mark)

    return Rolled(lying, rolling, tuple(placed(length) for length in sorted({*between, *ends_b})))


def _run(garment: Garment, side: tuple[EdgeRef, ...]) -> Run:
    pieces = [LaidPiece(side[0], Rigid(), 0.0)]
    paths = [garment.path(side[0])]
    for ref in side[1:]:
        path, before = garment.path(ref), paths[-1]
        over = ref.backwards != side[0].backwards
        move = Rigid.laying(path.start, path.leaves, before.end, before.arrives, turned_over=over)
        pieces.append(LaidPiece(ref, move, pieces[-1].start_mm + before.length))
        paths.append(path.moved(move))
    return Run(reduce(Path.joined, paths), tuple(pieces))
