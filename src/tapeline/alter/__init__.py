"""Alterations: from garment to garment, keeping steps, seams, notches, joins and names, and telling what was done."""

from tapeline.alter.cut_line import CutLine, along, level, through, upright
from tapeline.alter.split import split

__all__ = ["CutLine", "along", "level", "split", "through", "upright"]
