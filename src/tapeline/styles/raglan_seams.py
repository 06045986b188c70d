"""How a raglan is sewn: body to sleeve, the two halves of the sleeve, and the neckline over all four parts."""

from __future__ import annotations

from dataclasses import replace

from tapeline.blocks.outline import SideLines
from tapeline.draft import edge, seam
from tapeline.pattern import Join, Seam
from tapeline.styles.neck import FinishedEdge

__all__ = ["over_the_sleeves", "raglan_joins", "raglan_seams"]

HALVES = ("front", "back")


def raglan_seams() -> tuple[Seam, ...]:
    """Raglan seams, overarm, underarm and side."""
    return (
        *(seam(f"raglan_{half}", edge(f"{half}_sleeve", "raglan").backward, edge(half, "raglan")) for half in HALVES),
        seam("overarm", edge("front_sleeve", "overarm"), edge("back_sleeve", "overarm")),
        seam("underarm", edge("front_sleeve", "underarm"), edge("back_sleeve", "underarm")),
        seam("side", edge("front", "side"), edge("back", "side")),
    )


def raglan_joins(side: SideLines, corner: str) -> tuple[Join, ...]:
    """Lines that run on over the raglan, the overarm, the underarm and the side; at a vent the hem ends.

    `corner` says why the neckline is meant to bend at the shoulder.
    """
    return (
        *(
            Join("neckline", f"raglan_{half}", ((half, "neckline", "raglan"), (f"{half}_sleeve", "neckline", "raglan")))
            for half in HALVES
        ),
        replace(over("neckline", "overarm", "front_sleeve", "back_sleeve"), corner=corner),
        over("raglan", "side", *HALVES),
        over("raglan", "underarm", "front_sleeve", "back_sleeve"),
        *(() if side.vent else (over("hem", "side", *HALVES),)),
        Join("sleeve hem", "overarm", (("front_sleeve", "hem", "overarm"), ("back_sleeve", "hem", "overarm"))),
        Join("sleeve hem", "underarm", (("front_sleeve", "hem", "underarm"), ("back_sleeve", "hem", "underarm"))),
    )


def over(line: str, crossed: str, one: str, other: str) -> Join:
    """A line that runs from one piece into another over a seam of theirs."""
    return Join(line, crossed, ((one, line, crossed), (other, line, crossed)))


def over_the_sleeves(finish: FinishedEdge) -> FinishedEdge:
    """The finish of a neck, sewn to the neckline of body and sleeves."""
    run = (
        edge("back", "neckline"),
        edge("back_sleeve", "neckline"),
        edge("front_sleeve", "neckline").backward,
        edge("front", "neckline").backward,
    )
    return replace(finish, seams=tuple(replace(s, b=run) if s.name == "neckline" else s for s in finish.seams))
