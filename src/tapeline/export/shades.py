"""Colours for a map of values: pale for little, dark for much, so that they hold in grey and for every eye."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

__all__ = ["Scale", "scale_for"]

Array = NDArray[np.float64]

_ANCHORS = np.array(
    [[255.0, 246.0, 178.0], [186.0, 205.0, 150.0], [92.0, 155.0, 160.0], [38.0, 92.0, 145.0], [18.0, 26.0, 78.0]]
)
"""From straw to dark blue, each darker than the last. Own choice: those who do not tell red from green do tell yellow
from blue, and light from dark."""
_OUTLIERS = 0.005
"""So much of the values at either end does not stretch the scale; the legend says that there is more."""
_STEPS = 9


@dataclass(frozen=True, slots=True)
class Scale:
    """Which value has which colour."""

    ticks: tuple[float, ...]
    """Rising; the first has the palest colour and the last the darkest."""
    least: float
    most: float
    """What the values really reach."""

    def colours(self, values: Array) -> NDArray[np.uint8]:
        """(n, 3). What lies beyond an end has the colour of the end, which the words at the ticks say.

        >>> Scale((0.0, 5.0, 10.0), 0.0, 12.0).colours(np.array([0.0, 10.0, 12.0])).tolist()
        [[255, 246, 178], [18, 26, 78], [18, 26, 78]]
        """
        low, high = self.ticks[0], self.ticks[-1]
        at = np.clip((values - low) / (high - low), 0, 1) * (len(_ANCHORS) - 1)
        shown = [np.interp(at, np.arange(len(_ANCHORS)), _ANCHORS[:, k]) for k in range(3)]
        return np.round(np.column_stack(shown)).astype(np.uint8)

    def words(self, unit: str = "") -> tuple[str, ...]:
        """What stands at each tick.

        >>> Scale((0.0, 0.5, 1.0), 0.0, 1.4).words()
        ('0', '0.5', '1 or more')
        >>> Scale((0.0, 5.0), -1.0, 5.0).words(" mm")
        ('0 mm or less', '5 mm')
        """
        names = [f"{tick:g}{unit}" for tick in self.ticks]
        if self.least < self.ticks[0]:
            names[0] += " or less"
        if self.most > self.ticks[-1]:
            names[-1] += " or more"
        return tuple(names)


def scale_for(values: Array) -> Scale:
    """Round ticks over the values; nothing is always on the scale.

    >>> scale_for(np.linspace(0, 11, 50)).ticks
    (0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0)
    """
    low, high = (float(value) for value in np.quantile(values, [_OUTLIERS, 1 - _OUTLIERS]))
    low, high = min(low, 0.0), max(high, 0.0)
    span = max(high - low, 1e-6)
    power = 10.0 ** np.floor(np.log10(span / _STEPS))
    step = float(next(k for k in (1, 2, 5, 10) if k * power * _STEPS >= span * (1 - 1e-9)) * power)
    first, last = np.floor(low / step + 1e-9), np.ceil(high / step - 1e-9)
    last = max(last, first + 1)
    ticks = tuple(round(float(k) * step, 9) + 0.0 for k in np.arange(first, last + 1))
    return Scale(ticks, float(values.min()), float(values.max()))
