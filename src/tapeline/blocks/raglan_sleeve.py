"""The raglan sleeve, front and back apart, with a seam over the shoulder and down the arm.

Two pieces, because the shoulder is shaped by their seam: a dartless house has no dart for it.
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tapeline.blocks.raglan import RaglanArm, RaglanLines, raglan_arm
from tapeline.blocks.raglan_choices import RaglanSleeveChoices
from tapeline.blocks.sleeve import MOST_BEND, bent
from tapeline.blocks.sleeve_choices import reaches_the_wrist
from tapeline.blocks.sleeve_sizes import hem_is_left
from tapeline.draft import (
    LEVEL,
    STRAIGHT_DOWN,
    Draft,
    Drawn,
    Place,
    Reading,
    Sheet,
    hemmed,
    notch,
    notch_along,
    only_if,
    sewn,
    upright,
)
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Edge, Girth, NotchKind, Piece

__all__ = ["RaglanSleeve", "raglan_sleeve"]

ROUND = cm(3)
"""The overarm seam runs straight on over the shoulder point for so long, and bends within twice as much."""
GRAIN_IN = cm(3)
LEAST_UNDERARM = cm(0.5)
"""A shorter underarm seam has no room for its bend."""
KINDS = {"front": NotchKind.SINGLE, "back": NotchKind.DOUBLE}


EdgeRule = Callable[[str, Drawn], Edge]
"""What becomes of an edge: sewn, turned up, bound."""


@dataclass(frozen=True, slots=True)
class RaglanSleeve:
    """Both halves of the sleeve, and what is measured round them."""

    front: Piece
    back: Piece
    girths: tuple[Girth, ...]

    @property
    def pieces(self) -> tuple[Piece, Piece]:
        """Front and back."""
        return self.front, self.back


@dataclass(frozen=True, slots=True)
class Top:
    """The upper part of one half sleeve, down to its underarm."""

    sheet: Sheet
    neckline: Drawn
    raglan: Drawn
    notch: Place
    shoulder: Drawn
    over: Drawn
    """Round over the shoulder point."""
    straight: Place
    """Where it is straight again."""
    foot: Place
    underarm: Place

    def across(self) -> Reading:
        """How wide the half sleeve is under the arm."""
        return self.underarm.reading_from(self.foot)


@dataclass(frozen=True, slots=True)
class Below:
    """The sizes that both halves are drawn with, below the cap."""

    length: Length
    to_wrist: Length
    """From the underarm down to the level of the wrist."""
    bend: Length
    narrowing: Length


@dataclass(frozen=True, slots=True)
class Lower:
    """The lines of one half sleeve that are not the body's."""

    overarm: Drawn
    hem: Drawn
    underarm: Drawn
    down: Length


def raglan_sleeve(
    d: Draft, c: RaglanSleeveChoices, back: RaglanLines, front: RaglanLines, arm_length: Length, *, neck_edge: EdgeRule
) -> RaglanSleeve:
    """Both halves, to the raglan seams of back and front; `neck_edge` is what becomes of the neckline."""
    d.section("The sleeve's sizes")
    armhole = d.measured("armhole", "Both armholes of one side, as they would be, set in", front.armhole + back.armhole)
    cap_height = d.measured("cap_height", "From the shoulder point down the arm to the underarm", c.cap.height(armhole))
    length = d.measured("sleeve_length", "From the shoulder point to the hem", c.length.on(arm_length, cap_height))
    d.require(
        "sleeve-too-short",
        length,
        cap_height + LEAST_UNDERARM,
        says="the sleeve ends before its cap does",
        where="sleeve",
        hint="make garment.sleeve.length longer, or garment.sleeve.cap.share smaller",
    )
    wrist = d.body("wrist", "Round the wrist, over the bone")
    wrist_width = d.measured("wrist_width", "A long sleeve at the wrist", wrist + c.wrist_ease)
    tops = {
        name: traced(d, name, lines, raglan_arm(d, d.sheet(name), lines, cap_height))
        for name, lines in (("front", front), ("back", back))
    }
    widths = {
        name: d.measured(f"{name}_sleeve_width", "Across the half sleeve, under the arm", top.across())
        for name, top in tops.items()
    }
    width = d.measured("sleeve_width", "Across both halves, under the arm", widths["front"] + widths["back"])
    bend = d.measured(
        "underarm_bend", "The underarm seams leave the cap straight down for so long", (length - cap_height) / 6
    )
    narrowing = d.measured(
        "sleeve_narrowing",
        "Each underarm seam comes in by as much",
        c.shape.narrowing((width - wrist_width) / 2, arm_length - cap_height - bend),
    )
    to_wrist = d.measured(
        "underarm_to_wrist", "From the underarm down to the level of the wrist", arm_length - cap_height
    )
    below = Below(length, to_wrist, bend, narrowing)
    back_lines = lower(d, tops["back"], below, None)
    front_lines = lower(d, tops["front"], below, back_lines.down)
    hem_width = d.measured(
        "sleeve_hem_width", "Along the sleeve's hem, both halves", front_lines.hem.reading() + back_lines.hem.reading()
    )
    upper_arm = d.body("upper_arm", "Round the upper arm, relaxed")
    return RaglanSleeve(
        piece(tops["front"], front_lines, KINDS["front"], neck_edge),
        piece(tops["back"], back_lines, KINDS["back"], neck_edge),
        (
            Girth("upper_arm", upper_arm, width - upper_arm, round_both("cap_foot")),
            *only_if(
                reaches_the_wrist(length, arm_length) and c.shape.follows_the_arm,
                Girth("wrist", wrist, hem_width - wrist, round_both("hem")),
            ),
        ),
    )


def round_both(level: str) -> tuple[tuple[str, str, float], ...]:
    """Once across each half sleeve."""
    return (("front_sleeve", level, 1), ("back_sleeve", level, 1))


def traced(d: Draft, half: str, lines: RaglanLines, arm: RaglanArm) -> Top:
    """What goes with the sleeve, traced off onto paper of its own, the arm straight down; round over the shoulder."""
    s = d.sheet(f"{half}_sleeve")
    s.section(f"The {half} sleeve, traced off")
    t = upright(s, lines.shoulder_point, arm.foot)
    tip = t.point("shoulder_point", "The shoulder point", lines.shoulder_point)
    underarm = t.point("underarm_corner", "Where the underarm seam begins", arm.underarm)
    notch_at = t.point("raglan_notch", "Where body and sleeve part", lines.notch)
    neckline = t.line("neckline", "The sleeve's part of the neckline", lines.sleeve_neckline)
    upper = t.line("raglan_upper", "The same line as on the body", lines.upper)
    under = t.line("raglan_lower", "The sleeve's own curve", arm.under)
    shoulder = t.line("shoulder", "The shoulder", lines.shoulder)
    raglan = s.joined("raglan", "Sewn to the body", upper, under)

    s.section(f"Over the shoulder of the {half} sleeve")
    along = d.measured(f"{half}_shoulder", "From the neckline to the shoulder point", shoulder.reading())
    corner = s.point(
        "overarm_corner", "Straight on along the shoulder: the bone keeps its room", shoulder.along(along + ROUND)
    )
    straight = s.point("overarm_straight", "As far straight down: from here the arm is straight", corner.down(ROUND))
    over = s.curve(
        "overarm_round",
        "Bends from the shoulder into the arm",
        tip,
        straight,
        leave=shoulder.onward,
        arrive=STRAIGHT_DOWN,
    )
    foot = s.point(
        "cap_foot", "The level of the underarm: the widest part of the sleeve", straight.level_with(underarm)
    )
    return Top(s, neckline, raglan, notch_at, shoulder, over, straight, foot, underarm)


def lower(d: Draft, top: Top, c: Below, down: Length | None) -> Lower:
    """The sleeve below the cap; the second half's underarm seam is made as long as the first's."""
    s = top.sheet
    name = s.name
    s.section(f"Arm, underarm and hem of the {name.replace('_', ' ')}")
    over = d.measured(f"{name}_over", "Round over the shoulder", top.over.reading())
    hem_level = s.point("hem_level", "The hem, measured along the overarm seam", top.straight.down(c.length - over))
    rest = s.straight("overarm_rest", "Straight down the arm", top.straight, hem_level)
    overarm = s.joined(
        "overarm", "Front and back are sewn together over the shoulder and down the arm", top.shoulder, top.over, rest
    )
    bend = s.point("bend", "From here the underarm seam turns to the wrist", top.underarm.down(c.bend))
    wrist = s.point("wrist", "The underarm seam at the wrist", top.underarm.down(c.to_wrist).out(c.narrowing))
    line = s.straight("underarm_line", "The underarm seam, but for its bend", bend, wrist)
    if down is None:
        corner = s.point("underarm_hem", "Where one arc from the overarm seam comes in square", line.arc_end(hem_level))
        d.require(
            "underarm-vanishes",
            bend.reading_down_to(corner).length,
            c.bend * MOST_BEND,
            says="the hem of a sleeve that goes out so much rises into its cap",
            where="sleeve",
            hint="make garment.sleeve.length longer, or garment.sleeve.shape less flared",
        )
        down = d.measured("underarm_below_bend", "From the bend to the hem, straight", corner.reading_from(bend))
    else:
        corner = s.point(
            "underarm_hem", "As far down as on the other half, so that the seams are equal", line.along(down)
        )
    hem_is_left(d, Length(hem_level.point.x - corner.point.x, "across_half_the_hem"), halves=2)
    underarm = bent(s, "underarm", line, top.underarm, line.along(c.bend), to=corner)
    hem = s.curve(
        "hem",
        "Square to both seams, so that it is round when sewn",
        hem_level,
        corner,
        leave=LEVEL,
        arrive=underarm.square_at_end,
    )
    return Lower(overarm, hem, underarm, down)


def piece(top: Top, lines: Lower, kind: NotchKind, neck_edge: EdgeRule) -> Piece:
    """A half sleeve, its edges clockwise from the hem."""
    s, reversed_raglan = top.sheet, top.raglan.reversed
    return s.piece(
        s.name.replace("_", " ").capitalize(),
        hemmed("hem", lines.hem),
        sewn("underarm", lines.underarm.reversed),
        sewn("raglan", reversed_raglan),
        neck_edge("neckline", top.neckline),
        sewn("overarm", lines.overarm),
        grain=(top.foot.inward(GRAIN_IN).down(GRAIN_IN), top.foot.inward(GRAIN_IN).up(GRAIN_IN)),
        cut=Cut(2, mirrored=True),
        notches=(
            notch_along("overarm", top.shoulder.reading().length, NotchKind.SINGLE),
            notch("raglan", reversed_raglan, top.notch, kind),
        ),
    )
