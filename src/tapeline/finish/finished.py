"""What leaves the drafting table: a garment with its pieces finished, and its cutting list."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tapeline.finish.cutting_list import CuttingListRow, cutting_list
from tapeline.finish.finished_piece import FinishedPiece, Title
from tapeline.pattern import Garment

__all__ = ["Finished"]


# Without slots: the cutting list is made once, when it is asked for; the drawing on the page needs none.
@dataclass(frozen=True)
class Finished:
    """A garment with all its pieces finished."""

    garment: Garment
    title: Title
    pieces: tuple[FinishedPiece, ...]

    @cached_property
    def cutting_list(self) -> tuple[CuttingListRow, ...]:
        """What has to come out of which cloth."""
        return cutting_list(self.pieces)
