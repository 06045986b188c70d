"""The layers of the convention, and what is done with what lies on them.

ASTM D6673-10 (withdrawn in 2019), read second hand; layers 84 to 87 from memory.
"""

from __future__ import annotations

from typing import Final

__all__ = [
    "ASIDE",
    "CHECK",
    "CORNER",
    "CURVE",
    "CUTOUT",
    "DRILL",
    "FOLD",
    "GRAIN",
    "INSIDE",
    "NOTCHES",
    "OUTLINE",
    "SEW",
    "STRIPE",
    "WORDS",
]

OUTLINE: Final = "1"
CORNER: Final = "2"
CURVE: Final = "3"
FOLD: Final = "6"
GRAIN: Final = "7"
INSIDE: Final = "8"
STRIPE: Final = "9"
CHECK: Final = "10"
CUTOUT: Final = "11"
DRILL: Final = "13"
SEW: Final = "14"
WORDS: Final = "15"
NOTCHES: Final = {"4": "V or slit", "80": "T", "81": "castle", "82": "check", "83": "U"}
ASIDE: Final = {
    "5": "a grade reference line; pieces are not graded",
    "12": "a layer that the convention leaves blank",
    "84": "for checking a transfer; it repeats layer 1",
    "85": "for checking a transfer; it repeats layer 8",
    "86": "for checking a transfer; it repeats layer 11",
    "87": "for checking a transfer; it repeats layer 14",
}
"""Known, and of no use here."""
