"""The kinds of line on a pattern: how wide, how broken, and on which layer of the print.

Widths and dashes follow the series of ISO 128-2 (line width d; dash 12 d, long dash 24 d, gap 3 d, dot 0.5 d - from
memory). What each is used for is common practice in the trade: strong where the blade goes, thin where the needle goes.
"""

from __future__ import annotations

from enum import Enum

__all__ = ["Layer", "LineKind"]


class Layer(Enum):
    """What can be shown or hidden together."""

    CUT = "Cut line"
    SEAM = "Seam line"
    MARKS = "Marks"
    WORDS = "Words"


class LineKind(Enum):
    """Name, width in mm, dashes and gaps in mm (none: unbroken), layer."""

    CUT = ("cut-line", 0.5, (), Layer.CUT)
    SEAM = ("seam-line", 0.25, (), Layer.SEAM)
    FOLD = ("fold-line", 0.35, (8.4, 1.05, 0.175, 1.05), Layer.CUT)
    GRAIN = ("grain-line", 0.35, (), Layer.MARKS)
    NOTCH = ("notch", 0.5, (), Layer.MARKS)
    MARK = ("mark-line", 0.25, (3.0, 0.75), Layer.MARKS)

    def __init__(self, label: str, width_mm: float, dashes_mm: tuple[float, ...], layer: Layer) -> None:
        self.label = label
        self.width_mm = width_mm
        self.dashes_mm = dashes_mm
        self.layer = layer
