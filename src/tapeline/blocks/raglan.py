"""The raglan seam of one half, and the lie of the sleeve against it, drawn on the half itself.

Body and sleeve share the seam from the neckline to the notch; from there to the underarm each has a curve of its own,
and the two are equally long. The sleeve lies as if the paper were folded at the notch: its underarm is where the body's
comes to lie, so its curve is the body's, turned over (docs/explanation/raglan-and-cut-in-one.md).
Rules: common practice in the trade, no published source; the lie of the sleeve is our own.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.dartless import Half
from tapeline.blocks.outline import armhole
from tapeline.draft import Draft, Drawn, Place, Sheet, halfway, square_corner, turned_over
from tapeline.lengths import Length

__all__ = ["RaglanArm", "RaglanLines", "raglan_arm", "raglan_lines"]

ABOVE_TOUCH = Fraction(1, 16)
"""The notch lies this share of the armhole above the place where a ruler from the neckline touches it.

So it has room to bend into the armhole's hollow; our own choice.
"""
ROUND = 40
"""The seam rounds outward by its straight length over this, about half a centimetre: common practice, no source."""
HIGHEST = Fraction(4, 5)
"""Cap height over the straight line from shoulder point to underarm: 53 degrees; what is over is too narrow."""
NEAREST = Fraction(1, 2)
"""The sleeve's underarm is looked for between this share of the lower curve's length and the whole, from the notch."""


@dataclass(frozen=True, slots=True)
class RaglanLines:
    """One half cut by its raglan seam: what stays with the body, and what goes with the sleeve."""

    neckline: Drawn
    raglan: Drawn
    notch: Place
    sleeve_neckline: Drawn
    upper: Drawn
    """The seam from the neckline to the notch: the same line on body and sleeve."""
    under: Length
    """How long the seam is from the notch to the underarm."""
    shoulder: Drawn
    shoulder_point: Place
    underarm: Place
    armhole: Length
    """As it would be, set in."""


@dataclass(frozen=True, slots=True)
class RaglanArm:
    """Where the sleeve lies against one half."""

    underarm: Place
    foot: Place
    """Square across from the underarm, on the line down which the arm hangs."""
    under: Drawn
    """The sleeve's curve from the notch to its underarm."""


def raglan_lines(
    d: Draft, sheet: Sheet, half: Half, neckline: Drawn, neckline_end: Place, *, side: Drawn, share: float
) -> RaglanLines:
    """From the neckline, rounded a little outward, into the lower armhole, square to the side."""
    name = sheet.name
    shoulder = sheet.straight(
        "shoulder", "Goes with the sleeve: it lies in the overarm seam", neckline_end, half.shoulder_tip
    )
    set_in = armhole(sheet, half, shoulder, side, "set_in_armhole")
    whole = d.measured(f"{name}_set_in_armhole", f"Where the {name} armhole would be, set in", set_in.reading())
    neck_length = d.measured(f"{name}_whole_neckline", f"Half the {name} neckline", neckline.reading())
    end = sheet.point(
        "raglan_end",
        "Where the raglan seam leaves the neckline",
        neckline.along(neck_length - neck_length * share),
    )
    of_body, of_sleeve = sheet.cut(
        ("body_neckline", "sleeve_neckline"),
        ("What stays with the body", "What goes with the sleeve"),
        neckline,
        end,
    )
    touch = sheet.point(
        "raglan_touch", "The seam goes into the armhole near here", set_in.touched_from(end, half.armhole_point)
    )
    to_touch = d.measured(f"{name}_armhole_to_touch", "From the shoulder point to there", set_in.reading_to(touch))
    to_notch = d.measured(f"{name}_armhole_to_notch", "A sixteenth of the armhole less", to_touch - whole * ABOVE_TOUCH)
    notch = sheet.point("raglan_notch", "Body and sleeve part here: one line above, two below", set_in.along(to_notch))
    hollow = sheet.point(
        "raglan_hollow", "Keeps the seam in the armhole's hollow: half way on", set_in.along((whole + to_notch) / 2)
    )
    ruler = d.measured(f"{name}_raglan_straight", "Straight from the neckline to the notch", notch.reading_from(end))
    guide = sheet.point(
        "raglan_round",
        "Rounds over the shoulder: half way, out by a part in 40",
        halfway(end, notch).away_from((end, notch), ruler / ROUND),
    )
    upper, under = sheet.curve_in_two(
        ("raglan_upper", "raglan_lower"),
        "Rounds a little outward, runs into the armhole's hollow, and meets the side square",
        (end, guide, notch),
        (notch, hollow, half.underarm),
        arrive=side.square_at_start,
    )
    raglan = sheet.joined("raglan", "Sewn to the sleeve", upper, under)
    below = d.measured(f"{name}_raglan_lower", "From the notch to the underarm", under.reading())
    return RaglanLines(
        of_body, raglan, notch, of_sleeve, upper, below, shoulder, half.shoulder_tip, half.underarm, whole
    )


def raglan_arm(d: Draft, sheet: Sheet, lines: RaglanLines, cap_height: Length) -> RaglanArm:
    """The sleeve's underarm, where the body's comes to lie turned over at the notch, so far that the curves agree."""
    name = sheet.name
    sheet.section(f"The lie of the sleeve against the {name}")
    over = sheet.point(
        "underarm_over",
        "The underarm, turned over about the seam at the notch",
        turned_over(lines.underarm, lines.notch, lines.upper),
    )
    d.require(
        "cap-too-high",
        over.reading_from(lines.shoulder_point).length * HIGHEST,
        cap_height,
        says="the cap is as high as the whole armhole is deep, so that nothing is left for the sleeve's width",
        where="sleeve",
        hint="make garment.sleeve.cap.share smaller",
    )
    reach = d.measured(
        f"{name}_notch_to_sleeve",
        "From the notch toward there, to the sleeve's underarm",
        d.found(
            f"{name}_notch_to_sleeve",
            "so far that the sleeve's curve from the notch is as long as the body's,",
            lambda scratch, tried: laid(scratch.sheet(name), lines, over, cap_height, tried).under.reading().length,
            lines.under,
            (lines.under * NEAREST, lines.under),
        ),
    )
    return laid(sheet, lines, over, cap_height, reach)


def laid(s: Sheet, lines: RaglanLines, over: Place, cap_height: Length, reach: Length) -> RaglanArm:
    """The sleeve's underarm at a distance from the notch, the arm's line, and the curve between."""
    tip = lines.shoulder_point
    underarm = s.point("sleeve_underarm", "The sleeve's underarm", lines.notch.toward(over, reach))
    foot = s.point(
        "arm_foot",
        "The cap's height down the arm: square across from the underarm",
        square_corner(tip, underarm, cap_height),
    )
    s.straight("arm_line", "The line down which the arm hangs", tip, foot)
    across = s.straight("arm_across", "Square across the arm", foot, underarm)
    under = s.curve(
        "sleeve_under",
        "The sleeve's own curve: as the body's, turned over, and square to its underarm seam",
        lines.notch,
        underarm,
        leave=lines.upper.onward,
        arrive=across.onward,
    )
    return RaglanArm(underarm, foot, under)
