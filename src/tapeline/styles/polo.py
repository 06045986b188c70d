"""Style `polo`: a pull-on top of knitted cloth with a collar, a buttoned placket and short sleeves."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.collar import COLLARS, CollarChoices, collar
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.placket import PlacketChoices, placket, slit_front
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.stand import ButtonedLap
from tapeline.draft import Draft, edge
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.collared import collar_seams, no_point, placket_seams
from tapeline.styles.girths import body_girths, sleeve_girths
from tapeline.styles.hem_finished import hem_finished
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.seams import body_joins, body_seams, sleeve_joins, sleeve_seams
from tapeline.styles.sides import LENGTH
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices, top

__all__ = ["STYLE", "PoloChoices", "polo"]


@dataclass(frozen=True, slots=True)
class PoloChoices:
    """What a maker chooses of a polo."""

    looseness: Looseness = LOOSENESS["slight"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(0.5), lower_front=cm(1), lower_back=cm(0))
    placket: PlacketChoices = PlacketChoices()
    collar: CollarChoices = COLLARS["one-piece"]
    waist: Length = choice(cm(1), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(5), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    pocket: PocketChoices = PocketChoices()
    sleeve: SleeveChoices = SleeveChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def polo(d: Draft, c: PoloChoices, *, surveyed: bool) -> Garment:
    """A tee with a slit at the centre front, two strips that close it, and a collar between their centres."""
    no_point(c.neckline)
    made = top(d, c, surveyed=surveyed, hem=c.hem, front_edge=slit_front(c.placket))
    made, pocket = pocketed(d, c.pocket, made)
    arm = sleeve(d, c.sleeve, made.body.back.notch, made.body.front.notch, made.frame.arm_length)
    strip = placket(d, c.placket, made.neckline.front)
    round_the_neck = collar(d, c.collar, made.neckline, ButtonedLap(c.placket.width / 2, c.placket.button))
    garment = d.garment(
        "polo",
        pieces=(*made.body.pieces, arm.piece, strip, *round_the_neck.pieces, *pocket),
        seams=(
            *body_seams(),
            *sleeve_seams(arm),
            *placket_seams(),
            *collar_seams(round_the_neck, lap=edge("placket", "lap"), before=edge("placket", "neckline")),
        ),
        joins=(*body_joins(made.back_side, made.neckline.bends), *sleeve_joins()),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )
    full = sleeved(d, garment, c.sleeve, at_wrist=arm.reaches_the_wrist)
    return hem_finished(d, pieced(d, full, c.yoke, c.colour_block, c.panel), c.hem)


STYLE = Style(
    "polo",
    "Polo",
    "A pull-on top of knitted cloth with a collar, a buttoned placket and short sleeves",
    PoloChoices,
    polo,
    meaning={
        "chest": (cm(-2), cm(26)),
        "waist": (cm(-2), cm(60)),
        "hip": (cm(-4), cm(40)),
        "upper_arm": (cm(0), cm(24)),
        "wrist": (cm(2), cm(20)),
    },
    pull_on=True,
)
