"""Back and front as pieces, the seams between them, and the girths: what all plain tops share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tapeline.blocks.armhole_band import ArmholeBand
from tapeline.blocks.cuff import Cuff
from tapeline.blocks.dartless import Dartless, Half
from tapeline.blocks.frame import Frame
from tapeline.blocks.hem_band import HemBand
from tapeline.blocks.looseness import Looseness
from tapeline.blocks.neckband import Neckband
from tapeline.blocks.outline import SideLines, armhole, square_hem
from tapeline.blocks.sleeve import Sleeve
from tapeline.blocks.sleeve_sizes import ArmholeNotch
from tapeline.draft import Draft, Drawn, Place, Sheet, edge, folded, hemmed, notch, seam, sewn
from tapeline.lengths import cm
from tapeline.pattern import Cut, Girth, Join, NotchKind, Piece, Seam

__all__ = [
    "ArmLines",
    "ArmRule",
    "Body",
    "HalfBody",
    "HalfShape",
    "armhole_band_seams",
    "band_seams",
    "body",
    "body_girths",
    "body_joins",
    "body_seams",
    "cuff_seams",
    "hem_band_seams",
    "set_in",
    "sleeve_girths",
    "sleeve_joins",
    "sleeve_seams",
]

GRAIN_IN = cm(6)
"""The grain line is drawn this far from the centre, where it is in nobody's way."""
STRETCHED_ON = "the rib is shorter and stretched on, so that it holds the cloth together"
CAP_EASE = "the cap is eased in between the notches and the crown, so that it curves over the shoulder"


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


@dataclass(frozen=True, slots=True)
class ArmLines:
    """Shoulder and armhole of one half, and where the armhole is notched."""

    shoulder: Drawn
    armhole: Drawn
    notch: Place


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
    return Body(
        half_body(d, "back", block.back, back, arm, kind=NotchKind.DOUBLE),
        half_body(d, "front", block.front, front, arm, kind=NotchKind.SINGLE),
    )


def half_body(d: Draft, name: str, half: Half, shape: HalfShape, arm: ArmRule, *, kind: NotchKind) -> HalfBody:
    """One half as a piece on the fold."""
    sheet, side = d.sheet(name), shape.side
    sheet.section(f"The lines of the {name}")
    centre = sheet.straight(
        "centre", f"The centre {name} lies on the fold of the cloth", shape.hem_centre, shape.neckline_centre
    )
    lines = arm(sheet, half, shape)
    hem = square_hem(sheet, shape.hem_centre, side)
    piece = sheet.piece(
        name.title(),
        folded("centre", centre),
        sewn("neckline", shape.neckline),
        sewn("shoulder", lines.shoulder),
        sewn("armhole", lines.armhole),
        sewn("side", side.side),
        (sewn if shape.banded else hemmed)("hem", hem),
        grain=(half.waist_level.out(GRAIN_IN), half.chest_level.out(GRAIN_IN)),
        cut=Cut(1),
        notches=(
            notch("armhole", lines.armhole, lines.notch, kind),
            notch("side", side.side, side.waist),
        ),
    )
    whole = d.measured(f"{name}_armhole", f"Along the {name} armhole", lines.armhole.reading())
    to_notch = d.measured(
        f"{name}_armhole_notch", "From the shoulder to its notch", lines.armhole.reading_to(lines.notch)
    )
    return HalfBody(piece, ArmholeNotch(whole, to_notch), lines.shoulder, lines.armhole, hem)


def body_seams() -> tuple[Seam, ...]:
    """Shoulder and side."""
    return (
        seam("shoulder", edge("front", "shoulder"), edge("back", "shoulder")),
        seam("side", edge("front", "side"), edge("back", "side")),
    )


def body_joins() -> tuple[Join, ...]:
    """Lines that run on over the shoulder and the side."""
    return (
        Join("neckline", "shoulder", (("front", "neckline", "shoulder"), ("back", "neckline", "shoulder"))),
        Join("armhole", "shoulder", (("front", "armhole", "shoulder"), ("back", "armhole", "shoulder"))),
        Join("armhole", "side", (("front", "armhole", "side"), ("back", "armhole", "side"))),
        Join("hem", "side", (("front", "hem", "side"), ("back", "hem", "side"))),
    )


def sleeve_seams(made: Sleeve) -> tuple[Seam, ...]:
    """Cap to armholes, and the underarm."""
    half = made.cap_ease / 2
    return (
        seam("armhole_front", edge("sleeve", "cap_front"), edge("front", "armhole"), ease=half, reason=CAP_EASE),
        seam("armhole_back", edge("sleeve", "cap_back").backward, edge("back", "armhole"), ease=half, reason=CAP_EASE),
        seam("underarm", edge("sleeve", "underarm_front"), edge("sleeve", "underarm_back").backward),
    )


def sleeve_joins() -> tuple[Join, ...]:
    """Lines that run on over the underarm seam."""
    return (
        Join(
            "cap line", "underarm", (("sleeve", "cap_front", "underarm_front"), ("sleeve", "cap_back", "underarm_back"))
        ),
        Join("sleeve hem", "underarm", (("sleeve", "hem", "underarm_front"), ("sleeve", "hem", "underarm_back"))),
    )


def band_seams(made: Neckband) -> tuple[Seam, ...]:
    """Band to neckline, and to itself."""
    return (
        seam(
            "neckline",
            edge("neckband", "neckline"),
            edge("back", "neckline"),
            edge("front", "neckline").backward,
            ease=made.ease,
            reason="the band is shorter and stretched on, so that it lies flat",
        ),
        seam("band", edge("neckband", "neckline_turned"), edge("neckband", "neckline").backward),
        seam("band_ends", edge("neckband", "centre_back"), edge("neckband", "centre_back")),
    )


def body_girths(d: Draft, f: Frame, c: Looseness, side: SideLines) -> tuple[Girth, ...]:
    """Round the body at chest, waist and hip: the tape, and the ease that is meant."""
    waist_quarter = d.measured("waist_quarter", "From the centre to the side at the waist", side.waist_out)
    return (
        Girth("chest", f.bust, c.side * 4, round_body("chest_level")),
        Girth("waist", f.waist, waist_quarter * 4 - f.waist, round_body("waist_level")),
        Girth("hip", f.hip, c.side * 4, round_body("hip_level")),
    )


def sleeve_girths(d: Draft, arm: Sleeve) -> tuple[Girth, ...]:
    """Round the upper arm, and the wrist where the sleeve reaches it."""
    upper_arm = d.body("upper_arm", "Round the upper arm, relaxed")
    return (Girth("upper_arm", upper_arm, arm.width - upper_arm, round_sleeve("cap_foot")), *arm.wrist)


def cuff_seams(made: Cuff) -> tuple[Seam, ...]:
    """Cuff to sleeve, and to itself."""
    return (
        seam("cuff", edge("cuff", "hem"), edge("sleeve", "hem"), ease=made.ease, reason=STRETCHED_ON),
        seam("cuff_turned", edge("cuff", "hem_turned"), edge("cuff", "hem").backward),
        seam("cuff_ends", edge("cuff", "front_end"), edge("cuff", "back_end").backward),
    )


def armhole_band_seams(made: ArmholeBand) -> tuple[Seam, ...]:
    """Band to armhole, and to itself."""
    return (
        seam(
            "armhole",
            edge("armhole_band", "armhole"),
            edge("front", "armhole").backward,
            edge("back", "armhole"),
            ease=made.ease,
            reason="the band is shorter and stretched on, so that it lies flat",
        ),
        seam("armhole_band_turned", edge("armhole_band", "armhole_turned"), edge("armhole_band", "armhole").backward),
        seam("armhole_band_ends", edge("armhole_band", "back_end"), edge("armhole_band", "front_end").backward),
    )


def hem_band_seams(made: HemBand) -> tuple[Seam, ...]:
    """Band to hem, and to itself."""
    return (
        seam(
            "hem",
            edge("hem_band", "hem"),
            edge("front", "hem").backward,
            edge("back", "hem"),
            ease=made.ease,
            reason=STRETCHED_ON,
        ),
        seam("hem_band_turned", edge("hem_band", "hem_turned"), edge("hem_band", "hem").backward),
        seam("hem_band_ends", edge("hem_band", "centre_back"), edge("hem_band", "centre_back")),
    )


def round_body(level: str) -> tuple[tuple[str, str, float], ...]:
    """Twice across the half back and twice across the half front."""
    return (("back", level, 2), ("front", level, 2))


def round_sleeve(level: str) -> tuple[tuple[str, str, float], ...]:
    """Once across the sleeve."""
    return (("sleeve", level, 1),)
