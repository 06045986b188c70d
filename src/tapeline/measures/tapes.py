"""The table of tapes: what is measured, how, and between which limits it is believed.

How to take a tape is told in our own words. Names and clauses of ISO 8559-1:2017 were read in secondary texts.
Limits are common practice, no source: wider than any survey or size table known to us, so that a value outside is
nearly always a slip of the pen or the unit; what holds for one tape only is said with it.
"""

from __future__ import annotations

import math
from types import MappingProxyType

from tapeline.measures.figures import Figure
from tapeline.measures.tape import Limits, Place, Tape

__all__ = ["TAPES", "required_tapes", "tapes_of"]

_WIDE = "wider than any survey or size table we know, so that a value outside is nearly always a slip"

Span = tuple[float, float] | None


def _tape(
    name: str,
    title: str,
    place: Place,
    take: str,
    *,
    woman: Span = None,
    man: Span = None,
    child: Span = None,
    iso: tuple[str, str, str] = ("", "", ""),
    reason: str = _WIDE,
    required: bool = False,
    angle: bool = False,
) -> Tape:
    """A tape from limits in cm or degrees and (name, clause, difference) of the ISO measurement."""
    scale = math.radians(1) if angle else 10.0
    spans = {Figure.WOMAN: woman, Figure.MAN: man, Figure.CHILD: child}
    limits = {figure: Limits(span[0] * scale, span[1] * scale) for figure, span in spans.items() if span}
    return Tape(name, title, place, take, limits, reason, required, angle, *iso)


_FULLEST = (
    "Round the body over the fullest part of the chest, level all the way and lying on without pressing. "
    "The wearer breathes quietly with the arms down, over what will be worn underneath."
)

_TABLE = (
    _tape(
        "bust", "Bust girth", "chest", _FULLEST, woman=(60, 175), child=(38, 115), required=True,
        iso=("bust girth", "5.3.4", ""),
        reason="women's size tables after EN 13402-3 run to a bust of 155 cm; room is left beyond them",
    ),
    _tape("chest", "Chest girth", "chest", _FULLEST, man=(65, 175), child=(38, 115), required=True),
    _tape(
        "upper_chest", "Upper chest girth", "chest",
        "Round the body high under the arms, above the fullest part, touching both armpits. Raise the arms to lay the "
        "tape and lower them to read it; keep it level over the shoulder blades.",
        woman=(58, 165), man=(65, 175), child=(38, 115), required=True,
    ),
    _tape(
        "waist", "Waist girth", "waist",
        "Tie a ribbon round the body and let the wearer bend to the sides: where it settles is the waist. Measure "
        "level along the ribbon after breathing out, without drawing in, and leave it there for the lengths.",
        woman=(45, 175), man=(50, 180), child=(36, 115), required=True,
        iso=("waist girth", "5.3.10", "the standard measures midway between the lowest rib and the hip bone"),
    ),
    _tape(
        "hip", "Hip girth", "hip",
        "Round the body where the seat stands out most, feet together, level at both sides. Look from the side to find "
        "the height; include the belly only where it hangs at that height.",
        woman=(60, 200), man=(60, 200), child=(38, 130), required=True,
        iso=("hip girth", "5.3.13", ""),
    ),
    _tape(
        "shoulder_width", "Shoulder width over the back", "shoulder",
        "From the outer end of one shoulder bone to the other, laid over the nape (the bone at the base of the neck). "
        "Arms hang loosely; lift an arm once to feel where the bone ends.",
        woman=(27, 56), man=(31, 65), child=(16, 50), required=True,
        iso=("across back shoulder width", "5.4.3", ""),
    ),
    _tape(
        "back_length", "Back length", "back",
        "From the nape straight down the spine to the waist ribbon, following the hollow of the back. Bend the head "
        "forward to find the nape, then stand upright to measure.",
        woman=(26, 54), man=(30, 62), child=(15, 48), required=True,
        iso=("back neck point to waist", "5.4.5", "measured to the waist of our own waist tape"),
    ),
    _tape(
        "hip_depth", "Hip depth", "back",
        "From the waist ribbon down the middle of the back to the level of the hip tape. Let it follow the body, and "
        "keep both levels where their tapes were taken.",
        woman=(11, 36), man=(9, 36), child=(6, 30), required=True,
    ),
    _tape(
        "arm_length", "Arm length", "arm",
        "From the outer end of the shoulder bone over the point of the elbow to the wrist bone on the little finger's "
        "side. Bend the arm a little, hand on the hip, so that the elbow shows.",
        woman=(41, 78), man=(45, 88), child=(18, 75), required=True,
        iso=("outer arm length", "5.7.8", ""),
    ),
    _tape(
        "neck", "Neck base girth", "neck",
        "Round the base of the neck, over the nape, both neck points and the hollow between the collar bones. Stand "
        "the tape on its edge so that it turns the curve.",
        woman=(26, 60), man=(29, 65), child=(20, 45),
        iso=("neck base girth", "5.3.3", ""),
    ),
    _tape(
        "back_width", "Back width", "back",
        "Across the back half way down the armholes, from where one arm joins the body to the other. Arms hang "
        "loosely, a little forward, and the tape stays level.",
        woman=(24, 60), man=(22, 65), child=(15, 48),
    ),
    _tape(
        "chest_width", "Chest width", "front",
        "Across the front above the bust, half way down the armholes, from where one arm joins the body to the other. "
        "Breathe quietly and do not pull the shoulders back.",
        woman=(22, 60), man=(24, 65), child=(14, 46),
    ),
    _tape(
        "armhole_depth", "Armhole depth", "back",
        "From the nape straight down the spine to the level of the armpits. A strip of paper held high under both arms "
        "shows the level at the back.",
        woman=(11, 32), man=(13, 36), child=(7, 26),
    ),
    _tape(
        "armhole_girth", "Armhole girth", "shoulder",
        "Round the shoulder, over the outer end of the shoulder bone and under the arm. The arm hangs; the tape "
        "touches without cutting in.",
        woman=(25, 65), man=(32, 75), child=(15, 55),
    ),
    _tape(
        "shoulder_length", "Shoulder length", "shoulder",
        "From the neck point, where a chain would lie at the side of the neck, along the top of the shoulder to the "
        "outer end of the bone. Tilt the head a little to the other side to find where neck and shoulder meet.",
        woman=(8, 21), man=(9, 24), child=(5, 18),
    ),
    _tape(
        "shoulder_slope", "Shoulder slope", "shoulder",
        "The angle by which the shoulder falls from the neck point to the outer end of the bone, against a level line. "
        "Read it off a photograph from behind or with a protractor held level.",
        woman=(5, 45), man=(5, 45), child=(5, 45), angle=True,
        reason="the women of the survey lie between 10 and 41 degrees within four standard deviations",
    ),
    _tape(
        "upper_arm", "Upper arm girth", "arm",
        "Round the upper arm where it is fullest, below the armpit, square to the arm. The arm hangs and the muscle is "
        "not tightened.",
        woman=(17, 62), man=(18, 65), child=(11, 45),
        iso=("upper-arm girth", "5.3.16", ""),
    ),
    _tape(
        "elbow", "Elbow girth", "arm",
        "Round the elbow over its point and through the crease, with the arm a little bent. Lay the tape on lightly, "
        "for a sleeve has to slide over it.",
        woman=(15, 50), man=(17, 52), child=(10, 40),
    ),
    _tape(
        "wrist", "Wrist girth", "arm",
        "Round the wrist over the bone on the little finger's side, lying on closely. The hand is open and relaxed, "
        "and bracelets are off.",
        woman=(11, 26), man=(12, 28), child=(8, 22),
        iso=("wrist girth", "5.3.19", ""),
    ),
    _tape(
        "head_girth", "Head girth", "head",
        "Round the head above the brows and over the part that stands out most behind. Hair is worn as it will be when "
        "the garment goes over it.",
        woman=(48, 66), man=(49, 68), child=(38, 62),
    ),
    _tape(
        "neck_to_crown", "Neck to crown", "head",
        "From the neck point, where a chain would lie at the side of the neck, up in front of the ear and over to the "
        "highest point of the head. The tape lies on the hair as it is worn; the wearer looks straight ahead.",
        woman=(20, 38), man=(20, 40), child=(15, 36),
    ),
    _tape(
        "height", "Height", "whole body",
        "From the floor to the top of the head, without shoes, back to a wall and looking straight ahead. Lay a book "
        "level on the head and mark its lower edge.",
        woman=(125, 215), man=(130, 230), child=(55, 195),
    ),
    _tape(
        "bust_point_depth", "Bust point depth", "front",
        "From the neck point, where a chain would lie at the side of the neck, straight down the front to the bust "
        "point. Wear what will be worn underneath.",
        woman=(16, 52),
    ),
    _tape(
        "bust_span", "Bust span", "front",
        "From one bust point to the other, straight across and not into the hollow between. Wear what will be worn "
        "underneath.",
        woman=(10, 36),
    ),
)  # fmt: skip

TAPES = MappingProxyType({tape.name: tape for tape in _TABLE})
"""Every tape by its name, in the order in which they are best taken."""


def tapes_of(figure: Figure) -> tuple[Tape, ...]:
    """The tapes that wearers of a figure have.

    >>> "bust_span" in {tape.name for tape in tapes_of(Figure.MAN)}
    False
    """
    return tuple(tape for tape in _TABLE if tape.taken_on(figure))


def required_tapes(figure: Figure) -> tuple[Tape, ...]:
    """The eight tapes that no wearer of a figure can do without.

    A child's fullest girth may be called bust or chest; bust stands in the list.

    >>> [tape.name for tape in required_tapes(Figure.MAN)][:3]
    ['chest', 'upper_chest', 'waist']
    """
    other = "bust" if figure.fullest == "chest" else "chest"
    return tuple(tape for tape in tapes_of(figure) if tape.required and tape.name != other)
