"""A top of woven cloth with a collar and a front that opens, and hemmed sleeves: what shirt and pyjama top share."""

from __future__ import annotations

from typing import Protocol

from tapeline.blocks.collar import CollarChoices, collar
from tapeline.blocks.front_edge import FrontEdge, front_edge, laps_over
from tapeline.blocks.hems import HemChoices
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve import Sleeve, sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.strip import OVER_THE_HAND
from tapeline.draft import Draft, edge
from tapeline.lengths import Length
from tapeline.pattern import Garment
from tapeline.styles.collared import collar_seams, facing_seams, no_point
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.seams import body_joins, body_seams, sleeve_joins, sleeve_seams, zip_joins, zip_seams
from tapeline.styles.sleeved import sleeved
from tapeline.styles.top import TopChoices, top

__all__ = ["ButtonedChoices", "buttoned"]


class ButtonedChoices(TopChoices, Protocol):
    """What a style must let a maker choose, for `buttoned` to draw it."""

    @property
    def front(self) -> FrontEdge:
        """What closes the front."""
        ...

    @property
    def first_button(self) -> Length:
        """From the neckline to the first button."""
        ...

    @property
    def collar(self) -> CollarChoices:
        """The collar."""
        ...

    @property
    def hem(self) -> HemChoices:
        """The hem."""
        ...

    @property
    def pocket(self) -> PocketChoices:
        """On the fronts."""
        ...

    @property
    def yoke(self) -> YokeChoices:
        """The yoke."""
        ...

    @property
    def colour_block(self) -> ColourBlockChoices:
        """The block of another colour."""
        ...

    @property
    def panel(self) -> PanelChoices:
        """The panels at the sides."""
        ...

    @property
    def sleeve(self) -> SleeveChoices:
        """The sleeve."""
        ...


def buttoned(d: Draft, c: ButtonedChoices, style: str, *, surveyed: bool) -> Garment:
    """A top whose front laps over and is buttoned (or closed by a zip), with a collar to its neckline's length."""
    no_point(c.neckline)
    made = top(d, c, surveyed=surveyed, front_edge=front_edge(c.front, c.first_button), hem=c.hem)
    made, pocket = pocketed(d, c.pocket, made, opened=True)
    arm = sleeve(d, c.sleeve, made.body.back.notch, made.body.front.notch, made.frame.arm_length)
    if c.sleeve.end.made_up.mm == 0:
        hand_passes(d, arm)
    round_the_neck = collar(d, c.collar, made.neckline, laps_over(d, c.front))
    closed = facing_seams() if c.front.buttoned else zip_seams()
    garment = d.garment(
        style,
        pieces=(*made.body.pieces, arm.piece, *round_the_neck.pieces, *pocket),
        seams=(
            *body_seams(),
            *closed,
            *sleeve_seams(arm),
            *collar_seams(round_the_neck, lap=edge("front", "lap") if c.front.buttoned else None),
        ),
        joins=(
            *body_joins(made.back_side, made.neckline.bends),
            *(() if c.front.buttoned else zip_joins()),
            *sleeve_joins(),
        ),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
    full = sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)
    return hem_finished(d, pieced(d, full, c.yoke, c.colour_block, c.panel), c.hem)


def hand_passes(d: Draft, arm: Sleeve) -> None:
    """A hemmed sleeve of a cloth that does not stretch has to go over the hand."""
    if arm.reaches_the_wrist:
        d.remark(
            "sleeve-hem-tight",
            d.body("wrist", "Round the wrist, over the bone") * OVER_THE_HAND,
            above=arm.hem_width,
            says="the sleeve's hem may not go over the hand, if the cloth does not stretch",
            where="garment.sleeve.wrist_ease",
            hint="make garment.sleeve.wrist_ease larger",
        )
