"""The tools of a machine that cuts: a name, a colour, and the lines that each of them follows."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["USUAL_TOOLS", "Lines", "Tool"]


class Lines(StrEnum):
    """What a tool can follow."""

    CUT = "cut"
    """Where the piece ends."""
    NOTCH = "notch"
    SEAM = "seam"
    GRAIN = "grain"
    MARK = "mark"
    """Lines on the piece, such as a place for a pocket, a crease or a hole."""
    WORDS = "words"
    """The piece's name and whose it is."""


@dataclass(frozen=True, slots=True)
class Tool:
    """One tool, as the machine's own program tells it apart: by colour, or by the name of its group."""

    name: str
    """`knife`."""
    colour: str
    """`#ff0000`."""
    lines: tuple[Lines, ...]


USUAL_TOOLS = (
    Tool("cut", "#ff0000", (Lines.CUT, Lines.NOTCH)),
    Tool("mark", "#0000ff", (Lines.GRAIN, Lines.MARK, Lines.WORDS)),
)
"""Red cuts and blue draws (common practice, no source); seam lines are left off, as cloth shows them."""
