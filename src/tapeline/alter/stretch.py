"""A `Stretch` of an edge, and what becomes of the seams in which it grows while its partner stays."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from tapeline.alter.cut_line import CutLine, across
from tapeline.alter.sewn import AT_A_MARK_MM, notched_across, with_pieces
from tapeline.alter.story import edge_named, piece_named, spoken
from tapeline.lengths import Length
from tapeline.pattern import EdgeRef, Garment, Notch, NotchKind, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = [
    "Stretch",
    "cuts_between",
    "fuller_seams",
    "is_sewn",
    "marked_on_both",
    "more_than_nothing",
    "stretch_length",
]

NEARLY_NONE_MM = 0.1
"""An ease that is less is none to the hand."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """From one share of an edge's length to another, the way the outline runs (clockwise); the whole edge, unsaid."""

    edge: str
    start: float = 0.0
    end: float = 1.0

    def __str__(self) -> str:
        part = "" if (self.start, self.end) == (0, 1) else f", {self.start:.0%} to {self.end:.0%} of it"
        return f"{spoken(self.edge)}{part}"


def stretch_length(whole: Piece, along: Stretch) -> float:
    """Millimetres; raises `InputError` (`edge-unknown`, `stretch-unclear`)."""
    edge = edge_named(whole, along.edge)
    if not 0 <= along.start < along.end <= 1:
        says = f"a stretch from {along.start:g} to {along.end:g} of the {spoken(along.edge)} is none"
        hint = "give two shares of its length, between 0 and 1, the smaller first"
        raise InputError(Problem("stretch-unclear", Severity.ERROR, says, f"{whole.name}.{along.edge}", hint))
    return edge.length * (along.end - along.start)


def cuts_between(
    garment: Garment, piece: str, along: Stretch, toward: Stretch, shares: Iterable[float]
) -> list[CutLine]:
    """Cuts from shares of one stretch to the same shares of another across from it, each beyond the one before.

    What stays where it is, is the side with the fold; of a piece without one, the side where its grain line lies.
    """
    whole = piece_named(garment, piece)
    for stretch in (along, toward):
        stretch_length(whole, stretch)
    if along.edge == toward.edge:
        says = f"the cuts would run from the {spoken(along.edge)} to itself"
        hint = "name the edge that lies across from it"
        raise InputError(Problem("stretch-unclear", Severity.ERROR, says, f"{piece}.{along.edge}", hint))
    cuts = [
        across(
            garment,
            piece,
            (along.edge, along.start + share * (along.end - along.start)),
            (toward.edge, toward.end - share * (toward.end - toward.start)),
        )
        for share in shares
    ]
    fold = next((edge.path for edge in whole.edges if edge.fold), None)
    stays = fold.at(fold.length / 2) if fold is not None else whole.grain.at(0.5)
    return [cut.turned for cut in reversed(cuts)] if cuts[0].is_beyond(stays) else cuts


def is_sewn(garment: Garment, piece: str, edge: str) -> None:
    """Raises `InputError` (`edge-not-sewn`) where nothing holds what an edge has too much."""
    if not any((ref.piece, ref.edge) == (piece, edge) for seam in garment.seams for ref in (*seam.a, *seam.b)):
        says = f"the {spoken(edge)} of the {spoken(piece)} is sewn to nothing that could hold its fullness"
        hint = "gather or pleat an edge that is sewn, or use spread where it may hang free"
        raise InputError(Problem("edge-not-sewn", Severity.ERROR, says, f"{piece}.{edge}", hint))


def marked_on_both(garment: Garment, piece: str, edge: str, places: Iterable[float]) -> Garment:
    """A notch at places of an edge, mm, and one wherever its partner meets it there; none at the ends of the edge."""
    length = garment.piece(piece).edge(edge).length
    for at in places:
        if not AT_A_MARK_MM < at < length - AT_A_MARK_MM:
            continue
        known = [n for n in garment.piece(piece).notches_on(edge) if n.kind is not NotchKind.PLEAT]
        if any(abs(notch.at_mm - at) <= AT_A_MARK_MM for notch in known):
            continue
        garment = notched_across(garment, piece, {edge: [at]})
        whole = garment.piece(piece)
        garment = with_pieces(garment, replace(whole, notches=(*whole.notches, Notch(edge, at))))
    return garment


def fuller_seams(garment: Garment, piece: str, edge: str, more_mm: float, reason: str) -> tuple[Seam, ...]:
    """The seams of an edge that got longer while its partners stayed: longer on purpose, and why.

    Raises `InputError` (`fullness-against-ease`) where the other side of the seam is eased in already: then neither
    could be held by the other.
    """

    def times(side: tuple[EdgeRef, ...]) -> int:
        return sum((ref.piece, ref.edge) == (piece, edge) for ref in side)

    made = []
    for seam in garment.seams:
        more = more_mm * (times(seam.a) - times(seam.b))
        if not times(seam.a) + times(seam.b):
            made.append(seam)
            continue
        if more * seam.ease.mm < 0 and abs(seam.ease.mm) > NEARLY_NONE_MM:
            says = (
                f"in the seam {seam.name} the other side is longer already, by {abs(seam.ease.mm):.1f} mm that are "
                f"eased in; the {spoken(edge)} of the {spoken(piece)} cannot be gathered into it as well"
            )
            hint = "add fullness to the other side of the seam, or choose another seam"
            raise InputError(Problem("fullness-against-ease", Severity.ERROR, says, f"seam {seam.name}", hint))
        why = "; ".join(filter(None, (seam.reason, reason)))
        made.append(replace(seam, ease=seam.ease + Length(more, "fullness"), reason=why))
    return tuple(made)


def more_than_nothing(by: Length, where: str) -> None:
    """Raises `InputError` (`fullness-not-more`): fullness is added, never taken away."""
    if by.mm <= 0:
        says = f"fullness of {by.show()} was asked for, and there is none"
        hint = "give more than nothing; spread with less than nothing overlaps"
        raise InputError(Problem("fullness-not-more", Severity.ERROR, says, where, hint))
