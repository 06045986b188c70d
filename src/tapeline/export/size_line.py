"""Line styles that tell the sizes of a nest apart without colour: dashes and dots.

The kinds are basic line types of ISO 128-2 (from memory): lengths in line widths d are dash 12, long dash 24, short
dash 6, dot 0.5, gap 3 and wide gap 18. The number is the type's in the standard's table.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["MOST_SIZES", "SizeLine", "size_lines"]

DASH, LONG, SHORT, DOT, GAP, WIDE = 12.0, 24.0, 6.0, 0.5, 3.0, 18.0
CUT_MM = 0.5
SEW_MM = 0.25


@dataclass(frozen=True, slots=True)
class SizeLine:
    """How the lines of one size look."""

    number: int
    """The type's, in the table of the standard."""
    name: str
    """`long dashes and dots`."""
    in_widths: tuple[float, ...]
    """Lengths of marks and gaps in line widths; none: unbroken."""

    def dashes_mm(self, width_mm: float) -> tuple[float, ...]:
        """Marks and gaps of a line of a width."""
        return tuple(length * width_mm for length in self.in_widths)


_UNBROKEN = SizeLine(1, "unbroken", ())
# Neighbours in the list look as different as the standard's kinds allow: sizes next to each other lie close together.
_BROKEN = (
    SizeLine(2, "dashes", (DASH, GAP)),
    SizeLine(4, "long dashes and dots", (LONG, GAP, DOT, GAP)),
    SizeLine(9, "long dashes and two short ones", (LONG, GAP, SHORT, GAP, SHORT, GAP)),
    SizeLine(7, "dots", (DOT, GAP)),
    SizeLine(5, "long dashes and two dots", (LONG, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(8, "long and short dashes", (LONG, GAP, SHORT, GAP)),
    SizeLine(10, "dashes and dots", (DASH, GAP, DOT, GAP)),
    SizeLine(12, "dashes and two dots", (DASH, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(6, "long dashes and three dots", (LONG, GAP, DOT, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(11, "two dashes and a dot", (DASH, GAP, DASH, GAP, DOT, GAP)),
    SizeLine(13, "two dashes and two dots", (DASH, GAP, DASH, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(14, "dashes and three dots", (DASH, GAP, DOT, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(15, "two dashes and three dots", (DASH, GAP, DASH, GAP, DOT, GAP, DOT, GAP, DOT, GAP)),
    SizeLine(3, "dashes far apart", (DASH, WIDE)),
)
MOST_SIZES = 1 + len(_BROKEN)
"""As many as there are kinds of lines: with more, two sizes would look alike."""


def size_lines(count: int) -> tuple[SizeLine, ...]:
    """A style for each of so many sizes, from small to large; the middle one is unbroken.

    >>> [line.name for line in size_lines(3)]
    ['dashes', 'unbroken', 'long dashes and dots']
    """
    if count > MOST_SIZES:
        raise ValueError(f"there are line styles for {MOST_SIZES} sizes, not for {count}")
    middle = (count - 1) // 2
    return (*_BROKEN[:middle], _UNBROKEN, *_BROKEN[middle : count - 1])
