"""Style `hooded`: a sweatshirt with a hood in place of the neckband."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.hood import hood
from tapeline.blocks.hood_choices import HoodChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.strip import RibChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.hooding import hood_joins, hood_seams, no_corner, out_on_shoulder
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.ribbed import MEANING, ribbed
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

__all__ = ["STYLE", "HoodedChoices", "hooded"]


@dataclass(frozen=True, slots=True)
class HoodedChoices:
    """What a maker chooses of a hooded sweatshirt."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(1.5), lower_front=cm(2.5))
    hood: HoodChoices = HoodChoices()
    pocket: PocketChoices = PocketChoices(kind=PocketKind.KANGAROO)
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    flare: Length = choice(cm(0), 0, 4, "out at each side seam, where the hem band begins")
    length: Length = choice(cm(7), -40, 60, "finished hem below the hip line, with its band")
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"], wrist_ease=cm(6))
    cuff: RibChoices = RibChoices()
    hem_band: RibChoices = RibChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def hooded(d: Draft, c: HoodedChoices, *, surveyed: bool) -> Garment:
    """A ribbed top whose neckline is sewn to a hood."""
    no_corner(c.neckline)
    made = ribbed(d, c, surveyed=surveyed)
    top, pocket = pocketed(d, c.pocket, made.top)
    over = hood(d, c.hood, top.neckline, out_on_shoulder(d, top))
    back, front = top.body.pieces
    garment = d.garment(
        "hooded",
        pieces=(back.marked(*over.back_notches), front.marked(*over.front_notches), *made.parts, *over.pieces, *pocket),
        seams=(*made.seams, *hood_seams(over)),
        joins=(*made.joins, *hood_joins(over)),
        girths=made.girths,
    )
    return pieced(d, sleeved(d, garment, c.sleeve, at_wrist=True), c.yoke, c.colour_block, c.panel)


STYLE = Style(
    "hooded",
    "Hooded sweatshirt",
    "A loose top of heavy knit with long sleeves, a hood, and ribs at wrists and hem",
    HoodedChoices,
    hooded,
    meaning=MEANING,
    pull_on=True,
)
