"""A traced slope: radians that become a fall over a run."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.lengths import Length

__all__ = ["Angle"]


@dataclass(frozen=True, slots=True)
class Angle:
    """An angle that was taken on the body.

    >>> from tapeline.lengths import cm
    >>> Angle(math.atan2(4, 14), "shoulder_slope").fall_over(cm(14)).show()
    '4 cm'
    """

    radians: float
    name: str

    def fall_over(self, run: Length) -> Length:
        """How far a line at this slope falls over a level run."""
        return Length(run.mm * math.tan(self.radians), f"fall_of_the_{self.name}_over_{run.show()}")
