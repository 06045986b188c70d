"""Walking seams: every edge laid along its partner, part by part between the notches."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate, pairwise

from tapeline.pattern import EdgeRef, Garment, NotchKind, Seam
from tapeline.problems import Problem, Severity

__all__ = ["SEAM_TOLERANCE_MM", "SeamWalk", "walk", "walk_problems"]

SEAM_TOLERANCE_MM = 0.1
"""Below a pencil line: two edges that differ by less are the same to the hand."""
AT_AN_END_MM = 1.0
"""A notch nearer than this to an end of a seam says nothing about its parts."""
ONE_MARK_MM = 1e-3


@dataclass(frozen=True, slots=True)
class SeamWalk:
    """One seam, measured."""

    seam: Seam
    a_mm: float
    b_mm: float
    parts: tuple[tuple[float, float], ...]
    """Lengths of both sides between one mark and the next; a single pair where the marks do not answer each other."""

    @property
    def off_mm(self) -> float:
        """How far the difference is from the ease that is meant."""
        return self.a_mm - self.b_mm - self.seam.ease.mm


def walk(garment: Garment) -> list[SeamWalk]:
    """All seams of a garment, walked."""
    return [_walk(garment, seam) for seam in garment.seams]


def _walk(garment: Garment, seam: Seam) -> SeamWalk:
    a, b = garment.run_length(seam.a), garment.run_length(seam.b)
    marks_a, marks_b = _marks(garment, seam.a), _marks(garment, seam.b)
    if len(marks_a) != len(marks_b):
        marks_a = marks_b = []
    parts = zip(pairwise([0.0, *marks_a, a]), pairwise([0.0, *marks_b, b]), strict=True)
    return SeamWalk(seam, a, b, tuple((a1 - a0, b1 - b0) for (a0, a1), (b0, b1) in parts))


def _marks(garment: Garment, side: tuple[EdgeRef, ...]) -> list[float]:
    """Lengths from the start of a run to its notches, and to where one edge ends and the next begins."""
    lengths = [garment.path(ref).length for ref in side]
    starts = [0.0, *accumulate(lengths)]
    marks = list(starts[1:-1])
    for ref, start, length in zip(side, starts, lengths, strict=False):
        notches = [n for n in garment.piece(ref.piece).notches_on(ref.edge) if n.kind is not NotchKind.PLEAT]
        marks += [start + (length - notch.at_mm if ref.backwards else notch.at_mm) for notch in notches]
    inside = sorted(m for m in marks if AT_AN_END_MM < m < starts[-1] - AT_AN_END_MM)
    # A notch where two edges meet is one mark with the place where they meet.
    return [m for k, m in enumerate(inside) if k == 0 or m - inside[k - 1] > ONE_MARK_MM]


def walk_problems(walks: list[SeamWalk]) -> Iterator[Problem]:
    """Seams whose edges do not fit as they are meant to."""
    for walked in walks:
        seam = walked.seam
        sides = f"{seam.side_text(seam.a)} and {seam.side_text(seam.b)}"
        if abs(walked.off_mm) > SEAM_TOLERANCE_MM:
            yield Problem(
                "seam-mismatch",
                Severity.ERROR,
                f"the seam {seam.name} does not fit: {sides} differ by {walked.a_mm - walked.b_mm:.1f} mm, "
                f"meant are {seam.ease.mm:.1f} mm",
                f"seam {seam.name}",
                "a size set by hand may have moved one of them: take it out of garment.sizes",
            )
        for number, (a, b) in enumerate(walked.parts, 1):
            against = (a - b) * (-1 if seam.ease.mm < 0 else 1)
            if against < -SEAM_TOLERANCE_MM:
                yield Problem(
                    "notch-mismatch",
                    Severity.ERROR,
                    f"part {number} of the seam {seam.name} is {abs(a - b):.1f} mm off: "
                    f"the notches of {sides} do not meet",
                    f"seam {seam.name}",
                    "sew without that notch, and tell us of the docket",
                )
