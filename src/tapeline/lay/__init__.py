"""The lay plan: where every piece lies on the cloth, so that little is wasted."""

from tapeline.lay.cloth import Direction, Flaw, LayCloth, Spread
from tapeline.lay.instance import Instance, Packed, pack, read_instance
from tapeline.lay.kept import kept, taken_up
from tapeline.lay.matching import matches
from tapeline.lay.need import allowed_turns, need
from tapeline.lay.piece import LayLine, LayPiece
from tapeline.lay.pieces import cloths_of, lay_pieces, wanted_garments
from tapeline.lay.plan import LayPlan, Placement
from tapeline.lay.proof import faults
from tapeline.lay.remnant import Remnant, remnants
from tapeline.lay.search import lay
from tapeline.lay.settings import LaySettings

__all__ = [
    "Direction",
    "Flaw",
    "Instance",
    "LayCloth",
    "LayLine",
    "LayPiece",
    "LayPlan",
    "LaySettings",
    "Packed",
    "Placement",
    "Remnant",
    "Spread",
    "allowed_turns",
    "cloths_of",
    "faults",
    "kept",
    "lay",
    "lay_pieces",
    "matches",
    "need",
    "pack",
    "read_instance",
    "remnants",
    "taken_up",
    "wanted_garments",
]
