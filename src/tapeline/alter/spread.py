"""Cutting a piece along lines and spreading it, or laying it over itself: in parallel or hinged."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from tapeline.alter.cut_line import CutLine
from tapeline.alter.lengthen import beside
from tapeline.alter.opened import Words, bad_line, opened
from tapeline.alter.opening import Edges
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.story import piece_named, spoken
from tapeline.geometry import Point, Rigid
from tapeline.lengths import Length
from tapeline.pattern import Garment, Piece

__all__ = ["Parting", "Spread", "parting", "spread"]

NOTHING = Length(0.0)


@dataclass(frozen=True, slots=True)
class Spread:
    """One cut, and how far it is opened."""

    cut: CutLine
    by: Length
    """How far apart at the wide end; less than nothing lays the parts over each other."""
    hinge: str = ""
    """Edge at which the parts stay together; none: they move apart in parallel, square to the cut."""
    slide: Length = NOTHING
    """How far what is beyond also slides along the cut, the way the cut runs; only where nothing is hinged."""


def spread(garment: Garment, piece: str, cuts: Sequence[Spread], *, edges: Edges = Edges.FAIR) -> Garment:
    """A piece is cut along several straight lines at once, each opened or overlapped, and its outline made fair again.

    The cuts come in order, each beyond the one before; all that lies beyond a cut goes with it. Names, seams, joins and
    notches stay. Opened in parallel with `Edges.STRAIGHT` the area grows by cut times amount; hinged, by the wedge.
    The girths that grow are meant to be wider, and say by how much.

    Raises `InputError`: as `lengthen`, and `hinge-not-cut`, `lines-cross`.

    >>> from tapeline.alter import upright
    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> flare = Spread(upright(tee, "back.neckline_shoulder", out=cm(5)), cm(6), hinge="shoulder")
    >>> wide = spread(tee, "back", [flare])
    >>> wide.piece("back").edge("hem").length - tee.piece("back").edge("hem").length > 50
    True
    """
    whole = piece_named(garment, piece)
    for one, two in pairwise(cuts):
        inside = cut_outline(whole, two.cut).path
        if not (one.cut.is_beyond(inside.start) and one.cut.is_beyond(inside.end)):
            what = "crosses the one before it, or lies before it"
            raise bad_line("lines-cross", whole, two.cut, what, "give the cuts in order, each beyond the one before")
    # From the farthest to the nearest, so that no cut has moved before its turn.
    for one in reversed(cuts):
        garment = _opened(garment, piece, one, edges)
    return garment


def _opened(garment: Garment, piece: str, one: Spread, edges: Edges) -> Garment:
    whole = piece_named(garment, piece)
    if not one.cut.straight:
        raise bad_line("line-not-straight", whole, one.cut, "is curved", "spread along a straight line")
    parted = parting(whole, one)
    return opened(garment, piece, (one.cut, parted.far), parted.move, words=parted.words, edges=edges)


@dataclass(frozen=True, slots=True)
class Parting:
    """What one cut does to the paper."""

    far: CutLine
    """Where what moves begins: beyond a fold as wide as the overlap."""
    move: Rigid
    half: Rigid
    """Half of that move: where the middle of the gap lies."""
    words: Words


def parting(whole: Piece, one: Spread) -> Parting:
    """The move of all that lies beyond a cut. Raises `InputError`: `hinge-not-cut`, `spread-too-wide`."""
    cut, piece = one.cut, whole.name
    verb = "spread" if one.by.mm >= 0 else "overlapped"
    amount = one.by if one.by.mm >= 0 else one.by * -1
    title = f"The {spoken(piece)} is cut and {verb} by {amount.show()}"
    if one.hinge:
        hinge, left, chord = _hinge(whole, one)
        if amount.mm >= chord:
            what = f"is {chord:.0f} mm long, and cannot be opened or overlapped by {amount.show()}"
            raise bad_line("spread-too-wide", whole, cut, what, "open less than the cut is long, or at several lines")
        angle = 2 * math.asin(amount.mm / 2 / chord) * (1 if left else -1)
        far = cut if one.by.mm >= 0 else _turned(cut, Rigid.turn(angle, hinge))
        angle = angle if one.by.mm >= 0 else -angle
        apart = "apart" if one.by.mm >= 0 else "over"
        how = (f"turned about the {spoken(one.hinge)}, ", amount, f" {apart} at the wide end")
        words = Words(verb, title, how, (amount,))
        return Parting(far, Rigid.turn(angle, hinge), Rigid.turn(angle / 2, hinge), words)
    way = cut.beyond * one.by.mm + cut.path.leaves * one.slide.mm
    far = cut if one.by.mm >= 0 else beside(cut, cut.beyond * amount.mm)
    slid = (", and ", one.slide, " along it") if one.slide.mm else ()
    how = (amount, " away from the cut" if one.by.mm >= 0 else " over the cut", *slid)
    lengths = (amount, one.slide) if one.slide.mm else (amount,)
    return Parting(far, Rigid.shift(way), Rigid.shift(way * 0.5), Words(verb, title, how, lengths))


def _hinge(whole: Piece, one: Spread) -> tuple[Point, bool, float]:
    """Where the parts stay together, whether that is where the cut starts, and how far the wide end is from there."""
    found = cut_outline(whole, one.cut)
    chord = found.path.length
    if one.hinge in (found.beyond[0].was, found.kept[-1].was):
        return found.path.start, True, chord
    if one.hinge in (found.beyond[-1].was, found.kept[0].was):
        return found.path.end, False, chord
    ends = f"{spoken(found.beyond[0].was)} and {spoken(found.beyond[-1].was)}"
    what = f"does not meet the {spoken(one.hinge)}; it meets {ends}"
    raise bad_line("hinge-not-cut", whole, one.cut, what, "hinge at one of the two edges that the line meets")


def _turned(cut: CutLine, move: Rigid) -> CutLine:
    return replace(cut, path=cut.path.moved(move), at=move.point(cut.at))
