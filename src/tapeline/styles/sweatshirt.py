"""Style `sweatshirt`: a loose top with long sleeves, and ribs at neck, wrists and hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neckband import BandChoices
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.strip import RibChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.neck import finished_neck
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.ribbed import MEANING, ribbed
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import Banded, FinishedNeckline

__all__ = ["STYLE", "SweatshirtChoices", "sweatshirt"]


@dataclass(frozen=True, slots=True)
class SweatshirtChoices(Banded):
    """What a maker chooses of a sweatshirt."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: FinishedNeckline = FinishedNeckline()
    band: BandChoices = BandChoices(width=cm(2.5))
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    flare: Length = choice(cm(0), 0, 4, "out at each side seam, where the hem band begins")
    length: Length = choice(cm(7), -40, 60, "finished hem below the hip line, with its band")
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"], wrist_ease=cm(6))
    cuff: RibChoices = RibChoices()
    hem_band: RibChoices = RibChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def sweatshirt(d: Draft, c: SweatshirtChoices, *, surveyed: bool) -> Garment:
    """A top whose hem and sleeves end in ribs: both are shorter by what the rib makes up."""
    made = ribbed(d, c, surveyed=surveyed)
    top, pocket = pocketed(d, c.pocket, made.top)
    neck = finished_neck(d, c.neckline, c.band, top)
    garment = d.garment(
        "sweatshirt",
        pieces=(*top.body.pieces, *made.parts, *neck.pieces, *pocket),
        seams=(*made.seams, *neck.seams),
        joins=(*made.joins, *neck.joins),
        girths=made.girths,
    )
    return pieced(d, sleeved(d, garment, c.sleeve, at_wrist=True), c.yoke, c.colour_block, c.panel)


STYLE = Style(
    "sweatshirt",
    "Sweatshirt",
    "A loose top of heavy knit with long sleeves and ribs at neck, wrists and hem",
    SweatshirtChoices,
    sweatshirt,
    meaning=MEANING,
    pull_on=True,
)
