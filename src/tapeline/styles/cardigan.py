"""Style `cardigan`: a loose top that opens with a zip, with a standing collar and ribs at wrists and hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cuff import cuff
from tapeline.blocks.hem_band import hem_band
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve import sleeve
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.standing_collar import StandingChoices, standing_collar
from tapeline.blocks.strip import RibChoices
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.body import body_girths, sleeve_girths
from tapeline.styles.collared import no_point
from tapeline.styles.pocketed import pocketed
from tapeline.styles.seams import (
    body_joins,
    body_seams,
    cuff_seams,
    hem_band_seams,
    sleeve_joins,
    sleeve_seams,
    standing_collar_seams,
    zip_joins,
    zip_seams,
)
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices, top

__all__ = ["STYLE", "CardiganChoices", "cardigan"]


@dataclass(frozen=True, slots=True)
class CardiganChoices:
    """What a maker chooses of a zip cardigan."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(0.5), lower_front=cm(1), lower_back=cm(0))
    collar: StandingChoices = StandingChoices()
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    flare: Length = choice(cm(0), 0, 4, "out at each side seam, where the hem band begins")
    length: Length = choice(cm(7), -40, 60, "finished hem below the hip line, with its band")
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"], wrist_ease=cm(6))
    cuff: RibChoices = RibChoices()
    hem_band: RibChoices = RibChoices()


def cardigan(d: Draft, c: CardiganChoices, *, surveyed: bool) -> Garment:
    """A sweatshirt whose front is cut open: collar, front and hem band end at the zip."""
    no_point(c.neckline)
    made = top(d, c, surveyed=surveyed, hem_band=c.hem_band.width, front_edge=ZIP_FRONT)
    made, pocket = pocketed(d, c.pocket, made, opened=True)
    back, front = made.body.back, made.body.front
    arm = sleeve(d, c.sleeve, back.notch, front.notch, made.frame.arm_length, cuff=c.cuff.width)
    wrist = cuff(d, c.cuff, arm.hem_width, at_wrist=arm.reaches_the_wrist)
    collar = standing_collar(d, c.collar, made.neckline)
    hem = hem_band(
        d,
        c.hem_band,
        d.measured("front_hem", "Half the front hem", front.hem.reading()),
        d.measured("back_hem", "Half the back hem", back.hem.reading()),
        opened=True,
    )
    centre = d.measured("front_edge", "Along the front edge", front.centre.reading())
    d.measured(
        "zip_length",
        "A zip that comes apart, from the lower edge of the hem band to the upper edge of the collar",
        centre + c.hem_band.width + c.collar.width,
    )
    return d.garment(
        "cardigan",
        pieces=(*made.body.pieces, arm.piece, collar.piece, wrist.piece, hem.piece, *pocket),
        seams=(
            *body_seams(),
            *zip_seams(),
            *sleeve_seams(arm),
            *standing_collar_seams(collar),
            *cuff_seams(wrist),
            *hem_band_seams(hem),
        ),
        joins=(*body_joins(made.back_side, made.neckline.bends), *zip_joins(), *sleeve_joins()),
        girths=(*body_girths(d, made.frame, c.looseness, made.back_side), *sleeve_girths(d, arm)),
    )


STYLE = Style(
    "cardigan",
    "Zip cardigan",
    "A loose top of heavy knit that opens with a zip, with a standing collar and ribs at wrists and hem",
    CardiganChoices,
    cardigan,
    meaning={
        "chest": (cm(4), cm(40)),
        "waist": (cm(-2), cm(80)),
        "hip": (cm(-4), cm(48)),
        "upper_arm": (cm(0), cm(30)),
        "wrist": (cm(2), cm(30)),
    },
)
