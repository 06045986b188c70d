"""The neck opening: stretched, it must go over the head."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.measures import Wearer, large_head
from tapeline.pattern import Cloth, Edge, EdgeKind, Garment
from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["Opening", "head_of", "neck_opening", "opening_problems"]

LOWERING_GIVES = 1.7
"""A neckline grows by about this much for each unit it is lowered at the front (our own necklines; tested)."""
WIDENING_GIVES = 3.1
"""One with a corner at the shoulder grows by about this much for each unit that it is widened there (the same)."""
SURELY = 1.1
"""That number holds within a tenth: a tenth more, and the head passes."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A pull-on neck, stretched, against a head; all in mm."""

    neckline_mm: float
    band_mm: float
    """What is sewn to it, a band or a facing; the neckline itself, where it is turned up."""
    stretched_mm: float
    """What gives least, the neckline or the band in its cloth; and both sides of a slit, which do not stretch."""
    limit: str
    """Which of the two that is."""
    head_mm: float
    head_is: str
    """`taped`, or where a large head is from."""
    wide: bool = False
    """Whether the neckline is one that is widened, not lowered."""


def head_of(wearer: Wearer) -> tuple[float, str] | None:
    """The girth of the head in mm and where it is from; None when nothing says how large it is."""
    if wearer.given("head_girth"):
        return wearer["head_girth"], "taped"
    large = large_head(wearer.figure)
    return None if large is None else (large.mm, "not taped; as large as 99 of 100 heads")


def neck_opening(garment: Garment, wearer: Wearer, cloth: Cloth) -> Opening | None:
    """The opening of a garment that is pulled over the head.

    None when its neck is not finished, or when nothing says how large the head is.
    """
    seam = next((seam for seam in garment.seams if seam.name == "neckline"), None)
    turned = sum(edge.length for edge in turned_necklines(garment))
    found = head_of(wearer)
    if found is None or (seam is None and not turned):
        return None
    head, head_is = found
    # Both sides are halves, unless the garment was drafted left and right.
    halves = [seam for seam in garment.seams if seam.name in ("neckline", "neckline_left")]
    if halves:
        neckline, band = (
            2 * sum(map(garment.run_length, sides)) / len(halves)
            for sides in zip(*((s.b, s.a) for s in halves), strict=True)
        )
    else:
        neckline = band = 2 * turned
    slit, slit_is = max((keyhole(garment), "keyhole"), (placket(garment), "placket"))
    band_stretch = cloth.stretch_across if seam is None or seam.stretch is None else seam.stretch
    cloth_opens, band_opens = neckline * (1 + cloth.stretch_across / 100), band * (1 + band_stretch / 100)
    # A slit only parts: its facing is cut along, and does not stretch there.
    limit = "the neckline in its cloth"
    if seam is not None and band_opens < cloth_opens:
        limit = f"the {garment.piece(seam.a[0].piece).title.lower()} in its cloth"
    limit += f", and both sides of its {slit_is}" if slit else ""
    return Opening(
        neckline, band, min(cloth_opens, band_opens) + 2 * slit, limit, head, head_is, to_be_widened(garment)
    )


def placket(garment: Garment) -> float:
    """Millimetres down one side of a placket from the neckline, 0 without one."""
    return sum(garment.run_length(seam.b) for seam in garment.seams if seam.name == "placket")


def turned_necklines(garment: Garment) -> list[Edge]:
    """The necklines of the halves that are turned up, and not sewn to anything."""
    every = (edge for piece in garment.pieces for edge in piece.edges)
    return [edge for edge in every if edge.name == "neckline" and edge.kind is EdgeKind.HEM]


def keyhole(garment: Garment) -> float:
    """Millimetres along one side of the keyhole at the neckline, 0 without one."""
    marks = (mark for piece in garment.pieces for mark in piece.marks)
    return max((mark.path.length for mark in marks if mark.name == "keyhole"), default=0.0)


def to_be_widened(garment: Garment) -> bool:
    """Whether lowering the neckline gives little or nothing: a boat neck is wide and flat, a funnel is level."""
    return (
        any(join.line == "neckline" and join.corner for join in garment.joins) or "front.funnel_top" in garment.points
    )


def opening_problems(opening: Opening | None, wearer: Wearer, *, pull_on: bool, unit: Unit) -> Iterator[Problem]:
    """An opening that does not go over the head."""
    if not pull_on:
        return
    if opening is None:
        yield Problem(
            "head-not-taped",
            Severity.DOUBT,
            "nothing says whether the neck goes over the head: there is no tape for it, and no survey of this figure",
            "tapes.head_girth",
            "take the tape head girth",
        )
        return
    short = opening.head_mm - opening.stretched_mm
    if short > 0:

        def show(mm: float) -> str:
            return f"{mm / unit.mm:.1f} {unit.sign}"

        gives = WIDENING_GIVES if opening.wide else LOWERING_GIVES
        more = short / (opening.stretched_mm / opening.neckline_mm) / gives * SURELY
        does, key = (
            ("widen it at each shoulder", "garment.neckline.widen")
            if opening.wide
            else ("lower the front", "garment.neckline.lower_front")
        )
        take = "" if wearer.given("head_girth") else "take the tape head girth; "
        yield Problem(
            "head-does-not-pass",
            Severity.ERROR if wearer.given("head_girth") else Severity.DOUBT,
            f"the neck opens to {show(opening.stretched_mm)} at most ({opening.limit}); the head is "
            f"{show(opening.head_mm)} ({opening.head_is})",
            "seam neckline",
            f"{take}{does} by about {show(more)} more ({key}), or choose a band or cloth that stretches more",
            (key, more),
        )
