"""The armhole band: a strip of rib or jersey, folded in half, sewn to the armhole of a top without sleeves."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neckband import BINDING_SHARES, BandChoices, BindingChoices
from tapeline.blocks.sleeve_sizes import ArmholeNotch
from tapeline.blocks.strip import strip
from tapeline.draft import Draft, Drawn, notch_along, sewn
from tapeline.lengths import Length, at_most
from tapeline.pattern import Cut, NotchKind, Piece

__all__ = ["ARMHOLE_BAND_SHARES", "ArmholeBand", "BandedArmhole", "armhole_band", "armhole_binding"]

ARMHOLE_BAND_SHARES = ((0, 1.0), (20, 0.96), (35, 0.93), (50, 0.90), (80, 0.87), (120, 0.80))
"""Stretch of the band's cloth in per cent, and the band's length as a share of the armhole.

Common practice, no source: less tight than a neckband, for the armhole is straighter and must not be drawn in.
"""


@dataclass(frozen=True, slots=True)
class BandedArmhole:
    """One half's armhole: its line from shoulder to underarm, its length, and where it is notched."""

    line: Drawn
    notch: ArmholeNotch


@dataclass(frozen=True, slots=True)
class ArmholeBand:
    """The band and how much shorter than the armhole it is."""

    piece: Piece
    ease: Length


def armhole_band(d: Draft, c: BandChoices, back: BandedArmhole, front: BandedArmhole) -> ArmholeBand:
    """A whole band for one armhole: from the underarm up the front, over the shoulder, down the back."""
    return _strip(d, c, back, front, narrow=False)


def armhole_binding(d: Draft, c: BindingChoices, back: BandedArmhole, front: BandedArmhole) -> ArmholeBand:
    """A whole binding, the same; its long edges have allowances as wide as it is."""
    return _strip(d, BandChoices(c.width, c.stretch, c.cloth), back, front, narrow=True)


def _strip(d: Draft, c: BandChoices, back: BandedArmhole, front: BandedArmhole, *, narrow: bool) -> ArmholeBand:
    word, shares = ("binding", BINDING_SHARES) if narrow else ("band", ARMHOLE_BAND_SHARES)
    allowance = c.width if narrow else None
    d.section(f"The armhole {word}'s sizes")
    armhole = d.measured("armhole", "Both armholes of one side", front.notch.whole + back.notch.whole)
    by_stretch = d.measured(
        f"armhole_{word}_by_stretch",
        "What a cloth that stretches so needs",
        armhole * d.share(c.stretch, shares),
    )
    by_shape = d.measured(
        f"armhole_{word}_by_shape",
        f"How long the armhole is a {word}'s width further in: a longer {word} would stand away",
        front.line.beside(c.width) + back.line.beside(c.width),
    )
    length = d.measured(f"armhole_{word}_length", "The shorter of the two", at_most(by_stretch, by_shape))
    share = length / armhole
    to_front_notch = (front.notch.whole - front.notch.to_notch) * share
    to_shoulder = front.notch.whole * share
    to_back_notch = (front.notch.whole + back.notch.to_notch) * share

    s = d.sheet(f"armhole_{word}")
    s.section(f"The armhole {word}")
    made = strip(s, length, c.width, left="The end under the arm, at the front", right="The end under the arm, behind")
    piece = s.piece(
        f"Armhole {word}",
        sewn("front_end", made.left),
        sewn("armhole", made.top, allowance),
        sewn("back_end", made.right),
        sewn("armhole_turned", made.bottom, allowance),
        grain=made.grain,
        cut=Cut(2, c.cloth, mirrored=True),
        notches=(
            notch_along("armhole", to_front_notch, NotchKind.SINGLE),
            notch_along("armhole", to_shoulder, NotchKind.SINGLE),
            notch_along("armhole", to_back_notch, NotchKind.DOUBLE),
            notch_along("armhole_turned", length - to_back_notch, NotchKind.DOUBLE),
            notch_along("armhole_turned", length - to_shoulder, NotchKind.SINGLE),
            notch_along("armhole_turned", length - to_front_notch, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return ArmholeBand(piece, length - armhole)
