"""The neck opening: stretched, it must go over the head."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.measures import Wearer, large_head
from tapeline.pattern import Cloth, Garment
from tapeline.problems import Problem, Severity
from tapeline.units import Unit

__all__ = ["Opening", "neck_opening", "opening_problems"]

LOWERING_GIVES = 1.7
"""A neckline grows by about this much for each unit it is lowered at the front (our own necklines; tested)."""
SURELY = 1.1
"""That number holds within a tenth: a tenth more, and the head passes."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A pull-on neck, stretched, against a head; all in mm."""

    neckline_mm: float
    band_mm: float
    stretched_mm: float
    """What gives least: the neckline in its cloth, or the band in its own."""
    limit: str
    """Which of the two that is."""
    head_mm: float
    head_is: str
    """`taped`, or where a large head is from."""


def neck_opening(garment: Garment, wearer: Wearer, cloth: Cloth, band_stretch: float) -> Opening | None:
    """The opening of a garment that is pulled over the head.

    None when it has no band, or when nothing says how large the head is.
    """
    seam = next((seam for seam in garment.seams if seam.name == "neckline"), None)
    if wearer.given("head_girth"):
        head, head_is = wearer["head_girth"], "taped"
    else:
        large = large_head(wearer.figure)
        if large is None:
            return None
        head, head_is = large.mm, "not taped; as large as 99 of 100 heads"
    if seam is None:
        return None
    # Both sides are halves.
    neckline, band = 2 * garment.run_length(seam.b), 2 * garment.run_length(seam.a)
    cloth_opens, band_opens = neckline * (1 + cloth.stretch_across / 100), band * (1 + band_stretch / 100)
    limit = "the neckline in its cloth" if cloth_opens <= band_opens else "the band in its cloth"
    return Opening(neckline, band, min(cloth_opens, band_opens), limit, head, head_is)


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

        lower = short / (opening.stretched_mm / opening.neckline_mm) / LOWERING_GIVES * SURELY
        take = "" if wearer.given("head_girth") else "take the tape head girth; "
        yield Problem(
            "head-does-not-pass",
            Severity.ERROR if wearer.given("head_girth") else Severity.DOUBT,
            f"the neck opens to {show(opening.stretched_mm)} at most ({opening.limit}); the head is "
            f"{show(opening.head_mm)} ({opening.head_is})",
            "seam neckline",
            f"{take}lower the front by about {show(lower)} more "
            f"(garment.neckline.lower_front), or choose a band or cloth that stretches more",
            ("garment.neckline.lower_front", lower),
        )
