"""Style `wrap`: a pull-on top whose fronts cross and are caught in the side seams, with nothing to button or tie."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neck_shapes import NECK_SHAPES, NeckLine
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.wrap_band import WrapBand, wrap_band
from tapeline.blocks.wrap_front import WrapChoices, wrap_front
from tapeline.draft import Draft, Drawn, edge, notch_along, seam
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, Join, Seam, choice
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.seams import body_joins, body_seams, sleeve_joins, sleeve_seams
from tapeline.styles.sides import LENGTH
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices, top

__all__ = ["STYLE", "WrapTopChoices", "wrap"]


@dataclass(frozen=True, slots=True)
class WrapTopChoices:
    """What a maker chooses of a wrap top."""

    looseness: Looseness = LOOSENESS["slight"]
    wrap: WrapChoices = WrapChoices()
    neckline: NecklineChoices = NecklineChoices(NECK_SHAPES["v"], cm(1.5), cm(1.5), cm(1))
    band: BandChoices = BandChoices(cm(2), 35.0, "shell")
    waist: Length = choice(cm(2), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(3), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    sleeve: SleeveChoices = SleeveChoices()


def wrap(d: Draft, c: WrapTopChoices, *, surveyed: bool) -> Garment:
    """A back, two whole fronts that lie on each other, a sleeve, and a band along their edges."""
    no_corner(c.neckline)
    made = top(d, c, surveyed=surveyed, front_edge=wrap_front(c.wrap))
    arm = sleeve(d, c.sleeve, made.body.back.notch, made.body.front.notch, made.frame.arm_length)
    back, front = made.body.pieces
    edge_line = Drawn("front.wrap_edge", front.edge("neckline").path)
    band = wrap_band(d, c.band, made.neckline.back, edge_line)
    # Where the other front's edge is caught, both sides are notched.
    caught = Length(made.body.front.side.path.length - front.edge("side_over").length)
    back, front = (piece.marked(notch_along("side", caught)) for piece in (back, front))
    garment = d.garment(
        "wrap",
        pieces=(back, front, arm.piece, band.piece),
        seams=(*body_seams(), *sleeve_seams(arm), *wrap_seams(band)),
        joins=(
            *body_joins(made.back_side, made.neckline.bends),
            Join("hem", "side", (("front", "hem_over", "side_over"), ("back", "hem", "side"))),
            *sleeve_joins(),
        ),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
    return sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)


def no_corner(c: NecklineChoices) -> None:
    """The edge comes over the shoulder in one line; raises `InputError` (`wrap-on-corner`) where the neck cannot."""
    if c.shape.line is not NeckLine.SWEEP:
        raise InputError(
            Problem(
                "wrap-on-corner",
                Severity.ERROR,
                "a wrap front comes over the shoulder in one line with the back, and this neckline has a corner",
                "garment.neckline.shape",
                "choose round, scoop or v in garment.neckline.shape. Nothing was drafted.",
            )
        )


def wrap_seams(made: WrapBand) -> tuple[Seam, ...]:
    """Band to back neckline and front edge, and to itself; what lies under is caught in the side seam with the rest."""
    return (
        seam(
            "neckline",
            edge("wrap_band", "neckline"),
            edge("back", "neckline"),
            edge("front", "neckline").backward,
            ease=made.ease,
            reason="the band is a little shorter and stretched on, so that the edge is held to the body",
            stretch=made.stretch,
        ),
        seam("band", edge("wrap_band", "neckline_turned"), edge("wrap_band", "neckline").backward),
        seam("band_ends", edge("wrap_band", "front_end"), edge("wrap_band", "front_end")),
        seam("side_over", edge("front", "side_over"), edge("front", "side_over")),
    )


STYLE = Style(
    "wrap",
    "Wrap top",
    "A pull-on top whose fronts cross and are caught in the side seams, with nothing to button or tie",
    WrapTopChoices,
    wrap,
    meaning={
        "chest": (cm(-4), cm(26)),
        "waist": (cm(-2), cm(60)),
        "hip": (cm(-4), cm(40)),
        "upper_arm": (cm(0), cm(24)),
        "wrist": (cm(2), cm(20)),
    },
    pull_on=True,
    uncorrected=frozenset({"full_bust.width", "full_bust.length", "full_waist"}),
)
