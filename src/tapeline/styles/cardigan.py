"""Style `cardigan`: a loose top that opens with a zip, with a standing collar and ribs at wrists and hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.standing_collar import StandingChoices, standing_collar
from tapeline.blocks.strip import RibChoices
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.collared import no_point
from tapeline.styles.pocketed import pocketed
from tapeline.styles.ribbed import MEANING, ribbed
from tapeline.styles.seams import standing_collar_seams
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

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
    made = ribbed(d, c, surveyed=surveyed, front_edge=ZIP_FRONT)
    top, pocket = pocketed(d, c.pocket, made.top, opened=True)
    collar = standing_collar(d, c.collar, top.neckline)
    centre = d.measured("front_edge", "Along the front edge", top.body.front.centre.reading())
    d.measured(
        "zip_length",
        "A zip that comes apart, from the lower edge of the hem band to the upper edge of the collar",
        centre + c.hem_band.width + c.collar.width,
    )
    garment = d.garment(
        "cardigan",
        pieces=(*top.body.pieces, *made.parts, collar.piece, *pocket),
        seams=(*made.seams, *standing_collar_seams(collar)),
        joins=made.joins,
        girths=made.girths,
    )
    return sleeved(d, garment, c.sleeve, at_wrist=True)


STYLE = Style(
    "cardigan",
    "Zip cardigan",
    "A loose top of heavy knit that opens with a zip, with a standing collar and ribs at wrists and hem",
    CardiganChoices,
    cardigan,
    meaning=MEANING,
)
