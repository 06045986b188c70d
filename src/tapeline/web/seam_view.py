"""A seam on the page: its two edges laid on each other in their own curves, and walked from start to end."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate
from typing import Any

from tapeline.geometry import Path, Point, Rigid, Vector
from tapeline.pattern import Garment, NotchKind
from tapeline.problems import InputError, Problem, Severity
from tapeline.truing import Rolled, Run, SeamWalk, roll
from tapeline.units import Unit
from tapeline.web.view import View

__all__ = ["SeamView", "seam_view"]

MARGIN = 45.0
"""So much of the pieces is shown round the seam, mm."""
TICK, APART = 7.0, 4.0
"""Length of a notch's tick, and how far the two of a double one are apart, mm."""
LETTER, LETTERS = 11.0, 27.0
"""Height of a notch's number, mm; at least this part of the picture's width."""


@dataclass(frozen=True, slots=True)
class Side:
    """One side of the seam, as picture paths."""

    name: str
    edge: str
    outlines: tuple[str, ...]
    notches: str
    numbers: tuple[tuple[int, float, float], ...]
    """Number of the pair, and where it stands."""


@dataclass(frozen=True, slots=True)
class SeamView:
    """Everything the page shows of one seam; the rolling side is in the axes that each place's move starts from."""

    name: str
    box: str
    letter: float
    """Height of the numbers, mm: a long seam is shown smaller, and its numbers stay legible."""
    lying: Side
    rolling: Side
    words: str
    together: bool
    """Whether the pieces lie right sides together, not on either side of the seam."""
    places: tuple[dict[str, Any], ...]
    """Each with `move` (six numbers of an SVG matrix), `touch` (x, y), `mark` (or None) and `words`."""


def seam_view(view: View, name: str, *, together: bool = False) -> SeamView:
    """Lay out one seam of the garment; `InputError` when there is no such seam or nothing is drafted."""
    walks = view.drafted.truing.walks if view.drafted else ()
    walked = next((walked for walked in walks if walked.seam.name == name), None)
    if walked is None or view.drafted is None:
        hint = f"the seams are {', '.join(each.seam.name for each in walks)}" if walks else "nothing is drafted yet"
        raise InputError(Problem("not-explained", Severity.ERROR, "there is no such seam", hint=hint))
    garment, rolled = view.drafted.garment, roll(view.drafted.garment, walked, together=together)
    paper = _on_paper(rolled.lying)
    letter = max(LETTER, (rolled.lying.path.start.distance_to(rolled.lying.path.end) + 2 * MARGIN) / LETTERS)
    marks_a = list(accumulate(part[0] for part in walked.parts))[:-1]
    marks_b = list(accumulate(part[1] for part in walked.parts))[:-1]
    return SeamView(
        name,
        _box(rolled.lying.path.moved(paper)),
        round(letter, 1),
        _side(garment, rolled.lying, marks_b, paper, letter),
        _side(garment, rolled.rolling, marks_a, Rigid(), letter),
        _words(walked, view.unit),
        together,
        tuple(_places(rolled, paper, walked, view.unit)),
    )


def _on_paper(lying: Run) -> Rigid:
    """The lying side from left to right with its pieces below, y down."""
    chord = lying.path.end - lying.path.start
    return Rigid.laying(lying.path.start, chord, Point(0, 0), Vector(1, 0), turned_over=not lying.inside_left)


def _box(path: Path) -> str:
    points = path.sampled(1.0)
    (left, top), (right, low) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return f"{left - MARGIN:.1f} {top - MARGIN:.1f} {right - left + 2 * MARGIN:.1f} {low - top + 2 * MARGIN:.1f}"


def _side(garment: Garment, run: Run, marks: list[float], move: Rigid, letter: float) -> Side:
    def inward(length: float, far: float) -> Point:
        direction = run.path.direction_at(length)
        return run.path.at(length) + far * (direction.left if run.inside_left else direction.right)

    ticks: list[str] = []
    for laid in run.pieces:
        piece = garment.piece(laid.ref.piece)
        whole = piece.edge(laid.ref.edge).length
        for notch in piece.notches_on(laid.ref.edge):
            at = laid.start_mm + (whole - notch.at_mm if laid.ref.backwards else notch.at_mm)
            offs = (-APART / 2, APART / 2) if notch.kind is NotchKind.DOUBLE else (0.0,)
            ticks += [Path.through(inward(at + off, 0), inward(at + off, TICK)).moved(move).svg(2) for off in offs]
    numbers = []
    for number, mark in enumerate(marks, 1):
        point = move.point(inward(mark, TICK + 0.75 * letter))
        numbers.append((number, round(point.x, 2), round(point.y, 2)))
    return Side(
        " and ".join(f"{garment.piece(laid.ref.piece).title} {_plain(laid.ref.edge)}" for laid in run.pieces),
        run.path.moved(move).svg(2),
        tuple(garment.piece(laid.ref.piece).seam_line.moved(laid.move).moved(move).svg(2) for laid in run.pieces),
        " ".join(ticks),
        tuple(numbers),
    )


def _plain(name: str) -> str:
    return name.replace("_", " ")


def _long(mm: float, unit: Unit) -> str:
    """A length to a millimetre, or to a hundredth of an inch."""
    return f"{mm / unit.mm:.{2 if unit is Unit.INCH else 1}f}"


def _words(walked: SeamWalk, unit: Unit) -> str:
    difference = walked.a_mm - walked.b_mm
    lengths = f"{_long(walked.a_mm, unit)} on {_long(walked.b_mm, unit)} {unit.sign}"
    if abs(difference) < 0.05:
        return f"{lengths}: equal, walked by equal lengths"
    longer = "longer" if difference > 0 else "shorter"
    how = "eased in" if difference > 0 else "stretched"
    return f"{lengths}: {abs(difference) / unit.mm:.2f} {unit.sign} {longer}, {how} evenly between the marks"


def _places(rolled: Rolled, paper: Rigid, walked: SeamWalk, unit: Unit) -> list[dict[str, Any]]:
    def said(mark: int | None) -> str:
        if mark is None:
            return "Between the marks"
        if mark in (0, len(walked.parts)):
            return "At the end" if mark else "At the start"
        return f"At mark {mark}"

    made = []
    for place in rolled.placements:
        move = place.move.then(paper)
        touch = paper.point(rolled.lying.path.at(place.lying_mm))
        lengths = f"{_long(place.rolling_mm, unit)} on {_long(place.lying_mm, unit)} {unit.sign}"
        made.append(
            {
                "move": [round(n, 6) for n in (move.a, move.b, move.c, move.d, move.e, move.f)],
                "touch": [round(touch.x, 3), round(touch.y, 3)],
                "mark": place.mark,
                "words": f"{said(place.mark)}: walked {lengths}",
            }
        )
    return made
