"""Close-ups of a garment for truing: sewn edges laid along each other, and corners where a line crosses a seam."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate

from tapeline.geometry import Path, Point, Rigid
from tapeline.pattern import Garment, Join
from tapeline.truing import JoinAngle, SeamWalk
from tapeline.units import Unit

__all__ = ["CornerView", "Strip", "corner_view", "strip"]

ROUND_MM = 40.0
"""So much of each line is shown round a corner."""
SHOWN_MM, SHOWN_DEGREES = 0.05, 0.05
"""Less is shown as nothing."""
BAR = 300.0
"""Length of the longer edge on a strip's picture."""


@dataclass(frozen=True, slots=True)
class Strip:
    """Two sewn edges stretched straight and laid along each other, with the marks on them; in picture units."""

    name: str
    a: float
    b: float
    marks: tuple[tuple[float, float], ...]
    """Where each pair of marks lies, on the one and on the other."""
    words: str
    edges: tuple[str, ...]
    """Labels of the edges, to be lit in the drawing."""


def strip(walked: SeamWalk, unit: Unit) -> Strip:
    """The picture of one seam."""
    seam = walked.seam
    scale = BAR / max(walked.a_mm, walked.b_mm)
    a = list(accumulate(part[0] for part in walked.parts))[:-1]
    b = list(accumulate(part[1] for part in walked.parts))[:-1]
    difference = walked.a_mm - walked.b_mm
    longer = f"{abs(difference) / unit.mm:.2f} {unit.sign} {'longer' if difference > 0 else 'shorter'}"
    said = f"{longer}, {seam.reason or 'as meant'}" if abs(difference) >= SHOWN_MM else "equal"
    words = f"{_plain(seam.side_text(seam.a))} on {_plain(seam.side_text(seam.b))}: {said}"
    marks = tuple((x * scale, y * scale) for x, y in zip(a, b, strict=True))
    edges = tuple(str(ref) for ref in (*seam.a, *seam.b))
    return Strip(seam.name, walked.a_mm * scale, walked.b_mm * scale, marks, words, edges)


def _plain(side: str) -> str:
    """Edges as a maker says them: `back neckline and front neckline`."""
    return side.replace(" + ", " and ").replace(".", " ").replace("_", " ")


@dataclass(frozen=True, slots=True)
class CornerView:
    """A corner ten times as large as on a small drawing: both pieces laid together along their seam."""

    title: str
    box: str
    """The view box."""
    near: tuple[str, ...]
    """Paths of the one piece: its part of the line, and the seam."""
    far: tuple[str, ...]
    words: str
    edges: tuple[str, ...]


def corner_view(garment: Garment, join: Join, angle: JoinAngle) -> CornerView:
    """The picture of one join."""
    (one, line, seam), (other, other_line, other_seam) = join.corners
    near = _round_corner(garment, one, line, seam)
    far = _round_corner(garment, other, other_line, other_seam)
    lay = Rigid.laying(
        far.corner, far.seam.leaves, near.corner, near.seam.leaves, turned_over=near.seam_first == far.seam_first
    )
    flip = Rigid(1, 0, 0, -1, -near.corner.x, near.corner.y)
    bend = abs(angle.bend) * 180 / 3.141592653589793
    words = "runs straight on" if bend < 0.05 else f"bends by {bend:.1f} degrees"
    words += f", as is meant: {angle.meant}" if angle.meant else ""
    title = f"{join.line.replace('_', ' ')} over the {join.seam.replace('_', ' ')}"
    return CornerView(
        title,
        f"{-ROUND_MM} {-ROUND_MM} {2 * ROUND_MM} {2 * ROUND_MM}",
        tuple(path.moved(flip).svg(2) for path in (near.line, near.seam)),
        tuple(path.moved(lay).moved(flip).svg(2) for path in (far.line, far.seam)),
        words,
        (f"{one}.{line}", f"{other}.{other_line}"),
    )


@dataclass(frozen=True, slots=True)
class _Corner:
    corner: Point
    line: Path
    """Away from the corner."""
    seam: Path
    seam_first: bool
    """Whether the outline, clockwise, runs along the seam before it comes to the corner."""


def _round_corner(garment: Garment, piece_name: str, line: str, seam: str) -> _Corner:
    piece = garment.piece(piece_name)
    corner, _ = piece.corner(line, seam)
    along, across = piece.edge(line).path, piece.edge(seam).path
    # The edges run clockwise: one ends at the corner, the other begins there.
    seam_first = across.end.distance_to(corner) < across.start.distance_to(corner)
    away_line, away_seam = (along, across.reversed()) if seam_first else (along.reversed(), across)
    return _Corner(
        corner,
        away_line.part(0, min(ROUND_MM * 1.4, away_line.length)),
        away_seam.part(0, min(ROUND_MM * 1.4, away_seam.length)),
        seam_first,
    )
