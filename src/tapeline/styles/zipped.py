"""Style `zipped`: a hooded sweatshirt that opens with a zip."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.hood import hood
from tapeline.blocks.hood_choices import HoodChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.strip import RibChoices
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.hooding import hood_joins, hood_seams, no_corner, no_overlap, out_on_shoulder
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.ribbed import MEANING, ribbed
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

__all__ = ["STYLE", "ZippedChoices", "zipped"]


@dataclass(frozen=True, slots=True)
class ZippedChoices:
    """What a maker chooses of a hooded sweatshirt with a zip."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: NecklineChoices = NecklineChoices(lower_front=cm(1.5))
    hood: HoodChoices = HoodChoices()
    pocket: PocketChoices = PocketChoices(kind=PocketKind.HIPS)
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    flare: Length = choice(cm(0), 0, 4, "out at each side seam, where the hem band begins")
    length: Length = choice(cm(7), -40, 60, "finished hem below the hip line, with its band")
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"], wrist_ease=cm(6))
    cuff: RibChoices = RibChoices()
    hem_band: RibChoices = RibChoices()
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()


def zipped(d: Draft, c: ZippedChoices, *, surveyed: bool) -> Garment:
    """A sweatshirt whose front is cut open; the hood meets over the zip, which ends at the neck."""
    no_corner(c.neckline, opened=True)
    no_overlap(c.hood)
    made = ribbed(d, c, surveyed=surveyed, front_edge=ZIP_FRONT)
    top, pocket = pocketed(d, c.pocket, made.top, opened=True)
    over = hood(d, c.hood, top.neckline, out_on_shoulder(d, top))
    centre = d.measured("front_edge", "Along the front edge", top.body.front.centre.reading())
    d.measured(
        "zip_length",
        "A zip that comes apart, from the lower edge of the hem band to the neck; cloth behind it guards the chin",
        centre + c.hem_band.width,
    )
    back, front = top.body.pieces
    garment = d.garment(
        "zipped",
        pieces=(back.marked(*over.back_notches), front, *made.parts, *over.pieces, *pocket),
        seams=(*made.seams, *hood_seams(over)),
        joins=(*made.joins, *hood_joins(over)),
        girths=made.girths,
    )
    return pieced(d, sleeved(d, garment, c.sleeve, at_wrist=True), c.yoke, c.colour_block, c.panel)


STYLE = Style(
    "zipped",
    "Hooded sweatshirt with a zip",
    "A loose top of heavy knit that opens with a zip, with a hood, long sleeves, and ribs at wrists and hem",
    ZippedChoices,
    zipped,
    meaning=MEANING,
)
