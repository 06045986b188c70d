"""Splitting a piece by a line: a yoke, a panel, a block of another colour, with a new seam between both parts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from tapeline.alter.cut_line import CutLine
from tapeline.alter.grain import grain_inside
from tapeline.alter.halves import Halves, split_girths
from tapeline.alter.outline_cut import EdgePart, OutlineCut, cut_outline
from tapeline.alter.sewn import AT_A_MARK_MM, Became, notched_across, rejoined, resewn, with_pieces
from tapeline.alter.story import Story, piece_named, spoken, unused
from tapeline.geometry.crossing import crossings
from tapeline.geometry.region import holds
from tapeline.lengths import Length
from tapeline.pattern import Cut, Edge, EdgeRef, Garment, Join, Mark, Notch, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["marks_inside", "split"]

NOTCH_SHARE = 1 / 3
"""Where the new seam is notched: not in its middle, so that a part laid the wrong way round shows (common practice)."""
ON_THE_LEVEL_MM = 0.01


def split(garment: Garment, piece: str, cut: CutLine, *, name: str, title: str, seam: str) -> Garment:
    """What lies beyond the line becomes a piece of its own, sewn to the rest.

    The rest keeps the piece's name. Every edge keeps its own name on both parts, and every seam sews the parts where it
    sewed the whole; what is sewn across gets a notch where the new seam arrives. Nothing moves, so the areas of both
    parts are together the area of the whole, and every length is kept.

    Raises `InputError`: `piece-unknown`, `name-taken`, and what is wrong with the line (`line-misses-piece`,
    `line-crosses-again`, `line-near-corner`, `line-through-join`).

    >>> from tapeline.alter import level
    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> line = level(tee, "back.back_shoulder_tip", down=cm(8)).turned  # what is above is the yoke
    >>> yoked = split(tee, "back", line, name="yoke", title="Back yoke", seam="yoke")
    >>> [edge.name for edge in yoked.piece("yoke").edges]
    ['centre', 'neckline', 'shoulder', 'armhole', 'yoke']
    >>> yoked.seams[2].side_text(yoked.seams[2].a), yoked.seams[3].side_text(yoked.seams[3].b)
    ('sleeve.cap_front', 'yoke.armhole + back.armhole')
    """
    whole = piece_named(garment, piece)
    unused("piece", name, [one.name for one in garment.pieces])
    unused("seam", seam, [one.name for one in garment.seams])
    unused("edge", seam, [edge.name for edge in whole.edges])
    found = cut_outline(whole, cut)
    _joins_stay_whole(garment, whole, found)

    # The notches of the partners are placed by the old edges.
    garment = notched_across(garment, piece, _places(found))
    whole = garment.piece(piece)
    off = _part(whole, found.beyond, Edge(seam, found.path.reversed()), name=name, title=title)
    rest = _part(whole, found.kept, Edge(seam, found.path), name=piece, title=whole.title)
    along = found.path.length * NOTCH_SHARE
    off = replace(off, notches=(*off.notches, Notch(seam, found.path.length - along)))
    rest = replace(rest, notches=(*rest.notches, Notch(seam, along)))

    became = _became(whole, found, name)
    new_seam = Seam(
        seam, (EdgeRef(name, seam, backwards=True),), (EdgeRef(piece, seam),), Length(0.0), "the piece was cut here"
    )
    story = Story(garment)
    halves = Halves(whole, off, rest, found)
    _tell(story, halves, cut)
    girths = split_girths(story, halves)
    split_garment = with_pieces(garment, rest, off)
    return replace(
        split_garment,
        seams=(*resewn(garment.seams, became), new_seam),
        joins=(*rejoined(garment, split_garment.pieces, became), *_new_joins(found, whole, name, seam)),
        girths=girths,
        steps=story.steps,
    )


def _places(found: OutlineCut) -> dict[str, list[float]]:
    """Where edges are cut, mm along each."""
    places: dict[str, list[float]] = {}
    for part in found.beyond:
        if not part.whole:
            ends = [found.beyond[0] is part and part.start_mm, found.beyond[-1] is part and part.end_mm]
            places.setdefault(part.was, []).extend(end for end in ends if end)
    return places


def _part(whole: Piece, parts: tuple[EdgePart, ...], cut_edge: Edge, *, name: str, title: str) -> Piece:
    """One side of the cut as a piece."""
    edges = (*(part.edge for part in parts), cut_edge)
    on_fold = any(edge.fold for edge in edges)
    cut = whole.cut
    if whole.on_fold and not on_fold:
        # What lay on the fold was cut once, and was both sides; away from the fold it is cut for each side.
        cut = Cut(cut.quantity * 2, cut.cloth, mirrored=True)
    pointed = tuple(part.edge.name for part in parts if part.was in whole.pointed)
    made = Piece(name, title, edges, whole.grain, cut, tuple(_notches(whole, parts)), pointed=pointed)
    return replace(made, grain=grain_inside(made, whole.grain), marks=tuple(marks_inside(whole, made)))


def _notches(whole: Piece, parts: tuple[EdgePart, ...]) -> Iterator[Notch]:
    """The notches of the old edges; one that lies where the cut is, is marked by the new seam."""
    for part in parts:
        length = whole.edge(part.was).length
        for notch in whole.notches_on(part.was):
            at = notch.at_mm - part.start_mm
            free_start = part.start_mm == 0 or at > AT_A_MARK_MM
            free_end = part.end_mm == length or notch.at_mm < part.end_mm - AT_A_MARK_MM
            if -ON_THE_LEVEL_MM <= at <= part.edge.length + ON_THE_LEVEL_MM and free_start and free_end:
                yield replace(notch, edge=part.edge.name, at_mm=at)


def marks_inside(whole: Piece, part: Piece) -> Iterator[Mark]:
    """The lines inside the piece, as far as they lie in the part."""
    outline = part.seam_line
    for mark in whole.marks:
        ends = [0.0, *(along for along, _ in crossings(mark.path, outline)), mark.path.length]
        number = 0
        for low, high in pairwise(ends):
            if high - low > AT_A_MARK_MM and holds(outline, mark.path.at((low + high) / 2)):
                number += 1
                name = mark.name if number == 1 else f"{mark.name}_{number}"
                yield Mark(name, mark.path if high - low == mark.path.length else mark.path.part(low, high))


def _became(whole: Piece, found: OutlineCut, name: str) -> Became:
    became: dict[tuple[str, str], tuple[EdgeRef, ...]] = {}
    for edge in whole.edges:
        stretches = [(part.start_mm, EdgeRef(name, part.edge.name)) for part in found.beyond if part.was == edge.name]
        stretches += [
            (part.start_mm, EdgeRef(whole.name, part.edge.name)) for part in found.kept if part.was == edge.name
        ]
        became[whole.name, edge.name] = tuple(ref for _, ref in sorted(stretches, key=lambda pair: pair[0]))
    return became


def _new_joins(found: OutlineCut, whole: Piece, name: str, seam: str) -> Iterator[Join]:
    """Each edge that was cut runs straight on over the new seam."""
    for part, rest in ((found.beyond[0], found.kept[-1]), (found.beyond[-1], found.kept[0])):
        if part.was == rest.was and not part.whole and not part.edge.fold:
            yield Join(spoken(part.was), seam, ((name, part.edge.name, seam), (whole.name, rest.edge.name, seam)))


def _joins_stay_whole(garment: Garment, whole: Piece, found: OutlineCut) -> None:
    """A line over a seam cannot be followed when the cut goes through the very corner where it crosses."""
    ends = (found.path.start, found.path.end)
    for join in garment.joins:
        for piece, line, seam in join.corners:
            if piece != whole.name:
                continue
            place, _ = whole.corner(line, seam)
            if any(place.distance_to(end) < ON_THE_LEVEL_MM for end in ends):
                raise InputError(
                    Problem(
                        "line-through-join",
                        Severity.ERROR,
                        f"the line goes through the corner where the {join.line} of the {spoken(piece)} crosses the "
                        f"seam {join.seam}; three seams in one place cannot be sewn flat, and nothing would prove them",
                        f"{piece}.{line}",
                        "draw it a centimetre beside the corner",
                    )
                )


def _tell(story: Story, halves: Halves, cut: CutLine) -> None:
    """The words: the cut and its ends, the lines of the new piece, what is left of the old one's."""
    whole, off, rest, found = halves.whole, halves.off, halves.rest, halves.found
    seam = off.edges[-1].name
    story.section(off.name, f"The {spoken(off.name)} is cut from the {spoken(whole.name)}")
    ends = []
    for where, place, part in (
        ("start", found.path.start, found.beyond[0]),
        ("end", found.path.end, found.beyond[-1]),
    ):
        says = f"Where the cut meets the {spoken(part.was)}"
        known = story.label_of(f"{whole.name}.{part.was}")
        needs = (*cut.needs, *([known] if known else []))
        ends.append(story.point(f"{off.name}.{seam}_{where}", says, cut.says, place, needs))
    for piece in (off, rest):
        says = "A new seam: both parts are sewn together again along the cut"
        story.line(f"{piece.name}.{seam}", says, cut.says, piece.edges[-1].path, (*ends, *cut.needs))
    for side, piece, says in (
        (found.beyond, off, f"Comes from the {spoken(whole.name)}"),
        (found.kept, rest, f"What is left to the {spoken(whole.name)}"),
    ):
        for part in side:
            if piece is off or not part.whole:
                how = ("as it was",) if part.whole else (f"as far as {spoken(seam)}",)
                was, now = f"{whole.name}.{part.was}", f"{piece.name}.{part.edge.name}"
                story.edge(was, now, part.edge.path, says=says, how=how, needs=tuple(ends))
