"""A long sleeve with a buttoned cuff: its hem slit, pleated or gathered, and sewn to the cuff."""

from __future__ import annotations

from dataclasses import replace

from tapeline.blocks.shirt_cuff import cuffed_hem, shirt_cuff, slit_binding
from tapeline.blocks.sleeve_fullness import CuffFullness, SleeveEnd
from tapeline.draft import Draft, Drawn, edge, seam, sewn
from tapeline.lengths import Length
from tapeline.pattern import Garment, Join, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["cuffed"]

WHY = {
    CuffFullness.PLEATS: "what the sleeve is wider than its cuff is laid in pleats in front of the slit",
    CuffFullness.GATHERS: "what the sleeve is wider than its cuff is gathered evenly",
}


def cuffed(d: Draft, garment: Garment, c: SleeveEnd, *, at_wrist: bool) -> Garment:
    """The garment with its cuffs.

    Raises `InputError`: `cuff-not-at-wrist`, `nothing-to-gather`, `slit-too-long`, `pleats-past-seam`.
    """
    if not at_wrist:
        raise InputError(
            Problem(
                "cuff-not-at-wrist",
                Severity.ERROR,
                "a buttoned cuff closes round the wrist, and this sleeve ends higher up",
                "garment.sleeve.end",
                'make garment.sleeve.length "long", or garment.sleeve.end "rolled" or "band". Nothing was drafted.',
            )
        )
    before = len(d.steps)
    sleeve = garment.piece("sleeve")
    hem = Drawn("sleeve.hem", sleeve.edge("hem").path)
    long = d.measured("gathered_hem", "Along the sleeve's hem, to be sewn to the cuff", Length(hem.path.length))
    cuff = shirt_cuff(d, c, long)
    underarm = Length(sleeve.edge("underarm_back").length, "underarm_seam")
    parts = cuffed_hem(d, c, hem, cuff.fullness, underarm)
    at = next(k for k, one in enumerate(sleeve.edges) if one.name == "hem")
    slit = replace(
        sleeve,
        edges=(
            *sleeve.edges[:at],
            sewn("hem", parts.front),
            sewn("hem_back", parts.back),
            *sleeve.edges[at + 1 :],
        ),
        notches=(*(n for n in sleeve.notches if n.edge != "hem"), *parts.notches),
        marks=(*sleeve.marks, *parts.marks),
    )
    binding = slit_binding(d, c)
    known = {size.name for size in garment.sizes}
    return replace(
        garment,
        pieces=(*(slit if piece is sleeve else piece for piece in garment.pieces), cuff.piece, binding),
        seams=(*garment.seams, *_seams(cuff.piece, cuff.fullness, c.fullness)),
        joins=tuple(map(_to_the_back_part, garment.joins)),
        sizes=(*garment.sizes, *(size for size in d.sizes.values() if size.name not in known)),
        steps=(*garment.steps, *d.steps[before:]),
    )


def _seams(cuff: Piece, fullness: Length, how: CuffFullness) -> tuple[Seam, ...]:
    """From the slit round the sleeve and back to it; the lap and both ends of the cuff to themselves."""
    name = cuff.name
    return (
        Seam(
            "cuff",
            (edge("sleeve", "hem_back"), edge("sleeve", "hem")),
            (edge(name, "sleeve").backward,),
            fullness,
            reason=WHY[how],
        ),
        seam("cuff_turned", edge(name, "sleeve_turned"), edge(name, "sleeve").backward),
        seam("cuff_lap", edge(name, "lap_turned"), edge(name, "lap").backward),
        seam("cuff_end", edge(name, "end"), edge(name, "end")),
        seam("cuff_lap_end", edge(name, "lap_end"), edge(name, "lap_end")),
    )


def _to_the_back_part(join: Join) -> Join:
    if join.line != "sleeve hem":
        return join
    one, other = ((piece, "hem_back" if seam == "underarm_back" else line, seam) for piece, line, seam in join.corners)
    return replace(join, corners=(one, other))
