"""What a maker chooses of a sleeve."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.sleeve_fullness import SLEEVE_ENDS, SLEEVE_HEADS, SleeveEnd, SleeveHead
from tapeline.lengths import Length, at_least, cm
from tapeline.pattern import choice

__all__ = [
    "CAPS",
    "ELBOW",
    "SLEEVE_LENGTHS",
    "SLEEVE_SHAPES",
    "CapShape",
    "SleeveChoices",
    "SleeveLength",
    "SleeveShape",
    "reaches_the_wrist",
]


@dataclass(frozen=True, slots=True)
class CapShape:
    """How high the cap stands: a share of the whole armhole, and a little more or less."""

    share: float | Fraction = choice(Fraction(1, 4), 0.15, 0.4, "cap height as a share of the armhole")
    extra: Length = choice(cm(0), -1.5, 2, "added to the cap height")

    def height(self, armhole: Length) -> Length:
        """Cap height for an armhole."""
        return armhole * self.share + self.extra


CAPS = {"easy": CapShape(Fraction(1, 4)), "formal": CapShape(Fraction(1, 3))}
"""Common practice, no source: a quarter of the armhole for an easy sleeve, a third for a narrow, formal one."""


HAND_BREADTH = cm(8)
ELBOW = Fraction(11, 20)
"""Of the way from shoulder to wrist lies the elbow: from memory of body surveys, no source at hand."""


@dataclass(frozen=True, slots=True)
class SleeveLength:
    """How long a sleeve is: a share of the arm, or a length from the crown."""

    share: Fraction = Fraction(1)
    given: Length | None = None
    clears: int = 4
    """By a word it is at least so many centimetres longer than its cap, or its underarm seam is too short to sew."""

    def on(self, arm_length: Length, cap_height: Length) -> Length:
        """From the crown to the hem, for an arm; a share of the arm always clears the cap.

        >>> SLEEVE_LENGTHS["short"].on(cm(57), cm(12)).show(), SLEEVE_LENGTHS["short"].on(cm(51), cm(15)).show()
        ('19 cm', '19 cm')
        """
        if self.given is not None:
            return self.given
        return at_least(arm_length * self.share, cap_height + cm(self.clears))


def reaches_the_wrist(length: Length, arm_length: Length) -> bool:
    """Whether a sleeve comes within a hand's breadth of the wrist.

    >>> reaches_the_wrist(cm(52), cm(57)), reaches_the_wrist(cm(19), cm(57))
    (True, False)
    """
    return length.mm > arm_length.mm - HAND_BREADTH.mm


SLEEVE_LENGTHS = {
    "cap": SleeveLength(Fraction(1, 10), clears=2),
    "short": SleeveLength(Fraction(1, 3)),
    "elbow": SleeveLength(ELBOW),
    "three-quarter": SleeveLength(Fraction(3, 4)),
    "long": SleeveLength(),
}
"""Common practice, no source: a cap sleeve ends just below the underarm, a short one covers a third of the arm, a
three-quarter sleeve what its name says.
"""
TEN = cm(10)


@dataclass(frozen=True, slots=True)
class SleeveShape:
    """Which way the underarm seams go below their bend."""

    taper: float | Fraction = choice(
        Fraction(1), 0, 1, "how far the seams come in: 1 all the way to the wrist, 0 straight down"
    )
    flare: Length = choice(cm(0), 0, 4, "each underarm seam goes out by so much on 10 cm of its length")

    @property
    def follows_the_arm(self) -> bool:
        """Whether the sleeve comes in to the wrist's width and ease."""
        return self.taper == 1 and not self.flare.mm

    def narrowing(self, to_wrist: Length, below_bend: Length) -> Length:
        """By how much each underarm seam comes in, at the level of the wrist; less than nothing where it goes out.

        >>> (
        ...     SLEEVE_SHAPES["tapered"].narrowing(cm(6), cm(40)).show(),
        ...     SLEEVE_SHAPES["flared"].narrowing(cm(6), cm(40)).show(),
        ... )
        ('6 cm', '-6 cm')

        Args:
            to_wrist: What it would come in by, all the way to the wrist.
            below_bend: From the bend to the level of the wrist.
        """
        narrowing = to_wrist if self.taper == 1 else to_wrist * self.taper
        return narrowing - self.flare * (below_bend / TEN) if self.flare.mm else narrowing


SLEEVE_SHAPES = {
    "straight": SleeveShape(taper=Fraction(0)),
    "easy": SleeveShape(taper=Fraction(1, 2)),
    "tapered": SleeveShape(),
    "flared": SleeveShape(taper=Fraction(0), flare=cm(1.5)),
}
"""An easy sleeve goes half the way to the wrist's width.

How much a flared sleeve flares is our own choice: as much as can be added at the seams without cutting it open.
"""


@dataclass(frozen=True, slots=True)
class SleeveChoices:
    """Length, cap and width at the wrist."""

    length: SleeveLength = choice(
        SLEEVE_LENGTHS["short"], 8, 90, "cap, short, elbow, three-quarter, long, or a length from the crown"
    )
    shape: SleeveShape = SLEEVE_SHAPES["tapered"]
    cap: CapShape = CAPS["easy"]
    head: SleeveHead = SLEEVE_HEADS["smooth"]
    end: SleeveEnd = SLEEVE_ENDS["hem"]
    ease: CapEase = choice(
        CapEase(), -1, 5, "cap seam longer than the armhole: by-cloth, or a length; knit 0 to 0.5, woven 0 to 3.5"
    )
    wrist_ease: Length = choice(
        cm(7), 2, 40, "hem of a long sleeve wider than the wrist; shorter sleeves follow the same line"
    )
