"""The hood against the head: round it, over it, and the way out at the face."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.geometry import Line, Vector
from tapeline.measures import Wearer
from tapeline.pattern import Garment, Source, width_at
from tapeline.problems import Problem, Severity
from tapeline.truing.opening import head_of
from tapeline.units import Unit

__all__ = ["HoodFit", "hood_fit", "hood_problems"]

COVERED = 0.75
"""A hood leaves a quarter of the head's girth open at the face; less covered, it slips back. Our own share."""
RAISING_GIVES = 0.85
"""Above the shoulder the crown rises by about this much for each unit of ease in height (our own crowns; tested)."""
SAME_MM = 0.1
"""Below a pencil line."""


@dataclass(frozen=True, slots=True)
class HoodFit:
    """A hood, measured on its pieces, against the head; all in mm."""

    round_mm: float
    """Inside, from the face's edge round the back of the head to the face's edge."""
    over_mm: float
    """Inside, from shoulder seam over the crown to shoulder seam."""
    rim_mm: float
    """Along the face's edge: the way out for the head."""
    head_mm: float
    head_is: str
    over_head_mm: float
    """From where the neckline crosses one shoulder over the crown to the other."""
    over_taped: bool
    """Whether the way up to the crown was taped, and is not typical."""

    @property
    def to_cover_mm(self) -> float:
        """What of the head a hood has to reach round."""
        return self.head_mm * COVERED


def hood_fit(garment: Garment, wearer: Wearer) -> HoodFit | None:
    """Measure a hood; None where there is none, or where nothing says how large the head is."""
    head = head_of(wearer)
    pieces = {piece.name: piece for piece in garment.pieces}
    if "hood" not in pieces or head is None:
        return None
    side, points = pieces["hood"], garment.points
    shoulder = points["hood.shoulder"]
    crossed = side.edge("crown").path.crossings(Line(shoulder, shoulder + Vector(0, 1)))
    high = max((point.y for point in crossed), default=shoulder.y) - shoulder.y
    across, over, rim = width_at(side, points["hood.back_of_head"]), high, side.edge("face").length
    if "hood_strip" in pieces:
        strip = pieces["hood_strip"]
        edge = strip.edge("side")
        notch = strip.notches_on("side")[0].at_mm
        across += edge.path.at(notch).x
        over += max((edge.path.at(side.edge("crown").path.length_to(point)).x for point in crossed), default=0.0)
        rim += strip.edge("face").length
    sizes = {size.name: size for size in garment.sizes}
    over_taped = sizes["hood_neck_to_crown"].source is Source.TAPED
    return HoodFit(2 * across, 2 * over, 2 * rim, *head, 2 * sizes["hood_up"].length.mm, over_taped)


def hood_problems(fit: HoodFit | None, unit: Unit) -> Iterator[Problem]:
    """A hood that does not reach round the head, does not reach over it, or does not let it out."""
    if fit is None:
        return

    def show(mm: float) -> str:
        return f"{mm / unit.mm:.1f} {unit.sign}"

    severity = Severity.ERROR if fit.head_is == "taped" else Severity.DOUBT
    short = fit.to_cover_mm - fit.round_mm
    if short > SAME_MM:
        yield Problem(
            "hood-shallow",
            severity,
            f"the hood reaches {show(fit.round_mm)} round the head; of {show(fit.head_mm)} ({fit.head_is}) it has to "
            f"cover {show(fit.to_cover_mm)}, or it slips back",
            "hood.crown",
            f"make garment.hood.depth_ease larger by {show(short / 2)}",
            ("garment.hood.depth_ease", short / 2),
        )
    short = fit.over_head_mm - fit.over_mm
    if short > SAME_MM:
        yield Problem(
            "hood-low",
            Severity.ERROR if fit.over_taped else Severity.DOUBT,
            f"the hood reaches {show(fit.over_mm)} over the crown; from where the neckline crosses one shoulder to "
            f"where it crosses the other are {show(fit.over_head_mm)}",
            "hood.crown",
            f"make garment.hood.height_ease larger by {show(short / 2 / RAISING_GIVES)}",
            ("garment.hood.height_ease", short / 2 / RAISING_GIVES),
        )
    short = fit.head_mm - fit.rim_mm
    if short > SAME_MM:
        yield Problem(
            "hood-rim-small",
            severity,
            f"the edge round the face is {show(fit.rim_mm)} long and the head {show(fit.head_mm)} ({fit.head_is}): "
            "the head does not come out",
            "hood.face",
            f"make garment.hood.height_ease larger by {show(short / 2)}",
            ("garment.hood.height_ease", short / 2),
        )
