"""How a hood is sewn: to the neckline, over the crown, and where its sides overlap."""

from __future__ import annotations

from tapeline.blocks.hood import Hood
from tapeline.blocks.hood_choices import HoodChoices, HoodCut
from tapeline.blocks.neck_shapes import STRAIGHT, NeckLine
from tapeline.draft import Draft, Place, edge, only_if, seam
from tapeline.lengths import Length, cm
from tapeline.pattern import Join, Seam
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.top import NecklineChoices, Top

__all__ = ["hood_joins", "hood_seams", "no_corner", "no_overlap", "out_on_shoulder"]

NO_EASE = cm(0)


def no_corner(c: NecklineChoices, *, opened: bool = False) -> None:
    """A hood follows a neckline in one sweep, or a v that is not `opened`; raises `InputError` (`hood-on-corner`)."""
    fits = "round or scoop" if opened else "round, scoop or v"
    if c.shape.line is not NeckLine.SWEEP or (opened and c.shape.fullness == STRAIGHT):
        raise InputError(
            Problem(
                "hood-on-corner",
                Severity.ERROR,
                "a hood's neck edge is one sweep: round a corner of the neckline it would stand up, and a v ends askew "
                "at a front that opens",
                "garment.neckline.shape",
                f"choose {fits} in garment.neckline.shape. Nothing was drafted.",
            )
        )


def no_overlap(c: HoodChoices) -> None:
    """On a front that opens the hood's sides meet; raises `InputError` (`hood-over-zip`) where they would overlap."""
    if c.overlap.mm:
        raise InputError(
            Problem(
                "hood-over-zip",
                Severity.ERROR,
                "the sides of the hood would overlap in front of the zip, and keep it from opening",
                "garment.hood.overlap",
                "set garment.hood.overlap to 0. Nothing was drafted.",
            )
        )


def out_on_shoulder(d: Draft, made: Top) -> Length:
    """How far down the shoulder the neckline begins."""
    end = Place(made.neckline.back.path.end, "back.neckline_shoulder")
    return d.measured(
        "neckline_out",
        "From the neck point out to where the neckline crosses the shoulder",
        end.reading_from(made.points.neck.back_neck_point),
    )


def hood_seams(made: Hood) -> tuple[Seam, ...]:
    """Hood to neckline, over the crown, and where its sides overlap."""
    three = made.cut is HoodCut.THREE
    neck = (*only_if(three, edge("hood_strip", "neckline").backward), edge("hood", "neckline"))
    under = only_if(made.overlap.mm > 0, edge("hood", "overlapped"))
    crown = edge("hood_strip", "side") if three else edge("hood", "crown")
    return (
        Seam(
            "neckline",
            (*neck, *under),
            (edge("back", "neckline"), edge("front", "neckline").backward),
            NO_EASE,
        ),
        seam("crown", edge("hood", "crown"), crown),
        *(seam("overlap", edge("hood", "overlap"), one.backward) for one in under),
    )


def hood_joins(made: Hood) -> tuple[Join, ...]:
    """Lines that run on over the crown seams: the face's edge and the neck's."""
    other, side = ("hood_strip", "side") if made.cut is HoodCut.THREE else ("hood", "crown")
    return tuple(Join(line, "crown", (("hood", line, "crown"), (other, line, side))) for line in ("face", "neckline"))
