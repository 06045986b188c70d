"""Allowances, notches, words and the cutting list."""

from tapeline.finish.choices import FinishChoices
from tapeline.finish.finished import CuttingListRow, Finished, FinishedPiece, Tick, Title
from tapeline.finish.finishing import finish

__all__ = ["CuttingListRow", "FinishChoices", "Finished", "FinishedPiece", "Tick", "Title", "finish"]
