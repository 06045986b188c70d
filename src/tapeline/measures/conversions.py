"""How the surveys' measurements become our tapes: the one place where the definitions meet.

The surveys were taken with their own definitions (they stand in the data files). Where a tape of ours is taken in
another way, the numbers of the survey are converted before anything is estimated from them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.measures.figures import Figure

__all__ = ["CONVERSIONS", "Conversion"]


@dataclass(frozen=True, slots=True)
class Conversion:
    """Our tape in mm or radians = factor x the survey's number in its file + shift."""

    key: str
    """Name in the survey's file."""
    factor: float = 10.0
    """The files are in cm."""
    shift_mm: float = 0.0
    spread_mm: float = 0.0
    """How far the conversion itself may be off for one wearer, a standard deviation."""
    says: str = ""
    """What was done and where it is from; empty where the two are the same."""


_SHOULDER = Conversion(
    "shoulder_breadth",
    10 * 1.065,
    says="1.065 times the caliper distance of the survey: the across-shoulder row of ASTM D5585-95, from memory, "
    "over the survey's mean",
)
_ARM = Conversion(
    "arm_length", says="taken as it is: along the hanging arm, so a little shorter than over a bent elbow"
)

_WOMAN = {
    "shoulder_width": _SHOULDER,
    "arm_length": _ARM,
    "upper_arm": Conversion(
        "upper_arm",
        shift_mm=-20,
        says="2 cm less than the survey, which measured the flexed arm: the difference is stated as about that",
    ),
    "bust_point_depth": Conversion("neck_to_bust_point"),
    "shoulder_slope": Conversion("shoulder_slope_deg", math.radians(1)),
    **{
        name: Conversion(name)
        for name in (
            *("bust", "upper_chest", "waist", "hip", "back_length", "hip_depth", "neck", "back_width", "armhole_depth"),
            *("armhole_girth", "shoulder_length", "elbow", "wrist", "head_girth", "height", "bust_span"),
        )
    },
}

_NAVEL = "the survey measured men at the navel, not at the waist: "

_MAN = {
    "shoulder_width": _SHOULDER,
    "arm_length": _ARM,
    "waist": Conversion(
        "waist",
        shift_mm=-31,
        spread_mm=42,
        says=_NAVEL + "3.1 cm less, the mean difference of navel and waist girth of 247 men in the data set bdims "
        "(Heinz and others, 2003), where it spreads by 4.2 cm",
    ),
    "back_length": Conversion(
        "back_length", shift_mm=-25, spread_mm=20, says=_NAVEL + "about 2.5 cm less, common practice, no source"
    ),
    "hip_depth": Conversion(
        "hip_depth", shift_mm=25, spread_mm=20, says=_NAVEL + "about 2.5 cm more, common practice, no source"
    ),
    "neck": Conversion(
        "neck_mid",
        shift_mm=30.5,
        spread_mm=7.3,
        says="3.05 cm more than the survey, which measured men at the larynx: the mean difference in the women's "
        "survey, where it spreads by 0.7 cm",
    ),
    "back_width": Conversion("back_width", says="taken as it is: at the armpit folds, a little lower than our tape"),
    **{
        name: Conversion(name)
        for name in (
            *("chest", "upper_chest", "hip", "upper_arm", "wrist", "shoulder_length", "armhole_girth", "height"),
        )
    },
}

CONVERSIONS = {Figure.WOMAN: _WOMAN, Figure.MAN: _MAN}
"""Per figure, our tapes that the survey knows."""
