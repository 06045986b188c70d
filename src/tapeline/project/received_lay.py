"""Pieces of other programs on the table: what is cut from each cloth, in every size that the file holds."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from tapeline.geometry import Line, Outline, Point, Rigid, Vector, bounds, outline_of, placed
from tapeline.lay import LayCloth, LayLine, LayPiece, Spread, wanted_garments
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.project.lay import LayTask
from tapeline.received import Received, ReceivedPiece

__all__ = ["received_tasks"]

LEVEL = 1e-3
"""Radians: a fold that leans more does not run along the grain; files round their places."""
ROUNDED_MM = 0.5
"""A half may lie so far over its fold: as far as a fold may lie beside the outline when it is read."""
NOTCH_MM = 5.0
USUAL = "shell"
"""The cloth of pieces that do not say theirs."""
_Lines = list[tuple[str, Sequence[Point]]]


def received_tasks(
    files: Sequence[Received],
    *,
    garments: int | None = None,
    cloths: Sequence[str] = (),
    changed: Callable[[LayCloth], LayCloth] | None = None,
) -> tuple[LayTask, ...]:
    """A lay for each cloth that received pieces are cut from: a garment of every size that they say.

    Args:
        files: What was read.
        garments: How many of each size; one unless given.
        cloths: Only these; all unless given.
        changed: What to change of a cloth, whose width no file says.

    Raises:
        InputError: `lay-received` for pieces that cannot be laid: an outline that crosses itself, no grain line, on
            folded cloth a fold off the grain or in the middle of its piece; `lay-cloth-unknown`;
            `lay-zero`, `lay-many` for a number of garments.
    """
    count = 1 if garments is None else garments
    wanted_garments(count)
    found = [(_garment(file, piece, files), piece) for file in files for piece in file.pieces]
    known = tuple(dict.fromkeys(piece.material or USUAL for _, piece in found))
    unknown = [name for name in cloths if name not in known]
    problems = [
        Problem("lay-cloth-unknown", Severity.ERROR, f"no piece is cut from a cloth called {name}", f"cloth {name}")
        for name in unknown
    ]
    problems += [
        Problem("lay-received", Severity.ERROR, f"{file.name} was not read whole", file.name, "mend it first")
        for file in files
        if not file.holds
    ]
    if problems:
        hint = "" if not unknown else f"{closest(unknown[0], known)}. Nothing was laid"
        raise InputError([replace(problem, hint=problem.hint or hint) for problem in problems])
    tasks = []
    for name in dict.fromkeys(cloths or known):
        cloth = LayCloth(name=name)
        cloth = changed(cloth) if changed is not None else cloth
        says = f"no file says how wide the {name} is; it is laid on {cloth.width_mm / 10:g} cm"
        told = Problem("lay-width-assumed", Severity.NOTE, says, f"cloth {name}", "give it with --width")
        notes = (told,) if cloth.width_mm == LayCloth().width_mm else ()
        own = [(garment, piece) for garment, piece in found if (piece.material or USUAL) == name]
        tasks.append(LayTask(cloth, _pieces(own, cloth, count), notes))
    return tuple(tasks)


def _garment(file: Received, piece: ReceivedPiece, files: Sequence[Received]) -> str:
    """The size; with the file where there are several."""
    size = piece.size or file.style or "garment"
    return size if len(files) == 1 else f"{file.name}, {size}"


def _pieces(own: Sequence[tuple[str, ReceivedPiece]], cloth: LayCloth, garments: int) -> tuple[LayPiece, ...]:
    made: list[LayPiece] = []
    problems: list[Problem] = []
    taken: set[str] = set()
    for garment, piece in own:
        name = piece.name if f"{garment}/{piece.name}" not in taken else f"{piece.name} ({piece.block})"
        taken.add(f"{garment}/{name}")
        try:
            made.append(replace(_piece(piece, cloth), name=name, garment=garment, garments=garments))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    return tuple(made)


def _piece(piece: ReceivedPiece, cloth: LayCloth) -> LayPiece:
    grain = piece.grain
    if grain is None:
        raise _refused(piece, "has no grain line, so nobody knows which way the cloth runs")
    folded = cloth.spread in {Spread.FOLDED, Spread.TUBULAR}
    halved = piece.fold is not None and folded and piece.quantity % 2 == 1
    way = grain.end - grain.start
    if halved and piece.fold is not None:
        outline, onto = _on_the_fold(piece, piece.fold, way)
    else:
        turn = Rigid.turn(way.turn_to(Vector(1, 0)))
        whole = outline_of(piece.whole)
        left, low, _, _ = bounds(placed(whole, turn))
        onto = turn.then(Rigid.shift(Vector(-left, -low)))
        outline = placed(whole, onto)
    onto_cloth = Rigid(a=1 / (1 - cloth.shrink_length / 100), d=1 / (1 - cloth.shrink_width / 100))
    move = onto.then(onto_cloth)
    turned_over = piece.quantity // 2 if piece.mirrored else 0
    return LayPiece(
        name=piece.name,
        garment="",
        outline=placed(outline, onto_cloth),
        upright=piece.quantity - turned_over,
        turned_over=turned_over,
        cloth=cloth.name,
        title=piece.name,
        on_fold=halved,
        # The same turned over, where both halves are one piece.
        alike_over=piece.fold is not None and not halved,
        lines=tuple(LayLine(kind, tuple(move.point(p) for p in points)) for kind, points in _lines(piece)),
        words=(piece.label,),
    )


def _on_the_fold(piece: ReceivedPiece, fold: Line, grain: Vector) -> tuple[Outline, Rigid]:
    """The fold on y = 0, the half above it, the grain along +x."""
    way = fold.direction(0) if fold.direction(0).dot(grain) > 0 else -fold.direction(0)
    if abs(math.sin(way.turn_to(grain))) > LEVEL:
        raise _refused(piece, "lies on the fold off its grain: on folded cloth the fold runs along the grain")
    onto = Rigid.laying(fold.start, way, Point(0, 0), Vector(1, 0))
    half = outline_of(piece.outline)
    left, low, _, high = bounds(placed(half, onto))
    if high < -low:
        onto = onto.then(Rigid(d=-1.0))
    if min(high, -low) > ROUNDED_MM:
        raise _refused(piece, f"lies on both sides of its fold, {min(high, -low):.1f} mm beyond it")
    onto = onto.then(Rigid.shift(Vector(-left, 0.0)))
    return tuple(Point(p.x, max(p.y, 0.0)) for p in placed(half, onto)), onto


def _lines(piece: ReceivedPiece) -> _Lines:
    lines: _Lines = []
    if piece.grain:
        lines.append(("grain", (piece.grain.start, piece.grain.end)))
    lines += [("seam", path.knots) for path in piece.sew_lines]
    lines += [("mark", path.knots) for path in (*piece.inside, *piece.cutouts, *piece.stripes, *piece.checks)]
    for at in (*(notch.at for notch in piece.notches), *piece.drills):  # a cross: the file says no direction
        for step in (Vector(NOTCH_MM / 2, 0), Vector(0, NOTCH_MM / 2)):
            lines.append(("mark", (at + step, at + -step)))
    return lines


def _refused(piece: ReceivedPiece, says: str) -> InputError:
    hint = "mend it in the program that wrote it, or lay the cloth open. Nothing was laid"
    return InputError(Problem("lay-received", Severity.ERROR, f"{piece.label} {says}", piece.block, hint))
