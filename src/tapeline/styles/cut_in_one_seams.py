"""How a top whose sleeves are cut in one with it is sewn: over the arm, under it, down the side; and the gusset."""

from __future__ import annotations

from tapeline.blocks.outline import SideLines
from tapeline.draft import edge, only_if, seam
from tapeline.pattern import Join, Seam

__all__ = ["cut_in_one_joins", "cut_in_one_seams", "gusset_seams"]


def cut_in_one_seams() -> tuple[Seam, ...]:
    """Over the arm, under it, and the side."""
    return tuple(seam(name, edge("front", name), edge("back", name)) for name in ("overarm", "underarm", "side"))


def gusset_seams() -> tuple[Seam, ...]:
    """The gusset's four sides to the two slits."""
    return (
        seam("gusset_front_sleeve", edge("gusset", "front_sleeve"), edge("front", "slit_sleeve")),
        seam("gusset_front_side", edge("gusset", "front_side"), edge("front", "slit_side")),
        seam("gusset_back_side", edge("gusset", "back_side"), edge("back", "slit_side").backward),
        seam("gusset_back_sleeve", edge("gusset", "back_sleeve"), edge("back", "slit_sleeve").backward),
    )


def cut_in_one_joins(side: SideLines, corner: str) -> tuple[Join, ...]:
    """Neckline and sleeve hem run on over the arm, the sleeve hem under it, the hem over the side but for a vent.

    `corner` says why the neckline is meant to bend at the shoulder.
    """
    return (
        Join("neckline", "overarm", (("front", "neckline", "overarm"), ("back", "neckline", "overarm")), corner),
        Join("sleeve hem", "overarm", (("front", "sleeve_hem", "overarm"), ("back", "sleeve_hem", "overarm"))),
        Join("sleeve hem", "underarm", (("front", "sleeve_hem", "underarm"), ("back", "sleeve_hem", "underarm"))),
        *only_if(side.vent is None, Join("hem", "side", (("front", "hem", "side"), ("back", "hem", "side")))),
    )
