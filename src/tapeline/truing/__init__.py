"""Findings before cloth is cut: seams walked, joins, folds, girths, opening, reach."""

from tapeline.truing.girths import Meaning, MeasuredGirth
from tapeline.truing.joins import JOIN_TOLERANCE, JoinAngle, SquareAngle
from tapeline.truing.opening import Opening
from tapeline.truing.reach import Hang
from tapeline.truing.roll import LaidPiece, Placement, Rolled, Run, roll
from tapeline.truing.truing import Truing, true
from tapeline.truing.walk import SeamWalk

__all__ = [
    "JOIN_TOLERANCE",
    "Hang",
    "JoinAngle",
    "LaidPiece",
    "Meaning",
    "MeasuredGirth",
    "Opening",
    "Placement",
    "Rolled",
    "Run",
    "SeamWalk",
    "SquareAngle",
    "Truing",
    "roll",
    "true",
]
