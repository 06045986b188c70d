"""Alterations one after the other in any order, on garments of random wearers: what must hold, holds after each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import wraps
from typing import Any, TypeVar

import pytest
from hypothesis import event, note, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from tapeline.alter import (
    CutLine,
    Edges,
    Spread,
    Stretch,
    extend,
    face,
    gather,
    hem,
    join,
    lengthen,
    level,
    mirror,
    move_seam,
    pleat,
    split,
    spread,
    swing,
    through,
    true_line,
    unfold,
    upright,
)
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.story import latest
from tapeline.geometry import area
from tapeline.lengths import Length
from tapeline.measures import Wearer
from tapeline.pattern import EdgeKind, Garment, Notch, Piece, StepKind
from tapeline.problems import InputError
from tests.alter.altered import drawn, in_order, refused
from tests.alter.whole import notches_of, off, whole
from tests.wearers import wearers

REFUSED = {
    "cut-differently",
    "edge-not-sewn",
    "edge-not-straight",
    "edge-sewn",
    "edge-sewn-twice",
    "facing-does-not-fit",
    "fold-left",
    "fullness-against-ease",
    "girth-turned",
    "hinge-not-cut",
    "line-along-edge",
    "line-crosses-again",
    "line-in-one-edge",
    "line-misses-piece",
    "line-near-corner",
    "line-through-corner",
    "line-through-join",
    "lines-cross",
    "name-taken",
    "no-fold",
    "seam-moved-too-far",
    "outline-would-cross",
    "overlap-too-wide",
    "pleat-too-near",
    "points-together",
    "seam-not-flat",
    "spread-too-wide",
    "stretch-unclear",
    "two-folds",
}
"""What may be said instead of altering; anything else is a fault."""
STYLED = ("tee", "dropped", "vest", "sweatshirt")
"""Not the block: its neckline is sewn to nothing."""
SEWN_MM = 0.02
"""Seams of edges that were cut are as long as before but for the rounding of so many cuts."""
SHARES = st.floats(0.05, 0.95)
NUMBER = st.integers(0, 1000)


@dataclass(frozen=True)
class Where:
    """Which line across a piece: through two points of its construction, or at a share of its height or width."""

    kind: str
    points: tuple[int, int]
    share: float
    turned: bool


LINES = st.builds(
    Where,
    st.sampled_from(["level", "upright", "through"]),
    st.tuples(NUMBER, NUMBER),
    SHARES,
    st.booleans(),
)


def attempted(alter: Callable[[], Garment]) -> tuple[Garment | None, Mapping[str, str]]:
    """What comes of an alteration: a garment, or codes of what was refused with their hints."""
    try:
        return alter(), {}
    except InputError as error:
        return None, refused(error)


class LeftAsItWasError(Exception):
    """A step that cannot be taken with this garment; the next one may be."""


Step = TypeVar("Step", bound=Callable[..., None])


def if_it_can_be(step: Step) -> Step:
    """A step that leaves the garment as it was where it cannot be taken: `assume` would end the whole run there."""

    @wraps(step)
    def tried(*self: Any, **drawn: Any) -> None:
        with suppress(LeftAsItWasError):
            step(*self, **drawn)

    return tried  # type: ignore[return-value]  # it is called as the step is


def must(be: object) -> None:
    """Leave the garment as it was, otherwise."""
    if not be:
        raise LeftAsItWasError


class InAnyOrder(RuleBasedStateMachine):
    """A garment, altered again and again."""

    garment: Garment

    def __init__(self) -> None:
        super().__init__()
        self.made = 0

    @initialize(wearer=wearers(), style=st.sampled_from(STYLED), looseness=st.sampled_from(["slight", "loose"]))
    def begin(self, wearer: Wearer, style: str, looseness: str) -> None:
        """Draft it."""
        self.garment = drawn(wearer, style, looseness)

    @rule(piece=NUMBER, where=LINES)
    @if_it_can_be
    def is_split(self, piece: int, where: Where) -> None:
        """Areas and lengths are kept, and so is every notch that is not where the cut is."""
        before, of = self.garment, self.piece(piece)
        self.made += 1
        number = self.made
        cut = self.line(of, where)
        after = self.altered(
            "split", lambda: split(before, of.name, cut, name=f"part_{number}", title="Part", seam=f"cut_{number}")
        )
        both = area(after.piece(of.name).seam_line) + area(after.piece(f"part_{number}").seam_line)
        assert both == pytest.approx(area(of.seam_line), abs=0.1)
        self.seams_are_as_long(before)
        self.notches_are_there(before, after, near=of)

    @rule(piece=NUMBER, where=LINES, by=st.floats(-30, 60), edges=st.sampled_from(Edges))
    @if_it_can_be
    def is_lengthened(self, piece: int, where: Where, by: float, edges: Edges) -> None:
        """Every notch and name is kept."""
        must(abs(by) > 0.1)
        of, before = self.piece(piece), self.garment
        cut = self.line(of, where)
        after = self.altered("lengthen", lambda: lengthen(before, of.name, cut, Length(by), edges=edges))
        assert notches_of(after) == notches_of(before)

    @rule(piece=NUMBER, where=LINES, by=st.floats(-25, 50), hinge=st.sampled_from(["", "start", "end"]))
    @if_it_can_be
    def is_spread(self, piece: int, where: Where, by: float, hinge: str) -> None:
        """Every notch and name is kept."""
        must(abs(by) > 0.1)
        before, of = self.garment, self.piece(piece)
        cut = self.line(of, where)
        at = self.met(of, cut, hinge)
        after = self.altered("spread", lambda: spread(before, of.name, [Spread(cut, Length(by), hinge=at)]))
        assert notches_of(after) == notches_of(before)

    @rule(piece=NUMBER)
    @if_it_can_be
    def is_unfolded(self, piece: int) -> None:
        """The area doubles, and so do the notches of the piece."""
        before, of = self.garment, self.piece(piece)
        after = self.altered("unfold", lambda: unfold(before, of.name))
        assert area(after.piece(of.name).seam_line) == pytest.approx(2 * area(of.seam_line), abs=0.1)
        assert notches_of(after) == notches_of(before) + Counter(str(n.kind) for n in of.notches)
        self.seams_are_as_long(before)

    @rule(piece=NUMBER)
    @if_it_can_be
    def is_turned_over(self, piece: int) -> None:
        """Turned over twice a piece is what it was; once, its edges and notches are as long and as many."""
        of = self.piece(piece)
        other = mirror(of)
        assert mirror(other).edges == of.edges
        assert area(other.seam_line) == pytest.approx(area(of.seam_line), abs=1e-6)
        assert {e.name: pytest.approx(e.length) for e in other.edges} == {e.name: e.length for e in of.edges}
        assert len(other.notches) == len(of.notches)

    @rule(seam=NUMBER)
    @if_it_can_be
    def is_joined(self, seam: int) -> None:
        """The area is that of both; every notch that is not on the seam is kept."""
        before = self.garment
        # Most seams of a garment are of two curves that do not lie on each other; those of cuts do.
        cuts = [one for one in before.seams if one.name.startswith("cut_")]
        seams = cuts if cuts and seam % 3 else before.seams
        found = seams[seam % len(seams)]
        after = self.altered("join", lambda: join(before, found.name))
        total = [sum(area(piece.seam_line) for piece in one.pieces) for one in (before, after)]
        assert total[1] == pytest.approx(total[0], abs=0.2)
        gone = {(ref.piece, ref.edge) for ref in (*found.a, *found.b)}
        left = Counter(
            str(n.kind) for piece in before.pieces for n in piece.notches if (piece.name, n.edge) not in gone
        )
        assert notches_of(after) == left
        self.seams_are_as_long(before, but=found.name)

    @rule(seam=NUMBER, gives=st.booleans(), by=st.floats(2, 20))
    @if_it_can_be
    def has_a_seam_moved(self, seam: int, gives: bool, by: float) -> None:
        """The area of both pieces together is kept; of a straight partner, so is every notch."""
        before = self.garment
        found = before.seams[seam % len(before.seams)]
        into = (found.a if gives else found.b)[0].piece
        after = self.altered("move", lambda: move_seam(before, found.name, Length(by), into=into))
        total = [sum(area(piece.seam_line) for piece in one.pieces) for one in (before, after)]
        assert total[1] == pytest.approx(total[0], abs=0.2)
        assert not notches_of(before) - notches_of(after)

    @rule(piece=NUMBER, edge=NUMBER, ends=st.tuples(st.booleans(), st.booleans()))
    @if_it_can_be
    def is_trued(self, piece: int, edge: int, ends: tuple[bool, bool]) -> None:
        """All other edges stay; every notch is kept."""
        before, of = self.garment, self.piece(piece)
        which = of.edges[edge % len(of.edges)]
        must(not which.fold)
        start, end = ends
        after = self.altered(
            "true", lambda: true_line(before, of.name, which.name, square_at_start=start, square_at_end=end)
        )
        assert notches_of(after) == notches_of(before)
        kept = [e for e in after.piece(of.name).edges if e.name != which.name]
        assert kept == [e for e in of.edges if e.name != which.name]

    @rule(piece=NUMBER, edges=st.tuples(NUMBER, NUMBER), by=st.floats(5, 60), way=st.booleans(), hinged=st.booleans())
    @if_it_can_be
    def is_gathered(self, piece: int, edges: tuple[int, int], by: float, way: bool, hinged: bool) -> None:
        """The edge is longer by what was gathered or pleated, its partners are not, and no notch is lost."""
        before, of = self.garment, self.piece(piece)
        along, toward = (Stretch(of.edges[n % len(of.edges)].name, 0.2, 0.8) for n in edges)
        if way:
            after = self.altered(
                "gather", lambda: gather(before, of.name, along, Length(by), toward=toward, hinged=hinged)
            )
        else:
            after = self.altered("pleat", lambda: pleat(before, of.name, along, 2, Length(by / 4), toward=toward))
        assert after.piece(of.name).edge(along.edge).length > of.edge(along.edge).length
        assert not notches_of(before) - notches_of(after)
        others = [(one, after.piece(one.name)) for one in before.pieces if one.name != of.name]
        assert all(one.edges == now.edges for one, now in others)

    @rule(piece=NUMBER, edges=st.tuples(NUMBER, NUMBER), by=st.floats(5, 80))
    @if_it_can_be
    def is_swung(self, piece: int, edges: tuple[int, int], by: float) -> None:
        """Every notch and name is kept."""
        before, of = self.garment, self.piece(piece)
        low, high = (Stretch(of.edges[n % len(of.edges)].name, 0.25, 0.75) for n in edges)
        after = self.altered("swing", lambda: swing(before, of.name, low, Length(by), hinge=high))
        assert notches_of(after) == notches_of(before)

    @rule(piece=NUMBER, edge=NUMBER, by=st.floats(5, 40), what=st.sampled_from(["extend", "hem", "face"]))
    @if_it_can_be
    def has_a_free_edge_made(self, piece: int, edge: int, by: float, what: str) -> None:
        """Extended, turned up or faced: seams stay as long, and every notch is kept."""
        before, of = self.garment, self.piece(piece)
        free = [one.name for one in of.edges if one.kind is not EdgeKind.SEAM]
        must(free)
        name = free[edge % len(free)]
        self.made += 1
        called = f"facing_{self.made}"
        verbs: dict[str, Callable[[], Garment]] = {
            "extend": lambda: extend(before, of.name, name, Length(by)),
            "hem": lambda: hem(before, of.name, name, Length(by)),
            "face": lambda: face(before, [(of.name, name)], Length(by), name=called),
        }
        after = self.altered(what, verbs[what])
        assert not notches_of(before) - notches_of(after)
        self.seams_are_as_long(before)

    @invariant()
    def it_is_whole(self) -> None:
        """No gap, no crossing, no lost notch, no edge without partner, grain inside."""
        if hasattr(self, "garment"):
            wrong = whole(self.garment)
            assert wrong == [], wrong

    # What the rules share ---------------------------------------------------------------------------------------------

    def altered(self, verb: str, alter: Callable[[], Garment]) -> Garment:
        """Alter it, or leave it where the alteration is refused for a reason that is known."""
        after, codes = attempted(alter)
        assert codes.keys() <= REFUSED, (verb, codes)
        if after is None:
            event(f"{verb}: {', '.join(codes)}")
            raise LeftAsItWasError
        event(f"{verb}: done")
        in_order(self.garment, after)
        self.garment = after
        return after

    def piece(self, number: int) -> Piece:
        """One of the pieces."""
        return self.garment.pieces[number % len(self.garment.pieces)]

    def line(self, piece: Piece, where: Where) -> CutLine:
        """A line across it, by points of its construction."""
        labels = [label for label in self.garment.points if label.rpartition(".")[0] == piece.name]
        must(labels)
        first, second = (labels[point % len(labels)] for point in where.points)
        if where.kind == "through":
            try:
                cut = through(self.garment, first, second)
            except InputError:
                raise LeftAsItWasError from None
        else:
            at = latest(self.garment, first, StepKind.POINT).point
            assert at is not None
            knots = piece.seam_line.knots
            (left, low), (right, top) = ((pick(p.x for p in knots), pick(p.y for p in knots)) for pick in (min, max))
            if where.kind == "level":
                cut = level(self.garment, first, down=Length(at.y - low - where.share * (top - low)))
            else:
                cut = upright(self.garment, first, out=Length(left + where.share * (right - left) - at.x))
        note(f"{piece.name}: {''.join(map(str, cut.says))}")
        return cut.turned if where.turned else cut

    def met(self, piece: Piece, cut: CutLine, which: str) -> str:
        """The edge that the line meets where it starts or ends."""
        if not which:
            return ""
        try:
            found = cut_outline(piece, cut)
        except InputError:
            return ""
        return found.beyond[0].was if which == "start" else found.beyond[-1].was

    def seams_are_as_long(self, before: Garment, but: str = "") -> None:
        """What every seam differs from its ease by is what it was."""
        now = {seam.name: off(self.garment, seam) for seam in self.garment.seams}
        for seam in before.seams:
            if seam.name != but:
                assert now[seam.name] == pytest.approx(off(before, seam), abs=SEWN_MM), seam.name

    def notches_are_there(self, before: Garment, after: Garment, *, near: Piece) -> None:
        """No notch is lost, but where the new seam itself arrives."""
        lost = notches_of(before) - notches_of(after)

        def at_the_cut(notch: Notch) -> bool:
            place = near.edge(notch.edge).path.at(notch.at_mm)
            new = after.pieces[-1].edges[-1].path
            return min(place.distance_to(end) for end in (new.start, new.end)) < 1.05

        assert lost <= Counter(str(n.kind) for n in near.notches if at_the_cut(n))


InAnyOrder.TestCase.settings = settings(stateful_step_count=10)
TestInAnyOrder = pytest.mark.slow(InAnyOrder.TestCase)
