"""Pleats: cloth laid in folds along an edge, each with its two lines and the way it is folded."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.alter.opened import bad_line, girth_kept
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.sewn import with_pieces
from tapeline.alter.spread import Parting, Spread, parting, spread
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.alter.stretch import (
    Stretch,
    cuts_between,
    fuller_seams,
    is_sewn,
    marked_on_both,
    more_than_nothing,
    stretch_length,
)
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Line, Path, Point, Rigid
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, Mark, Notch, NotchKind, Piece

__all__ = ["pleat"]

LINE_LONG = cm(8)
"""How far into the piece the two lines of a pleat are drawn, where the cut is as long: enough to crease it by."""
AT_THE_CUT_MM = 0.01
"""The pleat's own notch lies there: it stays with its first line."""
ARROW_AT_MM = 15.0
HEAD_MM = 5.0
"""The arrow lies so far inside the edge, and its head is so long."""


def pleat(
    garment: Garment,
    piece: str,
    along: Stretch,
    number: int,
    by: Length,
    *,
    toward: Stretch,
    hinged: bool = True,
    folded_to_end: bool = True,
) -> Garment:
    """Pleats, evenly over a stretch of an edge that is sewn; its partner stays as it is.

    The paper is cut from the stretch to another across from it and opened. Between its two lines each pleat's edge is
    the mirror image of the edge that it lies under, so that, folded, the edge is what it was, and no layer is missed by
    the seam. Both lines are marked, with an arrow from the one that is folded to the one that it is laid onto; the
    first is notched to the partner, the second to the first.

    Args:
        garment: What is altered.
        piece: The piece that gets fuller.
        along: Where: one pleat lies in the middle of each of so many even parts.
        number: How many.
        by: How far each opens: its fold is half as deep.
        toward: Where the cuts run to.
        hinged: Whether that edge stays as long as it is; if not, the pleats run through.
        folded_to_end: Which way each is laid: toward the stretch's end (clockwise), or toward its start.

    Raises `InputError`: as `gather`, and `pleat-too-near` where its underside would reach past the edge's end.

    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> laid = pleat(tee, "front", Stretch("shoulder", 0.3, 0.9), 2, cm(2), toward=Stretch("hem", 0.3, 0.9))
    >>> [mark.name for mark in laid.piece("front").marks][-3:]
    ['pleat_2_fold', 'pleat_2_onto', 'pleat_2_way']
    >>> next(seam.reason for seam in laid.seams if seam.name == "shoulder")
    'the shoulder of the front is laid in 2 pleats'
    """
    whole = piece_named(garment, piece)
    stretch_length(whole, along)
    is_sewn(garment, piece, along.edge)
    more_than_nothing(by, f"{piece}.{along.edge}")
    old = whole.edge(along.edge).length
    shares = [(k + 0.5) / number for k in range(number)]
    places = [old * (along.start + share * (along.end - along.start)) for share in shares]
    garment = marked_on_both(garment, piece, along.edge, places)
    cuts = cuts_between(garment, piece, along, toward, shares)
    for cut in reversed(cuts):
        before = garment.piece(piece)
        one = Spread(cut, by, hinge=toward.edge if hinged else "")
        made = _Pleat(before, along.edge, one, parting(before, one), folded_to_end=folded_to_end)
        garment = _told(spread(garment, piece, [one]), made)
    garment = _renumbered(garment, piece, along.edge)
    more = garment.piece(piece).edge(along.edge).length - old
    reason = f"the {spoken(along.edge)} of the {spoken(piece)} is laid in {number} pleat{'s' if number > 1 else ''}"
    return replace(garment, seams=fuller_seams(garment, piece, along.edge, more, reason))


@dataclass(frozen=True, slots=True)
class _Pleat:
    """One pleat of a piece, as that was before."""

    whole: Piece
    edge: str
    one: Spread
    parting: Parting
    folded_to_end: bool

    @property
    def at(self) -> float:
        """Where along the edge it is cut, mm."""
        return self.whole.edge(self.edge).path.length_to(self.mouth)

    @property
    def mouth(self) -> Point:
        """Where on the edge it is cut."""
        path = self.whole.edge(self.edge).path
        found = cut_outline(self.whole, self.one.cut).path
        return min((found.start, found.end), key=path.distance_to)

    @property
    def moves(self) -> tuple[Rigid, Rigid]:
        """What happens to the edge before the cut, and after it."""
        path = self.whole.edge(self.edge).path
        after = self.one.cut.is_beyond(self.mouth + path.direction_at(self.at))
        return (Rigid(), self.parting.move) if after else (self.parting.move, Rigid())

    def lines(self) -> tuple[Path, Path, Path]:
        """The cut before the pleat, in the middle of it, and after it; each from the edge inward."""
        found = cut_outline(self.whole, self.one.cut).path
        path = found if found.start == self.mouth else found.reversed()
        start, end = self.moves
        return path.moved(start), path.moved(self.parting.half), path.moved(end)

    def edge_path(self) -> tuple[Path, Path]:
        """The whole edge, and the pleat's part of it.

        The underside lies below the part before the cut where the fold is laid toward the end, else below the one after
        it: that part is turned over about its line, and what comes out once more about the middle.
        """
        old = self.whole.edge(self.edge).path
        start, end = self.moves
        before, after = old.part(0, self.at).moved(start), old.part(self.at, old.length).moved(end)
        first, middle, last = self.lines()
        if self.folded_to_end:
            under = before.part(self._reach(before, first, middle), before.length)
            one = under.moved(_over(first)).reversed()
            roof = one.joined(one.moved(_over(middle)).reversed())
        else:
            under = after.part(0, self._reach(after, last, middle))
            two = under.moved(_over(last)).reversed()
            roof = two.moved(_over(middle)).reversed().joined(two)
        return before.joined(roof).joined(after), roof

    def _reach(self, part: Path, line: Path, middle: Path) -> float:
        """How far along a part of the edge the underside of the pleat lies below it."""
        under = middle.moved(_over(line))
        found = part.crossings(Line(under.start, under.end))
        if not found:
            what = f"makes a pleat whose underside reaches past the end of the {spoken(self.edge)}"
            hint = "make the pleat smaller, lay it the other way, or move it from the end"
            raise bad_line("pleat-too-near", self.whole, self.one.cut, what, hint)
        return part.length_to(min(found, key=line.start.distance_to))

    def piece(self, opened: Piece) -> Piece:
        """The opened piece with the pleat's own edge, notches and marks."""
        path, roof = self.edge_path()
        kinds = [n for n in self.whole.notches if n.edge == self.edge]
        moved = [replace(n, at_mm=n.at_mm + (roof.length if n.at_mm > self.at + AT_THE_CUT_MM else 0.0)) for n in kinds]
        others = [n for n in opened.notches if n.edge != self.edge]
        laid = Notch(self.edge, self.at + roof.length, NotchKind.PLEAT)
        edges = tuple(replace(one, path=path) if one.name == self.edge else one for one in opened.edges)
        made = replace(opened, edges=edges, notches=(*others, *moved, laid), marks=(*opened.marks, *self.marks()))
        title = f"A pleat in the {spoken(self.edge)} of the {spoken(self.whole.name)}"
        uncrossed(made, title, "make it smaller, or move it from the edge's end")
        return made

    def marks(self) -> tuple[Mark, ...]:
        """Its two lines, and the arrow from the one that is folded to the one that it is laid onto."""
        first, _, last = (line.part(0, min(LINE_LONG.mm, line.length)) for line in self.lines())
        fold, onto = (first, last) if self.folded_to_end else (last, first)
        inside = min(ARROW_AT_MM, fold.length / 2)
        tail, tip = fold.at(inside), onto.at(inside)
        back = (tail - tip).unit * min(HEAD_MM, tail.distance_to(tip) / 2)
        way = Path.through(tail, tip, tip + back.turned(0.5), tip, tip + back.turned(-0.5))
        return Mark(f"{NEW}_fold", fold), Mark(f"{NEW}_onto", onto), Mark(f"{NEW}_way", way)


NEW = "new_pleat"
"""Before they are numbered: they are made from the last to the first."""


def _over(line: Path) -> Rigid:
    """Turned over about a straight line."""
    return Rigid.over(line.start, line.leaves)


def _told(opened: Garment, made: _Pleat) -> Garment:
    piece = made.piece(opened.piece(made.whole.name))
    story = Story(opened)
    title = f"A pleat in the {spoken(made.edge)} of the {spoken(piece.name)}"
    story.section(piece.name, title)
    known = tuple(filter(None, (story.label_of(f"{piece.name}.{made.edge}"),)))
    for mark, says in zip(
        made.marks()[:2], ("Folded here, right side out", "What is folded is laid onto this line"), strict=True
    ):
        name = "pleat_fold" if mark.name.endswith("fold") else "pleat_onto"
        how = ("where the paper was cut, ", made.one.by, " apart at the edge")
        story.line(f"{piece.name}.{name}", says, how, mark.path, known, made.one.by)
    label = f"{piece.name}.{made.edge}"
    path = piece.edge(made.edge).path
    cut = ("folded, and cut through all layers along the edge",)
    story.edge(label, label, path, says="Each layer of the pleat reaches the seam", how=cut, needs=())
    laid = replace(with_pieces(opened, piece), steps=story.steps)
    return replace(laid, girths=tuple(girth_kept(opened, laid, girth) for girth in opened.girths))


def _renumbered(garment: Garment, piece: str, edge: str) -> Garment:
    """The marks of new pleats get numbers, in their order along the edge, after those that are there."""
    whole = garment.piece(piece)
    new = [mark for mark in whole.marks if mark.name.startswith(f"{NEW}_")]
    old = tuple(mark for mark in whole.marks if mark not in new)
    taken = sum(mark.name.startswith("pleat_") and mark.name.endswith("_way") for mark in old)
    path = whole.edge(edge).path
    threes = sorted((new[k : k + 3] for k in range(0, len(new), 3)), key=lambda of: path.length_to(of[0].path.start))
    named = [
        Mark(mark.name.replace(NEW, f"pleat_{number}"), mark.path)
        for number, three in enumerate(threes, taken + 1)
        for mark in three
    ]
    return with_pieces(garment, replace(whole, marks=(*old, *named)))
