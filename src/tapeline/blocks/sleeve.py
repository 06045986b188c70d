"""The sleeve, drafted to the armholes it will be sewn into.

Rules for the cap: common practice, no published source; how far its guide points lie off the straight line is our own
choice of what a French curve gives (docs/explanation). It holds for armholes that go round the arm; where the cap
cannot be made as long as the armhole, `cannot-be-met` says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.sleeve_choices import SleeveChoices, reaches_the_wrist
from tapeline.draft import (
    LEVEL,
    STRAIGHT_DOWN,
    Draft,
    Drawn,
    Place,
    Sheet,
    halfway,
    hemmed,
    notch_along,
    only_if,
    part_way,
    sewn,
)
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut, Girth, NotchKind, Piece

__all__ = ["ArmholeNotch", "Dropped", "Sleeve", "sleeve"]

LOW, HIGH = Fraction(1, 4), Fraction(3, 4)
"""The guide points lie beside these places of the straight line from underarm to crown."""
FRONT_HOLLOW, BACK_HOLLOW = Fraction(1, 48), Fraction(1, 90)
"""How far the cap lies below the straight line at the low guide, as a share of the armhole."""
FRONT_RISE, BACK_RISE = Fraction(11, 250), Fraction(1, 25)
"""How far the cap rises over the straight line at the high guide, as a share of the armhole."""
FLATTER, FULLER = Fraction(1, 5), Fraction(3, 10)
"""An even hem would lie a quarter of its dip above the straight line there, or below it where the sleeve flares."""
MOST_BEND = Fraction(3, 2)
"""So many times the bend's upper half must be left below it: it ends as far below as it began above."""
LEAST_UNDERARM = cm(0.5)
"""A shorter underarm seam has no room for its bend, and the hem would run into the cap."""
LEAST_CAP = cm(1)
"""Flatter than this a cap line cannot be told from a straight one."""
FLAT_CAP = 4
"""Times its height: the armhole of an easy cap, whose hollows and rises a flatter one takes."""
LEAST_WIDTH = cm(4)
"""Where the search for the widths begins if cap height and armhole leave nothing."""


@dataclass(frozen=True, slots=True)
class CapSizes:
    """What a cap is drawn from, besides its widths."""

    fullness: Length
    """What hollows and rises are shares of: the armhole; less where a cap is too flat to take them."""
    height: Length
    length: Length
    """Of the whole sleeve."""


@dataclass(frozen=True, slots=True)
class Cap:
    """The upper part of a sleeve: cap line in two parts, from underarm to crown to underarm."""

    crown: Place
    hem_level: Place
    back_underarm: Place
    front_underarm: Place
    back: Drawn
    front: Drawn


@dataclass(frozen=True, slots=True)
class ArmholeNotch:
    """Lengths from the shoulder tip: of a whole armhole, and to its notch."""

    whole: Length
    to_notch: Length


@dataclass(frozen=True, slots=True)
class Sleeve:
    """The sleeve and the sizes that describe it."""

    piece: Piece
    cap_ease: Length
    width: Length
    hem_width: Length
    reaches_the_wrist: bool
    """With its cuff, where it has one."""
    wrist: tuple[Girth, ...]
    """The girth at the wrist, for a sleeve that comes in to it and reaches it."""


@dataclass(frozen=True, slots=True)
class Dropped:
    """What a dropped shoulder takes from the sleeve."""

    by: Length
    set_in: Length
    """Both armholes of one side as they would be, set in."""


def sleeve(
    d: Draft,
    c: SleeveChoices,
    back: ArmholeNotch,
    front: ArmholeNotch,
    arm_length: Length,
    *,
    dropped: Dropped | None = None,
    cuff: Length | None = None,
) -> Sleeve:
    """A sleeve for two armholes: set in, or sewn to a shoulder that was dropped; hemmed, or with a cuff so wide."""
    d.section("The sleeve's sizes")
    armhole = d.measured("armhole", "Both armholes of one side", front.whole + back.whole)
    if dropped is None:
        below_shoulder = arm_length
        cap_height = d.measured("cap_height", "From crown to underarm", c.cap.height(armhole))
        clears = cap_height + cuff if cuff else cap_height
        length = d.measured("sleeve_length", "From the crown to the hem", c.length.on(arm_length, clears))
        fullness = armhole
    else:
        below_shoulder = d.measured("arm_below_drop", "The arm below the dropped shoulder", arm_length - dropped.by)
        cap_height = d.measured(
            "cap_height",
            "As high as for a set-in sleeve, lowered by what was dropped",
            c.cap.height(dropped.set_in) - dropped.by,
        )
        d.require(
            "cap-too-low",
            cap_height,
            LEAST_CAP,
            says="what was dropped leaves no cap",
            where="sleeve",
            hint="drop the shoulder less, make garment.sleeve.cap formal, or lower the armhole",
        )
        length = d.measured(
            "sleeve_length",
            "To the same place of the arm as a set-in sleeve: what was dropped lies on it already",
            c.length.on(arm_length, cap_height + dropped.by) - dropped.by,
        )
        fullness = at_most(armhole, cap_height * FLAT_CAP)
    if cuff:
        length = d.measured("sleeve_length_to_cuff", "The cuff makes up the rest", length - cuff)
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
    front_cap = d.measured(
        "front_cap", "The front of the cap line: front armhole and half the ease", front.whole + c.ease / 2
    )
    back_cap = d.measured(
        "back_cap", "The back of the cap line: back armhole and half the ease", back.whole + c.ease / 2
    )

    sizes = CapSizes(fullness, cap_height, length)
    front_width, back_width = d.found_together(
        ("front_sleeve_width", "back_sleeve_width"),
        "so wide that the cap line is as long as the armholes and the ease, front and back each",
        lambda scratch, widths: cap(scratch, sizes, *widths),
        lambda drawn: (drawn.front.reading().length - front_cap, drawn.back.reading().length - back_cap),
        start=(front.whole.leg(cap_height, LEAST_WIDTH), back.whole.leg(cap_height, LEAST_WIDTH)),
    )
    width = d.measured("sleeve_width", "Across the sleeve at the cap's foot", front_width + back_width)
    drawn = cap(d, sizes, front_width, back_width)

    s = d.sheet("sleeve")
    s.section("The underarm seams")
    wrist_level = s.point("wrist_level", "The wrist, straight below the crown", drawn.crown.down(below_shoulder))
    bend_drop = (length - cap_height) / 6
    narrowing = d.measured(
        "sleeve_narrowing",
        "Each underarm seam comes in by as much",
        c.shape.narrowing((width - wrist_width) / 2, below_shoulder - cap_height - bend_drop),
    )
    bend = d.measured("underarm_bend", "The underarm seams leave the cap straight down for so long", bend_drop)
    back_bend = s.point(
        "back_bend", "From here the back underarm seam turns to the wrist", drawn.back_underarm.down(bend)
    )
    front_bend = s.point(
        "front_bend", "From here the front underarm seam turns to the wrist", drawn.front_underarm.down(bend)
    )
    back_wrist = s.point(
        "back_wrist", "The back underarm seam at the wrist", wrist_level.inward(back_width - narrowing)
    )
    front_wrist = s.point(
        "front_wrist", "The front underarm seam at the wrist", wrist_level.out(front_width - narrowing)
    )
    back_line = s.straight("back_underarm_line", "The back underarm seam, but for its bend", back_bend, back_wrist)
    front_line = s.straight("front_underarm_line", "The front underarm seam, but for its bend", front_bend, front_wrist)

    s.section("The hem")
    back_corner = s.point("back_hem", "The back underarm seam at the hem", back_line.arc_end(drawn.hem_level))
    d.require(
        "underarm-vanishes",
        back_bend.reading_down_to(back_corner).length,
        bend * MOST_BEND,
        says="the hem of a sleeve that goes out so much rises into its cap",
        where="sleeve",
        hint="make garment.sleeve.length longer, or garment.sleeve.shape less flared",
    )
    down = d.measured("underarm_below_bend", "From the bend to the hem, straight", back_corner.reading_from(back_bend))
    front_corner = s.point(
        "front_hem", "As far down the front line, so that the seams are equal", front_line.along(down)
    )
    underarm_back = bent(s, "underarm_back", back_line, drawn.back_underarm, back_line.along(bend), to=back_corner)
    underarm_front = bent(
        s, "underarm_front", front_line, drawn.front_underarm, front_line.along(bend), to=front_corner
    )
    hem = hem_line(d, s, drawn.hem_level, (front_corner, underarm_front), (back_corner, underarm_back))
    hem_width = d.measured("sleeve_hem_width", "Along the sleeve's hem", hem.reading())
    piece = s.piece(
        "Sleeve",
        sewn("cap_back", drawn.back),
        sewn("cap_front", drawn.front),
        sewn("underarm_front", underarm_front),
        (sewn if cuff else hemmed)("hem", hem),
        sewn("underarm_back", underarm_back.reversed),
        grain=(drawn.hem_level, drawn.crown),
        cut=Cut(2, mirrored=True),
        notches=(
            notch_along("cap_front", cm(0), NotchKind.CROWN),
            notch_along("cap_front", front.to_notch + c.ease / 2, NotchKind.SINGLE),
            notch_along("cap_back", back.whole - back.to_notch, NotchKind.DOUBLE),
            *only_if(cuff is not None, notch_along("hem", hem_width / 2, NotchKind.SINGLE)),
        ),
    )
    reaches = reaches_the_wrist(length + cuff if cuff else length, below_shoulder)
    girths = only_if(
        reaches and c.shape.follows_the_arm, Girth("wrist", wrist, hem_width - wrist, (("sleeve", "hem", 1),))
    )
    return Sleeve(piece, c.ease.named("cap_ease"), width, hem_width, reaches, girths)


def hem_line(d: Draft, s: Sheet, middle: Place, front: tuple[Place, Drawn], back: tuple[Place, Drawn]) -> Drawn:
    """From the front underarm seam's corner through the middle to the back's, square to both."""
    (front_corner, underarm_front), (back_corner, underarm_back) = front, back
    dip = d.measured(
        "sleeve_hem_dip", "How far the back corner lies below the middle", middle.reading_down_to(back_corner)
    )
    back_low = s.point(
        "back_hem_low",
        "Lower than at the front, for the elbow takes up length",
        halfway(middle, back_corner).up(dip * (FLATTER if dip.mm > 0 else FULLER)),
    )
    return s.curve(
        "hem",
        "Square to both underarm seams, so that it is round when sewn",
        front_corner,
        middle,
        back_low,
        back_corner,
        leave=underarm_front.square_at_end,
        arrive=underarm_back.square_at_end,
    )


def bent(s: Sheet, name: str, line: Drawn, underarm: Place, below: Place, *, to: Place) -> Drawn:
    """An underarm seam: straight down from the cap, then round the bend into the line to the wrist."""
    end = s.point(f"{name}_straight", "As far below the bend as the bend is below the cap: straight from here", below)
    top = s.curve(f"{name}_top", "Rounds the bend", underarm, end, leave=STRAIGHT_DOWN, arrive=line.onward)
    rest = s.straight(f"{name}_rest", "Straight on to the hem", end, to)
    return s.joined(name, "Sewn to the other underarm seam, which is its mirror image", top, rest)


def cap(d: Draft, sizes: CapSizes, front_width: Length, back_width: Length) -> Cap:
    """The cap for two given widths; on scratch paper while the widths are being found."""
    s = d.sheet("sleeve")
    s.section("The cap's frame")
    crown = s.point("crown", "The top of the sleeve: meets the shoulder seam", s.origin)
    foot = s.point("cap_foot", "The level of the underarm: the widest part of the sleeve", crown.down(sizes.height))
    front_underarm = s.point("front_underarm", "The front end of the cap line", foot.out(front_width))
    back_underarm = s.point("back_underarm", "The back end of the cap line", foot.inward(back_width))
    hem_level = s.point("hem_level", "The hem, straight below the crown", crown.down(sizes.length))

    s.section("The cap line")
    back_low = s.point(
        "back_cap_low",
        "A little hollow near the underarm",
        part_way(back_underarm, crown, LOW).away_from((crown, back_underarm), sizes.fullness * BACK_HOLLOW),
    )
    back_high = s.point(
        "back_cap_high",
        "Round where the arm is round",
        part_way(back_underarm, crown, HIGH).away_from((back_underarm, crown), sizes.fullness * BACK_RISE),
    )
    front_high = s.point(
        "front_cap_high",
        "Rounder than the back: the arm sits forward",
        part_way(front_underarm, crown, HIGH).away_from((crown, front_underarm), sizes.fullness * FRONT_RISE),
    )
    front_low = s.point(
        "front_cap_low",
        "Hollower than the back: the arm swings forward",
        part_way(front_underarm, crown, LOW).away_from((front_underarm, crown), sizes.fullness * FRONT_HOLLOW),
    )
    back, front = s.curve_in_two(
        ("cap_back", "cap_front"),
        "One line over the crown, level at both ends: the underarm seams leave it straight down",
        (back_underarm, back_low, back_high, crown),
        (crown, front_high, front_low, front_underarm),
        leave=LEVEL,
        arrive=LEVEL,
    )
    return Cap(crown, hem_level, back_underarm, front_underarm, back, front)
