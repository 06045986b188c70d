"""How a hood is sewn: to the neckline, over the crown, and where its sides overlap."""

from __future__ import annotations

from tapeline.blocks.hood import Hood
from tapeline.blocks.hood_choices import HoodCut
from tapeline.draft import edge, only_if, seam
from tapeline.lengths import cm
from tapeline.pattern import Join, Seam

__all__ = ["hood_joins", "hood_seams"]

NO_EASE = cm(0)


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
