"""Finished pieces as they are laid on one cloth: grain along it, larger by what it shrinks, halves unfolded or not."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from tapeline.finish import Finished, FinishedPiece
from tapeline.geometry import (
    Outline,
    Path,
    Point,
    Rigid,
    Vector,
    bounds,
    common_ground,
    ground,
    outline_of,
    placed,
    united,
)
from tapeline.lay.cloth import LayCloth, Spread
from tapeline.lay.piece import LayLine, LayPiece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["cloths_of", "lay_pieces", "wanted_garments"]

LEVEL = 1e-6
"""Radians: a fold that leans more does not run along the grain."""
FINE_MM = 0.05
"""Chords of the lines inside a piece."""
ALIKE = 1e-4
"""Share of its ground by which a piece may differ from itself turned over."""
MOST_GARMENTS = 1000
"""Of one docket, as in a docket's own table."""
ON_THE_FOLD = frozenset({Spread.FOLDED, Spread.TUBULAR})


def cloths_of(garments: Iterable[Finished]) -> tuple[str, ...]:
    """The cloths that garments are cut from, in the order in which they come up: `shell`, `rib`."""
    return tuple(dict.fromkeys(f.piece.cut.cloth for finished in garments for f in finished.pieces))


def lay_pieces(
    finished: Finished,
    cloth: LayCloth,
    garment: str = "",
    *,
    garments: int = 1,
    blocks: Mapping[str, str] | None = None,
    matches: Mapping[str, Point] | None = None,
) -> tuple[LayPiece, ...]:
    """The pieces of a garment that are cut from one cloth.

    Args:
        finished: The garment with its cut lines.
        cloth: Whose name the pieces ask for.
        garment: What the plan calls it; the wearer's name unless given.
        garments: How many alike.
        blocks: By piece, the word of the block in which it stays.
        matches: By piece, the place in its own drawing that has to lie on a dominant line.

    Raises:
        InputError: `lay-fold-off-grain` when cloth lies folded and a half piece's fold does not run along its grain;
            `lay-zero` when no garment is asked for, `lay-many` for more than 1000.
    """
    wanted_garments(garments)
    name = garment or finished.title.wearer or finished.garment.style
    own = [one for one in finished.pieces if one.piece.cut.cloth == cloth.name]
    problems = [p for one in own if cloth.spread in ON_THE_FOLD for p in _contradictions(one)]
    if problems:
        raise InputError(problems)
    return tuple(
        replace(
            _piece(one, cloth, garments, (matches or {}).get(one.piece.name)),
            garment=name,
            garments=garments,
            block=(blocks or {}).get(one.piece.name, ""),
        )
        for one in own
    )


def wanted_garments(garments: int) -> None:
    """Refuses a number of garments that is none, or that no plan is found for in a day.

    >>> wanted_garments(2)

    Raises:
        InputError: `lay-zero` when no garment is asked for, `lay-many` for more than `MOST_GARMENTS`.
    """
    if not 1 <= garments <= MOST_GARMENTS:
        says = f"{garments} garments are asked for; a lay has at least one and at most {MOST_GARMENTS} of a docket"
        hint = "lay fewer, and repeat the lay. Nothing was laid" if garments > 1 else "Nothing was laid"
        code = "lay-many" if garments > 1 else "lay-zero"
        raise InputError(Problem(code, Severity.ERROR, says, "garments", hint))


def _piece(one: FinishedPiece, cloth: LayCloth, garments: int, match: Point | None) -> LayPiece:
    piece = one.piece
    fold = next((edge.path for edge in piece.edges if edge.fold), None)
    grain = piece.grain.end - piece.grain.start
    move = _onto_the_fold(fold, grain, one.cut_line)
    outline = placed(outline_of(one.cut_line), move)
    # Two on the fold are one whole one on two layers: it may then lie anywhere, where it fits.
    even = piece.cut.quantity * garments % 2 == 0
    fits = 2 * bounds(outline)[3] / (1 - cloth.shrink_width / 100) <= cloth.strip_mm
    halved = fold is not None and cloth.spread in ON_THE_FOLD and not (even and fits)
    lines = [LayLine(line.kind, tuple(move.point(p) for p in line.points)) for line in _lines(one, halved)]
    if fold is not None and not halved:
        # Both halves: the second is the first turned over about the fold, which lies along y = 0.
        over = Rigid(d=-1.0)
        outline = _whole(outline, placed(outline, over))
        lines += [
            LayLine(line.kind, tuple(over.point(p) for p in line.points))
            for line in lines
            if line.kind not in {"grain", "fold"}
        ]
    onto = _onto_the_grain(move.vector(grain), outline, halved)
    onto = onto.then(Rigid(a=1 / (1 - cloth.shrink_length / 100), d=1 / (1 - cloth.shrink_width / 100)))
    outline = placed(outline, onto)
    lines = [LayLine(line.kind, tuple(onto.point(p) for p in line.points)) for line in lines]
    move = move.then(onto)
    quantity = piece.cut.quantity
    turned_over = quantity // 2 if piece.cut.mirrored else 0
    return LayPiece(
        name=piece.name,
        garment="",
        outline=outline,
        upright=quantity - turned_over,
        turned_over=turned_over,
        cloth=cloth.name,
        title=piece.title,
        on_fold=halved,
        alike_over=not halved and _alike_over(outline),
        match=None if match is None else move.point(match),
        lines=tuple(lines),
        words=one.words,
    )


def _onto_the_fold(fold: Path | None, grain: Vector, cut: Path) -> Rigid:
    """The fold, where there is one, on y = 0, with the half above it."""
    if fold is None:
        return Rigid()
    way = fold.end - fold.start
    way = way if way.dot(grain) > 0 else way * -1
    onto = Rigid.laying(fold.start, way, Point(0, 0), Vector(1, 0))
    box = bounds(onto.point(p) for p in cut.flattened(FINE_MM))
    if box[3] >= -box[1]:
        return onto
    return onto.then(Rigid(d=-1.0))  # either half may be drawn: the other is the same turned over


def _onto_the_grain(grain: Vector, outline: Outline, halved: bool) -> Rigid:  # noqa: FBT001 - of this file only
    """The grain along +x, and the piece near the origin; one on the fold stays on it."""
    turn = Rigid() if halved else Rigid.turn(grain.turn_to(Vector(1, 0)))
    box = bounds(placed(outline, turn))
    return turn.then(Rigid.shift(Vector(-box[0], 0 if halved or abs(box[1] + box[3]) < ALIKE else -box[1])))


def _whole(half: Outline, other: Outline) -> Outline:
    """Two halves joined along the fold; a hair of rounding between them is bridged."""
    lowered = tuple(Point(p.x, 0.0 if abs(p.y) < 1e-6 else p.y) for p in half)
    raised = tuple(Point(p.x, 0.0 if abs(p.y) < 1e-6 else p.y) for p in other)
    parts = united([lowered, raised])
    return max(parts, key=ground)


def _alike_over(outline: Outline) -> bool:
    over = placed(outline, Rigid(d=-1.0))
    low, high = bounds(outline)[1], bounds(over)[1]
    shared = common_ground([outline, placed(over, Rigid.shift(Vector(0, low - high)))])
    return sum(area for _, _, area in shared) > ground(outline) * (1 - ALIKE)


def _lines(one: FinishedPiece, halved: bool) -> Iterator[LayLine]:  # noqa: FBT001 - of this file only
    piece = one.piece
    yield LayLine("grain", (piece.grain.start, piece.grain.end))
    for tick in one.ticks:
        for line in tick.lines:
            yield LayLine("notch", (line.start, line.end))
    for edge in piece.edges:
        if not edge.fold:
            yield LayLine("seam", tuple(edge.path.flattened(FINE_MM)))
        elif halved:
            yield LayLine("fold", (edge.path.start, edge.path.end))
    for mark in piece.marks:
        yield LayLine("mark", tuple(mark.path.flattened(FINE_MM)))


def _contradictions(one: FinishedPiece) -> Iterator[Problem]:
    grain = one.piece.grain.end - one.piece.grain.start
    for edge in one.piece.edges:
        if edge.fold:
            lean = Vector.turn_to(grain, edge.path.end - edge.path.start)
            if abs(math.sin(lean)) > LEVEL:
                yield Problem(
                    "lay-fold-off-grain",
                    Severity.ERROR,
                    f"{one.piece.name} lies on the fold with {edge.name}, {abs(math.degrees(lean)):.1f} degrees off "
                    "its grain: on folded cloth the fold runs along the grain",
                    f"{one.piece.name}.{edge.name}",
                    "spread the cloth open; then the piece is cut whole. Nothing was laid",
                )
