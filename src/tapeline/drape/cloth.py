"""A `Hand` is what a cloth does when it is worn: how heavy it is, how it stretches, shears and bends.

Newtons a metre and micronewton metres are, digit for digit, millinewtons a millimetre and millinewton millimetres:
the solver's units are the same numbers as the trade's.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.drape.pull import Pull
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["GRAVITY", "HANDS", "HAND_PULL", "Hand", "hand_of"]

GRAVITY = 9.80665
"""Metres a second squared, the standard value."""
HAND_PULL = 100.0
"""Newtons a metre of width at which a cloth is said to be stretched as far as it comes back from: a firm pull of the
hand, 5 newtons on a strip of 5 cm. Common practice, no source."""
MEMORY = "typical values, from memory"


@dataclass(frozen=True, slots=True)
class Hand:
    """One cloth as it hangs. Along is the way of the selvedge (wales, warp), across the way of the width."""

    name: str
    weight: float
    """Grams a square metre."""
    across: Pull
    along: Pull
    shear: float
    """Newtons a metre for each radian of shear."""
    bend_across: float
    """Bending length in mm of a strip cut across; half of what hangs over an edge at 41.5 degrees."""
    bend_along: float
    """The same of a strip cut along."""
    narrows: float = 0.25
    """How much narrower it gets along when it is stretched across, as a share of that stretch."""
    shrinks_along: float = 0.0
    """Share of the length that is lost before it is worn; 0.05 is 5 per cent."""
    shrinks_across: float = 0.0
    source: str = MEMORY
    """Where the values come from, and how sure they are."""

    @property
    def load(self) -> float:
        """How heavy it hangs: newtons a square metre.

        >>> round(HANDS["single jersey"].load, 3)
        1.569
        """
        return self.weight / 1000 * GRAVITY

    @property
    def rigidity_across(self) -> float:
        """Flexural rigidity of a strip cut across: load times the cube of the bending length (Peirce 1930), uN m."""
        return self.load * self.bend_across**3 / 1000

    @property
    def rigidity_along(self) -> float:
        """The same of a strip cut along."""
        return self.load * self.bend_along**3 / 1000

    def stretching(self, across: float, along: float, at: float = HAND_PULL) -> Hand:
        """The same cloth with its own stretch (0.35 is 35 per cent), reached at a pull in newtons a metre.

        How much it stiffens on the way there is kept in proportion.

        >>> jersey = HANDS["single jersey"].stretching(0.5, 0.2)
        >>> round(jersey.across.stretch(HAND_PULL), 3), round(jersey.along.stretch(HAND_PULL), 3)
        (0.5, 0.2)
        """
        return replace(
            self, across=_reaching(self.across, across, at), along=_reaching(self.along, along, at), source=self.source
        )


def _reaching(pull: Pull, stretch: float, at: float) -> Pull:
    """A pull with the same shape of curve that gets to a stretch at a tension."""
    share = pull.stretch(at) / stretch
    shaped = Pull(pull.k * share, pull.s * share**3)
    scale = at / shaped.tension(stretch)
    return Pull(shaped.k * scale, shaped.s * scale)


def _knit(name: str, weight: float, stretch: tuple[float, float], bend: tuple[float, float], shear: float) -> Hand:
    """Weight, stretch across and along at the pull of a hand, bending length across and along."""
    springs = [Pull.measured([(HAND_PULL, share)]) for share in stretch]
    return Hand(name, weight, springs[0], springs[1], shear, bend[0], bend[1])


HANDS: dict[str, Hand] = {
    hand.name: hand
    for hand in (
        _knit("single jersey", 160, (0.35, 0.15), (12, 14), 45),
        _knit("viscose jersey", 200, (0.45, 0.20), (9, 10), 30),
        _knit("interlock", 210, (0.30, 0.12), (14, 16), 55),
        _knit("rib", 220, (0.80, 0.20), (11, 14), 45),
        _knit("cotton pique", 200, (0.25, 0.12), (15, 17), 60),
        _knit("brushed sweatshirt knit", 300, (0.22, 0.12), (17, 20), 80),
        _knit("cotton lawn", 75, (0.02, 0.015), (16, 18), 50),
        _knit("poplin", 120, (0.02, 0.012), (20, 24), 80),
        _knit("linen", 160, (0.02, 0.012), (24, 27), 60),
        _knit("denim", 380, (0.015, 0.01), (32, 40), 150),
    )
}
"""Named cloths. Weight, stretch and bending length lie in the ranges that the trade gives for them, from memory;
shear is of the order that low-force testers find, from memory. None of them is a measurement of your cloth."""


def hand_of(kind: str) -> Hand:
    """The named cloth of a kind, as a docket writes it.

    Raises `InputError` (`cloth-hand-unknown`) that names those there are.

    >>> hand_of("rib").weight
    220
    """
    if kind in HANDS:
        return HANDS[kind]
    raise InputError(
        Problem(
            "cloth-hand-unknown",
            Severity.ERROR,
            f"how {kind!r} hangs and stretches is not known, so it cannot be draped",
            hint=closest(kind, HANDS),
        )
    )
