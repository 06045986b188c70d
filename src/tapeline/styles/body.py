"""Back and front as pieces: what all plain tops share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tapeline.blocks.centre import ON_THE_FOLD, CentreRule, HalfLines
from tapeline.blocks.dartless import Dartless, Half
from tapeline.blocks.funnel import raised_shoulder
from tapeline.blocks.outline import SideLines, armhole, square_hem
from tapeline.blocks.sleeve_sizes import ArmholeNotch
from tapeline.draft import Draft, Drawn, Place, Reading, Sheet, hemmed, notch, only_if, opened, sewn
from tapeline.lengths import Length, cm
from tapeline.pattern import Edge, Mark, Notch, NotchKind, Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = [
    "ArmLines",
    "ArmRule",
    "Body",
    "HalfBody",
    "HalfShape",
    "OwnEdges",
    "body",
    "set_in",
]

LEAST_SHOULDER = cm(0.5)
"""Of the shoulder, below a funnel."""
GRAIN_IN = cm(6)
"""The grain line is drawn this far from the centre, where it is in nobody's way."""
GRAIN_UP = cm(2)
"""Above the hem of a garment that ends above the waist."""


@dataclass(frozen=True, slots=True)
class HalfShape:
    """What a style gives one half: where its neckline begins and ends, its side, its hem at the centre."""

    neckline: Drawn
    neckline_centre: Place
    neckline_shoulder: Place
    side: SideLines
    hem_centre: Place
    banded: bool = False
    """Whether the hem is sewn to a band, not turned up."""
    pointed: bool = False
    """Whether the neckline meets the centre in a point."""
    centre: CentreRule = ON_THE_FOLD
    edge: Callable[[str, Drawn], Edge] = sewn
    """What becomes of the neckline."""
    funnel: tuple[Place, Length] | None = None
    """The top of a funnel at the shoulder seam, and how high it is above the shoulder."""


@dataclass(frozen=True, slots=True)
class OwnEdges:
    """Edges from the first seam beside the neckline to the hem, their notches, and the side among them."""

    edges: tuple[Edge, ...]
    notches: tuple[Notch, ...]
    side: Drawn
    over: str = ""
    """Of a sleeve cut in one: the seam over the shoulder, which goes before them."""
    tip: Place | None = None
    """Where that is notched."""
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class ArmLines:
    """Shoulder and armhole of one half, and where the armhole is notched."""

    shoulder: Drawn
    armhole: Drawn
    notch: Place
    edge: Callable[[str, Drawn], Edge] = sewn
    """What becomes of the armhole."""
    neckline: Drawn | None = None
    """What a raglan seam, in place of shoulder and armhole, leaves of the neckline; the rest goes with the sleeve."""
    cut_in_one: OwnEdges | None = None
    """Of a half with its sleeve, in place of shoulder, armhole and side."""


ArmRule = Callable[[Sheet, Half, HalfShape], ArmLines]
"""Draws them between the neckline and the side."""


def set_in(sheet: Sheet, half: Half, shape: HalfShape) -> ArmLines:
    """The armhole lies where the arm begins."""
    shoulder = sheet.straight(
        "shoulder", "Sewn to the other shoulder, which is as long", shape.neckline_shoulder, half.shoulder_tip
    )
    return ArmLines(shoulder, armhole(sheet, half, shoulder, shape.side.side), half.armhole_point)


@dataclass(frozen=True, slots=True)
class HalfBody:
    """One half as a piece, where its armhole is notched, and the lines that other parts are sewn to."""

    piece: Piece
    notch: ArmholeNotch
    shoulder: Drawn
    armhole: Drawn
    hem: Drawn
    centre: Drawn
    side: Drawn
    notched: Place
    """Where the armhole is notched."""


@dataclass(frozen=True, slots=True)
class Body:
    """Back and front."""

    back: HalfBody
    front: HalfBody

    @property
    def pieces(self) -> tuple[Piece, Piece]:
        """Back and front."""
        return self.back.piece, self.front.piece


def body(d: Draft, block: Dartless, back: HalfShape, front: HalfShape, arm: ArmRule = set_in) -> Body:
    """Draw the lines of both halves, close their outlines, notch armholes and waist, measure the armholes."""
    half_neckline, neck = front.neckline.reading() + back.neckline.reading(), block.neck
    of_back, of_front = (neck.back_neck_point, neck.nape), (neck.front_neck_point, neck.front_neck)
    return Body(
        half_body(d, "back", (block.back, of_back, half_neckline), back, arm, kind=NotchKind.DOUBLE),
        half_body(d, "front", (block.front, of_front, half_neckline), front, arm, kind=NotchKind.SINGLE),
    )


def half_body(
    d: Draft,
    name: str,
    body: tuple[Half, tuple[Place, Place], Reading],
    shape: HalfShape,
    arm: ArmRule,
    *,
    kind: NotchKind,
) -> HalfBody:
    """One half as a piece: on the fold, or open at the centre.

    The body is the half's points, its neck point and pit of the neck or nape, and half the neckline, front and back.
    """
    half, (neck_point, pit), round_the_neck = body
    sheet, side = d.sheet(name), shape.side
    sheet.section(f"The lines of the {name}")
    centre = sheet.straight("centre", shape.centre.says.format(name), shape.hem_centre, shape.neckline_centre)
    lines = arm(sheet, half, shape)
    shoulder = lines.shoulder
    if shape.funnel is not None:
        if lines.neckline is not None:
            raise funnel_on_raglan()
        top, rise = shape.funnel
        d.require(
            "funnel-too-high",
            lines.shoulder.straight_start.length,
            rise + LEAST_SHOULDER,
            says="the shoulder is too short for the funnel to bend into it",
            where="garment.neckline.shape.rise",
            hint="make garment.neckline.shape.rise smaller, or widen the neckline less",
        )
        shoulder = raised_shoulder(sheet, top, shape.neckline_shoulder, lines.shoulder, rise)
    hem = square_hem(sheet, shape.hem_centre, side)
    neckline, raglan = lines.neckline or shape.neckline, lines.neckline is not None
    slit = (opened("vent", side.vent),) if side.vent else ()
    foot = half.waist_level if shape.hem_centre.point.y < half.waist_level.point.y else shape.hem_centre.up(GRAIN_UP)
    middle = shape.centre.draw(
        d,
        sheet,
        HalfLines(
            half,
            neck_point,
            round_the_neck,
            shape.neckline_centre,
            shape.hem_centre,
            centre,
            neckline,
            shoulder,
            hem,
            side.last,
            pit,
        ),
    )
    hem = middle.hem or hem
    arm_edge = "raglan" if raglan else "armhole"
    own = lines.cut_in_one or OwnEdges(
        (
            *only_if(not raglan, sewn("shoulder", shoulder)),
            lines.edge(arm_edge, lines.armhole),
            sewn("side", side.side),
        ),
        (notch(arm_edge, lines.armhole, lines.notch, kind),),
        side.side,
    )
    piece = sheet.piece(
        name.title(),
        *middle.edges,
        shape.edge("neckline", middle.neckline),
        *only_if(bool(own.over), sewn(own.over, shoulder)),
        *own.edges,
        *slit,
        (sewn if shape.banded else hemmed)("hem", hem),
        grain=(foot.out(GRAIN_IN), half.chest_level.out(GRAIN_IN)),
        cut=middle.cut,
        notches=(
            *((notch(own.over, shoulder, own.tip),) if own.tip else ()),
            *own.notches,
            notch("side", own.side, side.notch),
            *(notch("side", own.side, side.vent_top) for _ in slit),
        ),
        marks=(*middle.marks, *own.marks),
        pointed=("neckline",) if shape.pointed else (),
    )
    if lines.cut_in_one:
        arm_edge = "underarm"
    whole = d.measured(f"{name}_{arm_edge}", f"Along the {name} {arm_edge}", lines.armhole.reading())
    to_notch = d.measured(
        f"{name}_{arm_edge}_notch",
        f"From the {'neckline' if raglan else 'hem' if lines.cut_in_one else 'shoulder'} to its notch",
        lines.armhole.reading_to(lines.notch),
    )
    return HalfBody(piece, ArmholeNotch(whole, to_notch), shoulder, lines.armhole, hem, centre, side.side, lines.notch)


def funnel_on_raglan() -> InputError:
    """What is said of a funnel above a raglan sleeve."""
    return InputError(
        Problem(
            "funnel-on-raglan",
            Severity.ERROR,
            "a funnel is cut on to the shoulder seam, and a raglan sleeve has none",
            "garment.neckline.shape",
            "choose another shape in garment.neckline.shape, or a collar of rib. Nothing was drafted.",
        )
    )
