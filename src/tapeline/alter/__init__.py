"""Alterations: from garment to garment, keeping steps, seams, notches, joins and names, and telling what was done."""

from tapeline.alter.cut_line import CutLine, across, along, level, through, upright
from tapeline.alter.extend import extend
from tapeline.alter.face import face
from tapeline.alter.gather import gather
from tapeline.alter.hem import hem
from tapeline.alter.join import join
from tapeline.alter.lengthen import lengthen
from tapeline.alter.loosened import loosened
from tapeline.alter.move_seam import move_seam
from tapeline.alter.opening import Edges
from tapeline.alter.pleat import pleat
from tapeline.alter.remarked import remarked
from tapeline.alter.split import split
from tapeline.alter.spread import Spread, spread
from tapeline.alter.stretch import Stretch
from tapeline.alter.swing import swing
from tapeline.alter.true_line import true_line
from tapeline.alter.turn import grain_upright
from tapeline.alter.two_ways import SAME_MM, Placed, TwoWays, two_ways
from tapeline.alter.uneven import uneven
from tapeline.alter.unfold import mirror, unfold

__all__ = [
    "SAME_MM",
    "CutLine",
    "Edges",
    "Placed",
    "Spread",
    "Stretch",
    "TwoWays",
    "across",
    "along",
    "extend",
    "face",
    "gather",
    "grain_upright",
    "hem",
    "join",
    "lengthen",
    "level",
    "loosened",
    "mirror",
    "move_seam",
    "pleat",
    "remarked",
    "split",
    "spread",
    "swing",
    "through",
    "true_line",
    "two_ways",
    "uneven",
    "unfold",
    "upright",
]
