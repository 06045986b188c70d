"""How far off is still as drawn: what every check of a garment allows."""

from __future__ import annotations

import math

__all__ = ["SEWN_MM", "SOLVED_MM", "UNSEEN"]

SEWN_MM = 0.1
SOLVED_MM = 1e-6
UNSEEN = math.radians(0.5)
"""A turn so small cannot be seen on a neckline."""
