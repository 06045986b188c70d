"""The noun: a size that was not taped, with how far it may be off."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import NormalDist

__all__ = ["Estimate"]


@dataclass(frozen=True, slots=True)
class Estimate:
    """What wearers with these tapes measure on average, and how much they differ.

    >>> wrist = Estimate(151, 5.1)
    >>> wrist.mm, [round(end, 1) for end in wrist.span()], round(wrist.percentile(0.99))
    (151, [140.8, 161.2], 163)
    """

    value: float
    """The mean: mm, or radians for an angle. `mm` and `radians` say which and refuse the other."""
    spread: float
    """The standard deviation, in the same unit."""
    source: str = "survey"
    extrapolates: bool = False
    """Whether the tapes lie outside those of the survey, so that the estimate is a continued line, not experience."""
    angle: bool = False

    @property
    def mm(self) -> float:
        """The mean of a length."""
        return self._as(self.value, angle=False)

    @property
    def sd_mm(self) -> float:
        """The standard deviation of a length."""
        return self._as(self.spread, angle=False)

    @property
    def radians(self) -> float:
        """The mean of an angle."""
        return self._as(self.value, angle=True)

    @property
    def sd_radians(self) -> float:
        """The standard deviation of an angle."""
        return self._as(self.spread, angle=True)

    def span(self, deviations: float = 2) -> tuple[float, float]:
        """Between which values most such wearers lie: 19 of 20 within two standard deviations."""
        return self.value - deviations * self.spread, self.value + deviations * self.spread

    def percentile(self, share: float) -> float:
        """The value that this share of such wearers does not exceed.

        Args:
            share: Between 0 and 1, ends excluded.
        """
        return NormalDist(self.value, self.spread).inv_cdf(share)

    def deviations(self, value: float) -> float:
        """How many standard deviations a value lies above the mean.

        >>> Estimate(750, 20).deviations(700)
        -2.5
        """
        return (value - self.value) / self.spread

    def _as(self, number: float, *, angle: bool) -> float:
        if self.angle != angle:
            right, wrong = ("radians", "mm") if self.angle else ("mm", "radians")
            raise TypeError(f"this size is in {right}, not in {wrong}")
        return number
