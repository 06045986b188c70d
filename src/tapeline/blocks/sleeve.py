"""The sleeve, drafted to the armholes it will be sewn into: common practice, no published source.

It holds for armholes that go round the arm; where the cap cannot be made as long as the armhole, `cannot-be-met` says
so.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.cap import cap
from tapeline.blocks.cap_ease import cap_ease
from tapeline.blocks.cap_widths import cap_widths, wider_cap
from tapeline.blocks.rolled_cuff import TURNED_IN, EndedSleeve, rolled_cuff
from tapeline.blocks.sleeve_choices import ELBOW, SleeveChoices, reaches_the_wrist
from tapeline.blocks.sleeve_end import made_up
from tapeline.blocks.sleeve_sizes import ArmholeNotch, Dropped, hem_is_left, sleeve_sizes
from tapeline.draft import (
    STRAIGHT_DOWN,
    Draft,
    Drawn,
    Place,
    Sheet,
    halfway,
    hemmed,
    notch_along,
    only_if,
    sewn,
)
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Girth, NotchKind, Piece

__all__ = ["Sleeve", "sleeve"]

FLATTER, FULLER = Fraction(1, 5), Fraction(3, 10)
"""An even hem would lie a quarter of its dip above the straight line there, or below it where the sleeve flares."""
MOST_BEND = Fraction(3, 2)
"""So many times the bend's upper half must be left below it: it ends as far below as it began above."""


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
    cuff = made_up(c.end, c.head, cuff)
    d.section("The sleeve's sizes")
    sizes = sleeve_sizes(d, c, front.whole + back.whole, arm_length, dropped=dropped, cuff=cuff)
    length, below_shoulder = sizes.cap.length, sizes.below_shoulder
    wrist = d.body("wrist", "Round the wrist, over the bone")
    wrist_width = d.measured("wrist_width", "A long sleeve at the wrist", wrist + c.wrist_ease)
    ease = cap_ease(d, c.ease, c.cap.share, dropped=dropped is not None)
    front_cap = d.measured(
        "front_cap", "The front of the cap line: front armhole and half the ease", front.whole + ease / 2
    )
    back_cap = d.measured("back_cap", "The back of the cap line: back armhole and half the ease", back.whole + ease / 2)

    cap_sizes = wider_cap(d, sizes.cap, front_cap, back_cap)
    cap_height = cap_sizes.height
    front_width, back_width = cap_widths(d, cap_sizes, front_cap, back_cap)
    width = d.measured("sleeve_width", "Across the sleeve at the cap's foot", front_width + back_width)
    drawn = cap(d, cap_sizes, front_width, back_width)

    s = d.sheet("sleeve")
    s.section("The underarm seams")
    wrist_level = s.point("wrist_level", "The wrist, straight below the crown", drawn.crown.down(below_shoulder))
    if c.end.bell.mm > 0:
        above = arm_length * ELBOW - dropped.by if dropped else arm_length * ELBOW
        s.point("elbow_level", "The elbow, straight below the crown", drawn.crown.down(above))
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
    middle = middle_of_hem(d, s, drawn.hem_level)
    rolled = c.end.rolled.mm > 0
    back_corner = s.point(
        "back_hem",
        "The back underarm seam at the hem",
        back_line.crossing_level(middle) if rolled else back_line.arc_end(middle),
    )
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
    hem_is_left(d, Length(front_corner.point.x - back_corner.point.x, "across_the_hem"))
    underarm_back = bent(s, "underarm_back", back_line, drawn.back_underarm, back_line.along(bend), to=back_corner)
    underarm_front = bent(
        s, "underarm_front", front_line, drawn.front_underarm, front_line.along(bend), to=front_corner
    )
    ended = (
        rolled_cuff(d, s, c.end.rolled, (underarm_front, underarm_back), drawn.front_underarm)
        if rolled
        else EndedSleeve(
            underarm_front,
            underarm_back,
            hem_line(d, s, middle, (front_corner, underarm_front), (back_corner, underarm_back)),
        )
    )
    hem = ended.hem
    hem_width = d.measured("sleeve_hem_width", "Along the sleeve's hem", hem.reading())
    piece = s.piece(
        "Sleeve",
        sewn("cap_back", drawn.back),
        sewn("cap_front", drawn.front),
        sewn("underarm_front", ended.front),
        sewn("hem", hem) if cuff else hemmed("hem", hem, TURNED_IN if rolled else None),
        sewn("underarm_back", ended.back.reversed),
        grain=(drawn.hem_level, drawn.crown),
        cut=Cut(2, mirrored=True),
        notches=(
            notch_along("cap_front", cm(0), NotchKind.CROWN),
            notch_along("cap_front", front.to_notch + ease / 2, NotchKind.SINGLE),
            notch_along("cap_back", back.whole - back.to_notch, NotchKind.DOUBLE),
            *only_if(cuff is not None, notch_along("hem", hem_width / 2, NotchKind.SINGLE)),
        ),
        marks=ended.marks,
    )
    reaches = reaches_the_wrist(length + cuff if cuff else length, below_shoulder)
    girths = only_if(
        reaches and c.shape.follows_the_arm, Girth("wrist", wrist, hem_width - wrist, (("sleeve", "hem", 1),))
    )
    return Sleeve(piece, ease, width, hem_width, reaches, girths)


def middle_of_hem(d: Draft, s: Sheet, below_crown: Place) -> Place:
    """Straight below the crown; where the shoulder seam lies forward, below the place where the crown would be."""
    forward = d.correction("forward_shoulders")
    if not forward.mm:
        return below_crown
    says = "The crown lies forward with the shoulder seam, the middle of the sleeve does not"
    return s.point("hem_middle", says, below_crown.inward(forward))


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
