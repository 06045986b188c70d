"""One opening or fold of a piece, in a garment: checks, words, points that move, girths that change."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from tapeline.alter.cut_line import CutLine
from tapeline.alter.opening import Edges, Opening
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Point, Rigid
from tapeline.lengths import Length, Phrase, phrase_text
from tapeline.pattern import Garment, Girth, Piece, width_at
from tapeline.problems import InputError, Problem, Severity

__all__ = ["STILL_MM", "Words", "bad_line", "girth_kept", "newest_points", "opened", "round_at"]

STILL_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Words:
    """What is told of one opening."""

    name: str
    """Of the line: `lengthened`, `spread`."""
    title: str
    how: Phrase
    lengths: tuple[Length, ...]


def opened(
    garment: Garment, piece: str, lines: tuple[CutLine, CutLine], move: Rigid, *, words: Words, edges: Edges
) -> Garment:
    """The garment with one piece cut along the first line; what lies beyond the second is moved.

    Both lines are one where paper is spread; between them it is folded away.
    """
    whole = piece_named(garment, piece)
    near = cut_outline(whole, lines[0])
    try:
        far = near if lines[0] is lines[1] else cut_outline(whole, lines[1])
    except InputError as error:
        raise _too_wide(whole, words) from error
    if [part.was for part in (near.beyond[0], near.beyond[-1])] != [
        part.was for part in (far.beyond[0], far.beyond[-1])
    ]:
        raise _too_wide(whole, words)
    opening = Opening(near, far, *lines, move)
    _ends_stay_in_their_edges(whole, opening, lines[0])
    made = opening.opened(whole, edges)
    _fold_stays_straight(whole, made, lines[0], move)
    uncrossed(made, words.title, "open or fold less, or at another line")

    story = Story(garment)
    story.section(piece, words.title)
    line = story.line(f"{piece}.{words.name}", words.title, lines[0].says, near.path, lines[0].needs)
    went = _points(story, opening, whole, line, words)
    for before, after in zip(whole.edges, made.edges, strict=True):
        if before.path != after.path:
            as_it_was = before.path.moved(move) == after.path
            says = "Moves with what lies beyond the line" if as_it_was else f"Drawn {_anew(edges)} after the cut"
            label = f"{piece}.{before.name}"
            story.edge(label, label, after.path, says=says, how=words.how, needs=(line,))
    changed = replace(with_pieces(garment, made), steps=story.steps)
    return replace(changed, girths=tuple(_girth(garment, changed, girth, went) for girth in garment.girths))


def _anew(edges: Edges) -> str:
    return "anew" if edges is Edges.FAIR else "straight on"


def _points(story: Story, opening: Opening, whole: Piece, line: str, words: Words) -> dict[str, str]:
    """The points beyond the line where they lie now; from the old label to the new."""
    went, outline = {}, whole.seam_line
    for base, (label, point) in newest_points(story.garment, whole.name).items():
        if opening.takes(point, outline):
            place = opening.move.point(point)
            if place.distance_to(point) > STILL_MM:
                says = "Moves with what lies beyond the line"
                how = (f"from {spoken(label.rpartition('.')[2])}, ", *words.how)
                went[label] = story.point(base, says, how, place, (label, line), *words.lengths)
    return went


def newest_points(garment: Garment, piece: str) -> dict[str, tuple[str, Point]]:
    """The points of a piece by their first label: the label of the newest step, and where they are now."""
    newest: dict[str, tuple[str, Point]] = {}
    labels = {step.label for step in garment.steps}
    for step in garment.steps:
        if step.point is not None and step.sheet == piece:
            base = re.sub(r"_\d+$", "", step.label)
            newest[base if base in labels else step.label] = step.label, step.point
    return newest


def _girth(before: Garment, after: Garment, girth: Girth, went: dict[str, str]) -> Girth:
    """The girth measured at the level where that is now, with what the opening added to it meant."""
    across = tuple(
        (piece, went.get(f"{piece}.{mark}", f"{piece}.{mark}").rpartition(".")[2], times)
        for piece, mark, times in girth.across
    )
    return girth_kept(before, after, girth, replace(girth, across=across))


def girth_kept(before: Garment, after: Garment, girth: Girth, now: Girth | None = None) -> Girth:
    """A girth as it is measured now, with what an alteration added to it meant."""
    now = now or girth
    if now.across == girth.across and _untouched(before, after, girth):
        return now
    more = round_at(after, now) - round_at(before, girth)
    return replace(now, ease=now.ease + Length(more, "spread")) if abs(more) > STILL_MM else now


def _untouched(before: Garment, after: Garment, girth: Girth) -> bool:
    """Whether all pieces and levels at which a girth is measured are the very same: most, where a sleeve is altered."""
    old, new = before.points, after.points
    return all(
        before.piece(name) is after.piece(name) and old.get(f"{name}.{mark}") == new.get(f"{name}.{mark}")
        for name, mark, _ in girth.across
    )


def round_at(garment: Garment, girth: Girth) -> float:
    """Millimetres round the garment where a girth is measured."""
    points, total = garment.points, 0.0
    for name, mark, times in girth.across:
        piece, level = garment.piece(name), points.get(f"{name}.{mark}")
        total += times * (width_at(piece, level) if level is not None else piece.edge(mark).length)
    return total


def _ends_stay_in_their_edges(whole: Piece, opening: Opening, line: CutLine) -> None:
    """A cut through a corner tears the edges apart that meet there; and a cut needs two edges."""
    near = opening.near
    for place, after, before in (
        (near.path.start, near.beyond[0].was, near.kept[-1].was),
        (near.path.end, near.kept[0].was, near.beyond[-1].was),
    ):
        if after != before and opening.move.point(place).distance_to(place) > STILL_MM:
            raise bad_line(
                "line-through-corner",
                whole,
                line,
                f"goes through the corner of {spoken(before)} and {spoken(after)}: nothing says which of them grows",
                "draw it a centimetre beside the corner",
            )
    if near.beyond[0].was == near.beyond[-1].was and len(near.beyond) == 1:
        raise bad_line(
            "line-in-one-edge",
            whole,
            line,
            f"goes in and out at the {spoken(near.beyond[0].was)}",
            "choose a line that goes in at one edge and out at another",
        )


def _fold_stays_straight(whole: Piece, made: Piece, line: CutLine, move: Rigid) -> None:
    """What lies on the fold of the cloth must still lie on it: all of it moves, or none of it sideways."""
    for before, after in zip(whole.edges, made.edges, strict=True):
        if not before.fold or after.path == before.path.moved(move):
            continue
        way = before.path.leaves
        if any(abs(way.cross(knot - before.path.start)) > STILL_MM for knot in after.path.knots):
            raise bad_line(
                "fold-left",
                whole,
                line,
                f"moves a part of the {spoken(after.name)} away from the fold of the cloth",
                "cut square to the fold, hinge on it, or unfold the piece first",
            )


def bad_line(code: str, piece: Piece, line: CutLine, what: str, hint: str) -> InputError:
    """A line along which a piece cannot be opened."""
    says = f"the line {phrase_text(line.says)} across the {spoken(piece.name)} {what}"
    return InputError(Problem(code, Severity.ERROR, says, piece.name, hint))


def _too_wide(piece: Piece, words: Words) -> InputError:
    return InputError(
        Problem(
            "overlap-too-wide",
            Severity.ERROR,
            f"{words.title}: the fold is wider than the {spoken(piece.name)} there, or swallows a corner; "
            "it must stay between two edges",
            piece.name,
            "fold less, or at several lines",
        )
    )
