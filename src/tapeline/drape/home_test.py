"""What a maker measures at her table, made into a `Hand`: a square, a few strips, a scale and a rule."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from tapeline.drape.cloth import GRAVITY, Hand
from tapeline.drape.pull import Pull
from tapeline.problems import InputError, Problem, Severity

__all__ = ["PEIRCE_DEGREES", "HomeTest", "Strip"]

PEIRCE_DEGREES = 41.5
"""The slope at which half of what hangs over is the bending length: F. T. Peirce, "The handle of cloth as a measurable
quantity", Journal of the Textile Institute 21, 1930; the slope of the cantilever test of ASTM D1388."""
BIAS = "how far a strip cut on the bias gets longer"


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip hung up by one end: how much longer it is under each weight.

    >>> [(round(tension, 2), stretch) for tension, stretch in Strip(longer=((250, 12.0),)).points()]
    [(49.03, 0.12)]
    """

    longer: tuple[tuple[float, float], ...]
    """For each weight in grams: how many mm longer the marked length has become."""
    length_mm: float = 100.0
    """Between two marks, before anything hangs on it."""
    width_mm: float = 50.0

    def points(self) -> list[tuple[float, float]]:
        """Tension in newtons a metre of width, and stretch, at each weight."""
        return [(grams * GRAVITY / self.width_mm, longer / self.length_mm) for grams, longer in self.longer]


@dataclass(frozen=True, slots=True)
class HomeTest:
    """A square weighed, a strip across and one along pulled by a known weight, a strip pushed over an edge.

    >>> test = HomeTest(
    ...     square_mm=100,
    ...     square_grams=1.5,
    ...     across=Strip(longer=((250, 12.0),)),
    ...     along=Strip(longer=((250, 6.0),)),
    ...     overhang_across_mm=24,
    ...     overhang_along_mm=30,
    ... )
    >>> hand = test.hand("my jersey", shear=45)
    >>> round(hand.weight), hand.bend_across, round(hand.rigidity_across, 2)
    (150, 12.0, 2.54)
    """

    square_mm: float
    """Side of the square."""
    square_grams: float
    across: Strip
    along: Strip
    overhang_across_mm: float
    """Of a strip cut across: how much hangs over when its end touches a slope of 41.5 degrees."""
    overhang_along_mm: float
    bias: Strip | None = None
    """A strip cut at 45 degrees; it says how easily the cloth shears."""
    narrows: float = 0.25
    """How much the strip across narrows, as a share of its stretch."""
    shrinks_along: float = 0.0
    shrinks_across: float = 0.0

    def hand(self, name: str, shear: float = math.nan) -> Hand:
        """The cloth that was measured; `shear` in newtons a metre where no strip was cut on the bias.

        Raises `InputError` (`home-test-range`) for each number that cannot be, and where neither a strip on the bias
        nor a shear was given.
        """
        problems = [*self._problems(shear)]
        if problems:
            raise InputError(problems)
        across, along = Pull.measured(self.across.points()), Pull.measured(self.along.points())
        if self.narrows**2 * along.k >= across.k:
            most = (across.k / along.k) ** 0.5
            raise InputError(
                _out_of_range("narrows", "how much it narrows", f"with these strips it is under {most:.2f}")
            )
        return Hand(
            name,
            self.square_grams / self.square_mm**2 * 1e6,
            across,
            along,
            shear if self.bias is None else self._shear(self.bias, across.k, along.k),
            self.overhang_across_mm / 2,
            self.overhang_along_mm / 2,
            self.narrows,
            self.shrinks_along,
            self.shrinks_across,
            "measured at the maker's table" + (", shear as given" if self.bias is None else ""),
        )

    def _shear(self, bias: Strip, across: float, along: float) -> float:
        """From the strip on the bias: 1/G = 4/E45 - 1/Ex - 1/Ey + 2 n/Ex, an orthotropic sheet's modulus off its axes.

        R. M. Jones, Mechanics of Composite Materials, 2nd edition, 1999, section 2.8; from memory.
        """
        slack = 4 / Pull.measured(bias.points()).k - 1 / across - 1 / along + 2 * self.narrows / across
        if slack <= 0:
            raise InputError(_out_of_range("bias", BIAS, "it stretches less than the cloth does along and across"))
        return 1 / slack

    def _problems(self, shear: float) -> Iterator[Problem]:
        ranges = (
            ("square_mm", "the side of the square in mm", self.square_mm, 20, 2000),
            ("square_grams", "the weight of the square in grams", self.square_grams, 0.01, 5000),
            ("overhang_across_mm", "what hangs over, of a strip across", self.overhang_across_mm, 5, 200),
            ("overhang_along_mm", "what hangs over, of a strip along", self.overhang_along_mm, 5, 200),
            ("narrows", "how much it narrows", self.narrows, 0, 0.9),
            ("shrinks_along", "shrinkage in length", self.shrinks_along, -0.05, 0.25),
            ("shrinks_across", "shrinkage in width", self.shrinks_across, -0.05, 0.25),
        )
        for where, what, value, least, most in ranges:
            if not least <= value <= most:
                yield _out_of_range(where, what, f"{value:g} is not between {least:g} and {most:g}")
        for where, strip in (("across", self.across), ("along", self.along), ("bias", self.bias)):
            if strip is None:
                continue
            if not (strip.longer and strip.length_mm > 0 and strip.width_mm > 0):
                yield _out_of_range(where, "the strip", "it needs a length, a width and at least one weight")
            elif any(grams <= 0 or not 0 < longer < 5 * strip.length_mm for grams, longer in strip.longer):
                yield _out_of_range(where, "the strip", "each weight must be above zero and make it visibly longer")
        if self.bias is None and not shear > 0:
            yield _out_of_range("bias", BIAS, "it was not given, and no shear either")


def _out_of_range(where: str, what: str, says: str) -> Problem:
    return Problem(
        "home-test-range",
        Severity.ERROR,
        f"{what}: {says}",
        where,
        "measure again; a square of 10 cm, strips 5 cm wide marked at 10 cm, and weights of 100 to 500 grams do well",
    )
