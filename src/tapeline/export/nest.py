"""A nest: the sizes of each piece lying on each other at a common point, each with its own line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from tapeline.export.drawing import Drawing, Stroke, draw
from tapeline.export.labels import Label, labels
from tapeline.export.line_kind import LineKind
from tapeline.export.size_line import MOST_SIZES, SizeLine, size_lines
from tapeline.export.size_tags import size_tags
from tapeline.finish import Finished, FinishedPiece, Title, words
from tapeline.geometry import Line, Path, Point, Rigid, Vector, area
from tapeline.geometry.nested import covered
from tapeline.grade import Meet, common_point
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Nest", "NestedPiece", "NestedSize", "nest"]

CROSS_MM = 5.0
"""From the middle of the mark where sizes meet to the ends of its arms."""
CORNER = 0.2
"""Radians; where a line turns more at once it has a corner."""
CORNER_MM = 3.0
MARKED = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Shares of a mark inside a piece near which no size's name stands."""


@dataclass(frozen=True, slots=True)
class NestedSize:
    """One size of one piece, where it lies in the nest."""

    strokes: tuple[Stroke, ...]
    """Cut line, folds, seam lines, marks, notches; the grain is shared."""
    corners: tuple[Path, ...]
    """Both ends of the cut line at each corner, drawn unbroken: no corner falls into a gap of the dashes (ISO 128)."""
    tags: tuple[Label, ...]
    """The size's name beside its cut line."""


@dataclass(frozen=True, slots=True)
class NestedPiece:
    """One piece in all sizes that have it; the point where they meet is the origin."""

    whole: FinishedPiece
    """The smallest size, with what all sizes cover for its cut line, for whoever looks for a place for it."""
    meets: str
    sizes: Mapping[int, NestedSize]
    """By the number of the size, from 0."""
    shared: Drawing
    """Grain, brackets, words, the mark where sizes meet."""


@dataclass(frozen=True, slots=True)
class Nest:
    """All pieces of a run of sizes."""

    title: Title
    """Of the whole run: its wearer reads `sizes 84 to 100`."""
    names: tuple[str, ...]
    """Of the sizes, short: `88`."""
    called: tuple[str, ...]
    """The same as on a single print: `Size 88`."""
    lines: tuple[SizeLine, ...]
    pieces: tuple[NestedPiece, ...]


def nest(sizes: Sequence[Finished], names: Sequence[str], whom: str, meet: Meet = Meet.CHEST) -> Nest:
    """Lay the sizes of every piece on each other.

    Args:
        sizes: Garments from size to size.
        names: What the sizes are called on the paper.
        whom: Whom the nest is for, in words: `sizes 84 to 100`.
        meet: At which height they meet.

    Raises:
        InputError: `run-too-long` for more sizes than there are kinds of lines.
    """
    if len(sizes) > MOST_SIZES:
        says = f"{len(sizes)} sizes cannot be told apart in one nest: there are {MOST_SIZES} kinds of lines"
        hint = "make two nests of fewer sizes, or an exchange file, which takes any number. Nothing was written."
        raise InputError(Problem("run-too-long", Severity.ERROR, says, hint=hint))
    title = replace(sizes[0].title, wearer=whom)
    order = dict.fromkeys(piece.piece.name for finished in sizes for piece in finished.pieces)
    pieces = tuple(_piece(name, sizes, names, title, meet) for name in order)
    called = tuple(finished.title.wearer for finished in sizes)
    return Nest(title, tuple(names), called, size_lines(len(sizes)), pieces)


def _piece(name: str, sizes: Sequence[Finished], names: Sequence[str], title: Title, meet: Meet) -> NestedPiece:
    having = [number for number, finished in enumerate(sizes) if any(p.piece.name == name for p in finished.pieces)]
    common = common_point([sizes[number].garment for number in having], name, meet)
    moved = {}
    for number, move in zip(having, common.moves(), strict=True):
        found = next(piece for piece in sizes[number].pieces if piece.piece.name == name)
        moved[number] = _moved(found, move)
    drawn = {number: draw(piece, words=False) for number, piece in moved.items()}
    strokes = {
        number: tuple(stroke for stroke in drawing.strokes if stroke.kind is not LineKind.GRAIN)
        for number, drawing in drawn.items()
    }
    smallest = min(having, key=lambda number: abs(area(moved[number].cut_line)))
    crossing = [line.start for piece in moved.values() for tick in piece.ticks for line in tick.lines]
    crossing += [mark.path.at(mark.path.length * share) for mark in moved[smallest].piece.marks for share in MARKED]
    tags = size_tags({number: piece.cut_line for number, piece in moved.items()}, names, crossing)
    cross = [Stroke(LineKind.NOTCH, Path((arm,)), "sizes meet") for arm in _cross()]
    grain = [s for s in drawn[smallest].strokes if s.kind is LineKind.GRAIN]
    heads = drawn[smallest].heads
    small = moved[smallest]
    whom = title.wearer if len(having) == len(sizes) else ", ".join(names[number] for number in having)
    said = words(small.piece, replace(title, wearer=whom))
    told = replace(small, words=(*said[:3], f"sizes meet at {common.says}", *said[3:]))
    shaft = next(s.path.segments[0] for s in grain if s.name == "grain")
    lines = [stroke.path for own in strokes.values() for stroke in own] + [stroke.path for stroke in (*grain, *cross)]
    lines += [Path.through(*tag.outline()) for own in tags.values() for tag in own]
    written = labels(told, Line(shaft.start, shaft.end), lines)
    whole = replace(told, cut_line=covered([piece.cut_line for piece in moved.values()]))
    shared = Drawing(whole, (*grain, *cross), heads, written)
    return NestedPiece(
        whole,
        common.says,
        {number: NestedSize(strokes[number], _corners(moved[number].cut_line), tags[number]) for number in having},
        shared,
    )


def _corners(outline: Path) -> tuple[Path, ...]:
    """A short stretch through each corner of a closed line."""
    found = []
    whole, along = outline.length, 0.0
    for before, after in zip((outline.segments[-1], *outline.segments), outline.segments, strict=False):
        if abs(before.direction(1).turn_to(after.direction(0))) > CORNER:
            reach = min(CORNER_MM, whole / 4)
            if along < reach:
                found += [outline.part(whole - reach, whole), outline.part(0.0, reach)]
            else:
                found.append(outline.part(along - reach, min(along + reach, whole)))
        along += after.length
    return tuple(found)


def _cross() -> tuple[Line, Line]:
    return (
        Line(Point(-CROSS_MM, 0.0), Point(CROSS_MM, 0.0)),
        Line(Point(0.0, -CROSS_MM), Point(0.0, CROSS_MM)),
    )


def _moved(finished: FinishedPiece, by: Vector) -> FinishedPiece:
    """The piece, slid without turning."""
    move, piece = Rigid.shift(by), finished.piece
    slid = replace(
        piece,
        edges=tuple(replace(edge, path=edge.path.moved(move)) for edge in piece.edges),
        grain=piece.grain.moved(move),
        marks=tuple(replace(mark, path=mark.path.moved(move)) for mark in piece.marks),
    )
    ticks = tuple(replace(tick, lines=tuple(line.moved(move) for line in tick.lines)) for tick in finished.ticks)
    return replace(finished, piece=slid, cut_line=finished.cut_line.moved(move), ticks=ticks)
