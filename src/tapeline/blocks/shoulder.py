"""The shoulder lines as a fitting corrects them: sloping or square, forward, over a rounded or an erect back.

Common practice in the trade, no published source. The shoulder keeps its length and its neck point; its tip moves up
or down, and the line with it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.neck import SHOULDER_RUN, Neck
from tapeline.draft import Draft, Place, Ray, Sheet, set_lower
from tapeline.lengths import Length, cm
from tapeline.pattern import ONE_SIDE

__all__ = ["ShoulderLines", "back_lines", "front_lines", "lowered", "sloped_back"]


MOST_FORWARD = Fraction(1, 8)
"""Of its length; our own choice: further, and the seam is a style line."""
AS_SEEN = "The shoulder point as the fitting showed it"
STEEP, FRONT_STEEP, FLAT = cm(6), cm(7), cm(2.2)
"""Falls over a run of 14, past which armholes of random wearers were seen to bend back; our own measure."""


@dataclass(frozen=True, slots=True)
class ShoulderLines:
    """The line that is sewn, and the one by which the armhole is set out.

    The two differ where the seam was moved forward: the armhole stays where the arm is.
    """

    sewn: Ray
    arm: Ray

    def level(self, tip: Place, length: Length) -> Place:
        """Where the tip was before its seam moved forward."""
        return tip if self.sewn is self.arm else self.arm.at(length)


def lowered(d: Draft) -> tuple[Length, ...]:
    """By what the shoulder points are lowered: both, or on the side that is drawn."""
    return tuple(d.correction(key) for key in ("sloping_shoulders", *ONE_SIDE))


def sloped_back(d: Draft, n: Neck, half_width: Length) -> Ray:
    """The back's line for sloping or square shoulders: the shoulder point goes straight down, or straight up."""
    lower, square = lowered(d), d.correction("square_shoulders")
    if not sum(by.mm for by in (*lower, square)):
        return n.back_shoulder_line
    length = d.measured(
        "usual_shoulder_length",
        "Neck point to shoulder point, before it is corrected",
        n.back_shoulder_line.until(half_width, straight_from=n.nape),
    )
    return turned(n.back, n.back_shoulder_line, length, "corrected", AS_SEEN, lower=lower, higher=(square,))


def back_lines(d: Draft, n: Neck, sloped: Ray, length: Length) -> ShoulderLines:
    """The back's over a rounded or erect back, and with the seam moved forward, for a shoulder so long."""
    forward = d.correction("forward_shoulders")
    d.require(
        "shoulder-too-far-forward",
        length * MOST_FORWARD,
        forward,
        says="the shoulder seam would move forward by more than an eighth of its length",
        where="garment.corrections.forward_shoulders",
        hint="make garment.corrections.forward_shoulders smaller",
    )
    arm = turned(
        n.back,
        sloped,
        length,
        "over_the_back",
        "The shoulder point against the nape, which lies higher or lower over this back",
        lower=(d.correction("rounded_back"),),
        higher=(d.correction("erect_back"),),
    )
    sewn = turned(n.back, arm, length, "forward", "The seam lies further forward: the back gains", higher=(forward,))
    remark(d, "back", sewn, STEEP)
    return ShoulderLines(sewn, arm)


def front_lines(d: Draft, n: Neck, length: Length) -> ShoulderLines:
    """The front's, for sloping or square shoulders, and with the seam moved forward."""
    arm = turned(
        n.front,
        n.front_shoulder_line,
        length,
        "corrected",
        AS_SEEN,
        lower=lowered(d),
        higher=(d.correction("square_shoulders"),),
    )
    forward = d.correction("forward_shoulders")
    sewn = turned(n.front, arm, length, "forward", "The seam lies further forward: the front loses", lower=(forward,))
    remark(d, "front", sewn, FRONT_STEEP)
    return ShoulderLines(sewn, arm)


def turned(
    sheet: Sheet,
    line: Ray,
    length: Length,
    name: str,
    says: str,
    *,
    lower: tuple[Length, ...] = (),
    higher: tuple[Length, ...] = (),
) -> Ray:
    """A shoulder line through the place to which its tip has moved; the same line where it stays."""
    before = line.at(length)
    after = set_lower(before, *lower, higher=higher)
    if after is before:
        return line
    tip = sheet.point(f"{name}_shoulder_point", says, after)
    return sheet.ray_through(f"{name}_shoulder_line", "The shoulder through that point", line.start, tip)


def remark(d: Draft, half: str, line: Ray, steep: Length) -> None:
    """Say where a corrected shoulder is steeper or flatter than an armhole can be drawn to in one sweep."""
    if line.name == "shoulder_line":
        return
    fall = line.fall(SHOULDER_RUN, f"{half}_fall")
    d.remark(
        "shoulder-steep",
        fall,
        above=steep,
        says=f"so steep a {half} shoulder makes armhole and neckline bend back beside it",
        where="garment.corrections",
        hint="correct the shoulder by less",
    )
    d.remark(
        "shoulder-flat",
        FLAT,
        above=fall,
        says=f"so flat a {half} shoulder makes armhole and neckline bend back beside it",
        where="garment.corrections",
        hint="correct the shoulder by less",
    )
