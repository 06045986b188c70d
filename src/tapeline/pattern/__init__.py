"""The nouns of a pattern: garment, piece, edge, seam, notch, size, step."""

from tapeline.pattern.choice import Choice, Word, choice, choices_of, chosen_lengths, idle_in
from tapeline.pattern.cloth import Cloth, ClothSort
from tapeline.pattern.corrections import CONTRARY, ONE_SIDE, Correction, Corrections, FullBust
from tapeline.pattern.edge import Edge, EdgeKind
from tapeline.pattern.garment import Garment
from tapeline.pattern.girth import Girth
from tapeline.pattern.notch import Notch, NotchKind
from tapeline.pattern.piece import Cut, Mark, Piece
from tapeline.pattern.seam import EdgeRef, Join, Seam
from tapeline.pattern.size import Size, Source
from tapeline.pattern.step import Step, StepKind
from tapeline.pattern.width import width_along, width_at

__all__ = [
    "CONTRARY",
    "ONE_SIDE",
    "Choice",
    "Cloth",
    "ClothSort",
    "Correction",
    "Corrections",
    "Cut",
    "Edge",
    "EdgeKind",
    "EdgeRef",
    "FullBust",
    "Garment",
    "Girth",
    "Join",
    "Mark",
    "Notch",
    "NotchKind",
    "Piece",
    "Seam",
    "Size",
    "Source",
    "Step",
    "StepKind",
    "Word",
    "choice",
    "choices_of",
    "chosen_lengths",
    "idle_in",
    "width_along",
    "width_at",
]
