"""What a maker chooses of a sleeve."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.lengths import Length, at_least, cm
from tapeline.pattern import choice

__all__ = ["CAPS", "SLEEVE_LENGTHS", "CapShape", "SleeveChoices", "SleeveLength", "reaches_the_wrist"]


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
BELOW_THE_CAP = cm(4)
"""A sleeve by a word is so much longer than its cap, or its underarm seam would be too short to sew."""


@dataclass(frozen=True, slots=True)
class SleeveLength:
    """How long a sleeve is: a share of the arm, or a length from the crown."""

    share: Fraction = Fraction(1)
    given: Length | None = None

    def on(self, arm_length: Length, cap_height: Length) -> Length:
        """From the crown to the hem, for an arm; a share of the arm always clears the cap.

        >>> SLEEVE_LENGTHS["short"].on(cm(57), cm(12)).show(), SLEEVE_LENGTHS["short"].on(cm(51), cm(15)).show()
        ('19 cm', '19 cm')
        """
        if self.given is not None:
            return self.given
        return at_least(arm_length * self.share, cap_height + BELOW_THE_CAP)


def reaches_the_wrist(length: Length, arm_length: Length) -> bool:
    """Whether a sleeve comes within a hand's breadth of the wrist.

    >>> reaches_the_wrist(cm(52), cm(57)), reaches_the_wrist(cm(19), cm(57))
    (True, False)
    """
    return length.mm > arm_length.mm - HAND_BREADTH.mm


SLEEVE_LENGTHS = {"short": SleeveLength(Fraction(1, 3)), "long": SleeveLength()}
"""Common practice, no source: a short sleeve covers a third of the arm."""


@dataclass(frozen=True, slots=True)
class SleeveChoices:
    """Length, cap and width at the wrist."""

    length: SleeveLength = choice(SLEEVE_LENGTHS["short"], 8, 90, "short, long, or a length from the crown")
    cap: CapShape = CAPS["easy"]
    ease: Length = choice(cm(0), -1, 5, "cap seam longer than the armhole; knit 0 to 0.5, woven 0 to 3.5")
    wrist_ease: Length = choice(
        cm(7), 2, 40, "hem of a long sleeve wider than the wrist; shorter sleeves follow the same line"
    )
