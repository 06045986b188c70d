"""Allowances, notches, words and the cutting list."""

from tapeline.finish.choices import FinishChoices
from tapeline.finish.cutting_list import CuttingListRow
from tapeline.finish.finished import Finished
from tapeline.finish.finished_piece import FinishedPiece, Tick, Title
from tapeline.finish.finishing import finish
from tapeline.finish.turn_up import turn_up_doubts
from tapeline.finish.words import words

__all__ = [
    "CuttingListRow",
    "FinishChoices",
    "Finished",
    "FinishedPiece",
    "Tick",
    "Title",
    "finish",
    "turn_up_doubts",
    "words",
]
