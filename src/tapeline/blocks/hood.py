"""The hood: two side panels, with a centre strip between them or without, sewn to the neckline.

Seen from the side, face to the left. Rules: common practice in the trade, no published source; the share of the head
that the face leaves open, how full the crown is and how the neck edge falls are our own.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.head import head
from tapeline.blocks.hood_choices import HoodChoices, HoodCut
from tapeline.blocks.hood_cord import FaceLines, casing
from tapeline.blocks.hood_strip import hood_strip
from tapeline.blocks.neck import Neckline
from tapeline.draft import (
    LEVEL,
    STRAIGHT_DOWN,
    Draft,
    Drawn,
    Place,
    Reading,
    Sheet,
    halfway,
    hemmed,
    notch,
    notch_along,
    part_way,
    sewn,
)
from tapeline.lengths import Length, at_least, at_most, cm
from tapeline.pattern import Cut, Edge, Notch, NotchKind, Piece

__all__ = ["OPEN_AT_FACE", "Hood", "hood"]

OPEN_AT_FACE = Fraction(1, 4)
"""The face leaves so much of the head's girth open."""
FALLS = 2
"""The neck edge falls to the face by the neckline's own fall over this: standing on its edge, a neckline falls less."""
STEEPEST = 4
"""And by its length over this at most."""
CROWN_FULL = Fraction(18, 25)
"""How far down the diagonal, from the middle of the head to the corner, the crown passes."""
LEAST_OF_BACK = cm(1)
"""Of the back neckline, between the strip and the shoulder."""
DRAWN_OUT = cm(3)
"""The neck edge may reach so far behind the back of the head; further, and the crown would turn back on its way."""
DEEPEST = Fraction(11, 10)
"""A hood is no deeper than its height times this; our own choice."""
GRAIN_IN = cm(6)


@dataclass(frozen=True, slots=True)
class Hood:
    """The hood's pieces, and where the neckline is notched for it."""

    pieces: tuple[Piece, ...]
    cut: HoodCut
    overlap: Length
    back_notches: tuple[Notch, ...] = ()
    front_notches: tuple[Notch, ...] = ()


def hood(d: Draft, c: HoodChoices, line: Neckline, widened: Length) -> Hood:
    """A hood whose neck edge is as long as the neckline.

    Args:
        d: Where it is drawn.
        c: What was chosen.
        line: The neckline it is sewn to.
        widened: How far down the shoulder that neckline begins: the hood is higher by as much.
    """
    three = c.cut is HoodCut.THREE
    d.section("The hood's sizes")
    size = head(d)
    front = d.measured("front_neckline", "Half the front neckline", line.front.reading())
    back = d.measured("back_neckline", "Half the back neckline", line.back.reading())
    whole = d.measured("neckline", "Half the neckline", front + back)
    if three:
        d.require(
            "hood-strip-wide",
            back,
            c.strip_neck / 2 + LEAST_OF_BACK,
            says="the hood's centre strip is so wide at the neck that it reaches the shoulder seams",
            where="garment.hood.strip_neck",
            hint="make garment.hood.strip_neck smaller",
        )
    neck_edge = d.measured(
        "hood_neck_edge",
        "Half the neckline, less half the strip" if three else "As long as half the neckline",
        whole - c.strip_neck / 2 if three else whole,
    )
    up = d.measured(
        "hood_up", "From the neckline on the shoulder up to the top of the head", size.neck_to_crown + widened
    )
    height = up + c.height_ease
    height = d.measured(
        "hood_height",
        "Above the shoulder seam: up to the top of the head, and ease" + (", less half the strip" if three else ""),
        height - c.strip_width / 2 if three else height,
    )
    fall = d.measured("neckline_fall", "How much lower the front neckline is than the back", fall_of(line))
    rise = d.measured(
        "hood_rise",
        "How much lower the hood is at the face than at the back: half of that, and never steep",
        at_most(at_least(fall / FALLS, cm(0)), neck_edge / STEEPEST),
    )

    s = d.sheet("hood")
    s.section("The hood")
    run = d.measured(
        "hood_run",
        "Straight across at the neck",
        d.found(
            "hood_run",
            "so that the neck edge measures",
            lambda scratch, length: neck_line(scratch.sheet("hood"), length, rise)[2].reading().length,
            equals=neck_edge,
            between=(neck_edge * Fraction(7, 10), neck_edge),
        ),
    )
    depth = size.girth / 2 * (1 - OPEN_AT_FACE) + c.depth_ease
    depth = d.measured(
        "hood_depth",
        "From the face to the back of the head: three quarters of half its girth, for the face is open, and ease"
        + (", less half the strip" if three else "")
        + "; on a long neckline never so little that the back is drawn out to it",
        at_least(depth - c.strip_width / 2 if three else depth, run - DRAWN_OUT),
    )
    d.require(
        "hood-too-deep",
        height * DEEPEST,
        depth,
        says="the hood is so much deeper than it is high that it would hang at the back like a bag",
        where="garment.hood.depth_ease",
        hint="make garment.hood.depth_ease smaller, or garment.hood.height_ease larger",
    )
    centre_front, neck_back, edge = neck_line(s, run, rise)
    shoulder = s.point("shoulder", "Meets the shoulder seam", edge.along(front))
    top = s.point("crown_level", "As high as the hood is", shoulder.up(height))
    face_top = s.point("face_top", "Above the centre front", centre_front.level_with(top))
    foot = s.point(
        "face_foot",
        "Past the centre front by the overlap" if c.overlap.mm else "On the centre front",
        centre_front.inward(c.overlap),
    )
    face = s.straight("face", "Round the face, turned in", foot, face_top)
    middle = s.point("head_middle", "Half way up: the back of the head stands out here", halfway(shoulder, top))
    inner = s.point("inner_corner", "The same, above the centre front", centre_front.level_with(middle))
    back_of_head = s.point("back_of_head", "As deep as the hood is", inner.out(depth))
    square = s.point("face_square", "Square off the face, as deep", face_top.away_from((face_top, foot), depth))
    outer = s.point(
        "outer_corner",
        "The hood's upper corner, above the back of the head",
        back_of_head.level_with(square),
    )
    guide = s.point("crown_guide", "Keeps the crown full", part_way(inner, outer, CROWN_FULL))
    crown = s.curve(
        "crown",
        "Over the crown and down the back: square to the face, and square to the neck edge",
        face_top,
        guide,
        back_of_head,
        neck_back,
        leave=face.square_at_end,
        arrive=STRAIGHT_DOWN,
    )
    strip = hood_strip(d, c, crown, back_of_head) if three else None
    s.section("The casing, and the neck edge")
    marks = casing(d, s, c, FaceLines(foot, face, crown))
    neck_edges, notches = neck_seam(s, c, edge, neck_back, front)
    side = s.piece(
        "Hood side" if three else "Hood",
        hemmed("face", face, c.casing),
        sewn("crown", crown),
        *neck_edges,
        grain=(inner.out(GRAIN_IN), inner.out(GRAIN_IN).up(cm(10))),
        cut=Cut(2, mirrored=True),
        notches=(notch("crown", crown, back_of_head), *notches),
        marks=marks,
    )
    return Hood(
        (side, *(() if strip is None else (strip,))),
        c.cut,
        c.overlap,
        (notch_along("neckline", c.strip_neck / 2, NotchKind.SINGLE),) if three else (),
        (notch_along("neckline", c.overlap, NotchKind.SINGLE),) if c.overlap.mm else (),
    )


def neck_line(s: Sheet, run: Length, rise: Length) -> tuple[Place, Place, Drawn]:
    """The centre front, the back end of the neck edge, and the edge itself, level at both ends."""
    centre_front = s.point("centre_front", "The centre front, at the neck", s.origin)
    neck_back = s.point("neck_back", "The neck edge's other end, at the back", centre_front.out(run).up(rise))
    says = "Sewn to the neckline: level where it begins and ends, so that it runs on over the seams"
    return centre_front, neck_back, s.curve("neck_edge", says, centre_front, neck_back, leave=LEVEL, arrive=LEVEL)


def neck_seam(
    s: Sheet, c: HoodChoices, edge: Drawn, neck_back: Place, front: Length
) -> tuple[tuple[Edge, ...], tuple[Notch, ...]]:
    """The neck edge from the back to the face as edges, and its notches: one edge, or three where the hood overlaps."""
    whole = edge.path.length
    shoulder = Notch("neckline", whole - front.mm, NotchKind.SINGLE)
    if not c.overlap.mm:
        neckline = s.drawn("neckline", "Sewn to the neckline", edge.path.reversed(), ("the neck edge",), (edge.label,))
        return (sewn("neckline", neckline),), (shoulder,)
    d_from = edge.along(c.overlap)
    split = s.point("overlap_end", "To here the other side of the hood reaches", d_from)
    foot = s.point("overlap_foot", "Past the centre front by the overlap", s.origin.inward(c.overlap))
    start = s.point("overlap_start", "The centre front", s.origin)
    near = edge.path.length_to(split.point)
    neckline = s.drawn(
        "neckline",
        "Sewn to the neckline",
        edge.path.part(near, whole).reversed(),
        (f"the neck edge from {neck_back.name} to {split.name}",),
        (edge.label, split.label, neck_back.label),
    )
    under = s.drawn(
        "overlapped",
        "Sewn to the neckline, with the other side's end on it",
        edge.path.part(0, near).reversed(),
        (f"the neck edge from {split.name} to the centre front",),
        (edge.label, split.label),
    )
    over = s.straight("overlap", "Lies on the other side, and is sewn to the neckline with it", start, foot)
    return (
        (sewn("neckline", neckline), sewn("overlapped", under), sewn("overlap", over)),
        (shoulder, Notch("overlap", 0.0, NotchKind.SINGLE)),
    )


def fall_of(line: Neckline) -> Reading:
    """How much lower the front neckline's centre lies than the back's."""
    return Reading(
        Length(line.back.path.start.y - line.front.path.start.y),
        ("measured down from the middle of the back neckline to the level of the front's",),
        (line.back.label, line.front.label),
    )
