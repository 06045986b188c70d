"""The lay plan: where every piece lies on the cloth, so that little is wasted."""

from tapeline.lay.cloth import Direction, Flaw, LayCloth, Spread
from tapeline.lay.kept import kept, taken_up
from tapeline.lay.need import allowed_turns, need
from tapeline.lay.piece import LayLine, LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.lay.proof import faults

__all__ = [
    "Direction",
    "Flaw",
    "LayCloth",
    "LayLine",
    "LayPiece",
    "LayPlan",
    "Placement",
    "Spread",
    "allowed_turns",
    "faults",
    "kept",
    "need",
    "taken_up",
]
