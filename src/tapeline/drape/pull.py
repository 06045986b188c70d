"""A `Pull` is how a cloth stretches one way: how many newtons a metre of its width it takes to make it longer."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Pull", "green"]

CLOSE = 1e-12
HALVINGS = 200


def green(stretch: float) -> float:
    """Green's strain of a stretch: (l^2 - 1) / 2 with l = 1 + stretch.

    It is what the solver counts in, because a cloth that only turns has none of it.

    >>> round(green(0.10), 4)
    0.105
    """
    return ((1 + stretch) ** 2 - 1) / 2


@dataclass(frozen=True, slots=True)
class Pull:
    """A strip pulled along its length, free to narrow: tension = l E (k + s E^2), with E Green's strain.

    >>> soft = Pull(k=150.0)
    >>> round(soft.tension(0.10), 3), round(soft.stretch(17.325), 4)
    (17.325, 0.1)
    """

    k: float
    """Newtons a metre of width for small stretches."""
    s: float = 0.0
    """How it stiffens, newtons a metre: none for a cloth that pulls as a spring does."""

    def tension(self, stretch: float) -> float:
        """Newtons a metre of the width as cut, at a stretch (0.1 is a tenth longer)."""
        strain = green(stretch)
        return (1 + stretch) * strain * (self.k + self.s * strain * strain)

    def stretch(self, tension: float) -> float:
        """The stretch that a tension in newtons a metre brings; the tension grows without end, so there is one."""
        low, high = 0.0, 1.0
        while self.tension(high) < tension:
            high *= 2
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            low, high = (middle, high) if self.tension(middle) < tension else (low, middle)
            if high - low < CLOSE:
                break
        return (low + high) / 2

    @classmethod
    def measured(cls, points: Sequence[tuple[float, float]]) -> Pull:
        """Through measured points (tension in newtons a metre, stretch): one gives `k`, more give the stiffening too.

        Least squares in tension / l, in which both numbers are linear. Points of a cloth that seems to soften say no
        more than a spring does, and give one.

        >>> curve = Pull(120.0, 900.0)
        >>> found = Pull.measured([(curve.tension(0.1), 0.1), (curve.tension(0.3), 0.3)])
        >>> round(found.k, 6), round(found.s, 6)
        (120.0, 900.0)
        """
        rows = [(green(stretch), tension / (1 + stretch)) for tension, stretch in points]
        e2, e4, e6 = (math.fsum(strain**power for strain, _ in rows) for power in (2, 4, 6))
        f1, f3 = (math.fsum(force * strain**power for strain, force in rows) for power in (1, 3))
        determinant = e2 * e6 - e4 * e4
        if determinant > CLOSE * e2 * e6:
            k, s = (f1 * e6 - f3 * e4) / determinant, (f3 * e2 - f1 * e4) / determinant
            if k > 0 and s > 0:
                return cls(k, s)
        return cls(f1 / e2)
