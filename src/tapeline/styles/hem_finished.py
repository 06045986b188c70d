"""The hem of a top as it is finished: turned up, faced, or bound."""

from __future__ import annotations

from dataclasses import replace
from functools import reduce
from operator import add

from tapeline.alter import face
from tapeline.blocks.hem_binding import hem_binding
from tapeline.blocks.hems import HemChoices, HemFinish
from tapeline.draft import Draft, Reading, edge, seam
from tapeline.lengths import Length
from tapeline.pattern import Edge, EdgeKind, Garment, Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["hem_finished"]

FRONTS = ("front_lower", "front", "front_side")
BACKS = ("back_lower", "back", "back_side")
"""Which pieces may have the hem, from the centre out: the lower ones where a block was cut off, or panels beside."""


def hem_finished(d: Draft, garment: Garment, c: HemChoices) -> Garment:
    """The garment with its hem finished as chosen.

    Raises `InputError` (`hem-finish-not-here`) at a vent or a facing that is cut on, and what facing says.
    """
    if c.finish is HemFinish.HEM:
        return garment
    fronts, backs = _with_hem(garment, FRONTS), _with_hem(garment, BACKS)
    _fits(c, fronts[0])
    if c.finish is HemFinish.FACING:
        return face(garment, [(piece.name, "hem") for piece in (*backs, *fronts)], c.facing, name="hem_facing")
    return _bound(d, garment, c, fronts, backs)


def _with_hem(garment: Garment, names: tuple[str, ...]) -> list[Piece]:
    pieces = {piece.name: piece for piece in garment.pieces}
    found = [pieces[name] for name in names if name in pieces]
    return [piece for piece in found if any(one.name == "hem" for one in piece.edges)]


def _fits(c: HemChoices, front: Piece) -> None:
    says = ""
    if c.vent.mm > 0:
        says = "the hem ends at a vent, whose corner is mitred with a hem that is turned up"
    elif any(one.name == "facing_hem" for one in front.edges):
        says = "the front's own facing is turned up with the hem"
    if says:
        raise InputError(
            Problem(
                "hem-finish-not-here",
                Severity.ERROR,
                f"{says}, so that it cannot end in a {c.finish}",
                "garment.hem.finish",
                'choose finish = "hem", or leave out the vent or the buttons. Nothing was drafted.',
            )
        )


def _bound(d: Draft, garment: Garment, c: HemChoices, fronts: list[Piece], backs: list[Piece]) -> Garment:
    before = len(d.steps)
    lengths = [
        d.measured(f"{half}_hem", f"Half the {half} hem", reduce(add, (_reading(garment, piece) for piece in pieces)))
        for half, pieces in (("front", fronts), ("back", backs))
    ]
    made = hem_binding(d, c.binding, lengths[0], lengths[1], opened=not fronts[0].on_fold)
    known = {size.name for size in garment.sizes}
    name = made.piece.name
    bound = tuple(_sewn(piece, c) if piece in (*fronts, *backs) else piece for piece in garment.pieces)
    return replace(
        garment,
        pieces=(*bound, made.piece),
        seams=(
            *garment.seams,
            seam(
                "hem",
                edge(name, "hem"),
                *(edge(piece.name, "hem").backward for piece in fronts),
                *(edge(piece.name, "hem") for piece in reversed(backs)),
                ease=made.ease,
                reason="the binding is a little shorter and stretched on, so that it lies flat",
            ),
            seam("hem_turned", edge(name, "hem_turned"), edge(name, "hem").backward),
            seam("hem_binding_ends", edge(name, made.seamed), edge(name, made.seamed)),
        ),
        sizes=(*garment.sizes, *(size for size in d.sizes.values() if size.name not in known)),
        steps=(*garment.steps, *d.steps[before:]),
    )


def _reading(garment: Garment, piece: Piece) -> Reading:
    """Along a hem; its line may have been drawn before the piece was cut apart."""
    path = piece.edge("hem").path
    label = next(label for label, line in reversed(garment.lines.items()) if line in (path, path.reversed()))
    return Reading(Length(path.length), (f"measured along the hem of the {piece.title.lower()}",), (label,))


def _sewn(piece: Piece, c: HemChoices) -> Piece:
    def as_bound(one: Edge) -> Edge:
        if one.name != "hem":
            return one
        return replace(one, kind=EdgeKind.SEAM, allowance_mm=c.binding.width.mm)

    return replace(piece, edges=tuple(map(as_bound, piece.edges)))
