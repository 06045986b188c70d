"""Style `cardigan`: a loose top that opens with a zip or buttons, with a standing collar, ribs at wrists and hem."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.button_band import BAND_CLOSURES, BandClosure, band_front, button_band
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.blocks.standing_collar import StandingChoices, standing_collar
from tapeline.blocks.strip import RibChoices
from tapeline.blocks.zip_front import ZIP_FRONT
from tapeline.draft import Draft, Drawn
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, Piece, Seam, choice
from tapeline.styles.collared import no_point
from tapeline.styles.pieced import pieced
from tapeline.styles.pocketed import pocketed
from tapeline.styles.ribbed import MEANING, ribbed
from tapeline.styles.seams import button_band_seams, standing_collar_seams
from tapeline.styles.sleeved import sleeved
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

__all__ = ["STYLE", "CardiganChoices", "cardigan"]


@dataclass(frozen=True, slots=True)
class CardiganChoices:
    """What a maker chooses of a cardigan."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(0.5), lower_front=cm(1), lower_back=cm(0))
    closure: BandClosure = BAND_CLOSURES["zip"]
    collar: StandingChoices = StandingChoices()
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


def cardigan(d: Draft, c: CardiganChoices, *, surveyed: bool) -> Garment:
    """A sweatshirt whose front is cut open: collar, front and hem band end at the zip, or at the button bands."""
    no_point(c.neckline)
    front = band_front(c.closure) if c.closure.buttoned else ZIP_FRONT
    made = ribbed(d, c, surveyed=surveyed, front_edge=front)
    top, pocket = pocketed(d, c.pocket, made.top, opened=True)
    line = top.neckline
    if c.closure.buttoned:
        line = replace(line, front=Drawn("front.neckline_rest", top.body.front.piece.edge("neckline").path))
    collar = standing_collar(d, c.collar, line)
    edge_path = top.body.front.piece.edge("centre").path
    edge_line = Drawn("front.front_edge" if c.closure.buttoned else "front.centre", edge_path)
    centre = d.measured("front_edge", "Along the front edge", edge_line.reading())
    bands, band_seams = closed(d, c, centre)
    garment = d.garment(
        "cardigan",
        pieces=(*top.body.pieces, *made.parts, collar.piece, *bands, *pocket),
        seams=(*made.seams, *standing_collar_seams(collar), *band_seams),
        joins=made.joins,
        girths=made.girths,
    )
    return pieced(d, sleeved(d, garment, c.sleeve, at_wrist=True), c.yoke, c.colour_block, c.panel)


def closed(d: Draft, c: CardiganChoices, edge: Length) -> tuple[tuple[Piece, ...], tuple[Seam, ...]]:
    """The zip's length, or the bands and how they are sewn."""
    below, above = c.hem_band.width, c.collar.width
    if not c.closure.buttoned:
        d.measured(
            "zip_length",
            "A zip that comes apart, from the lower edge of the hem band to the upper edge of the collar",
            edge + below + above,
        )
        return (), ()
    band = button_band(d, c.closure, edge, below, above)
    return (band.piece,), button_band_seams(band)


STYLE = Style(
    "cardigan",
    "Cardigan",
    "A loose top of heavy knit that opens in front, with a standing collar and ribs at wrists and hem",
    CardiganChoices,
    cardigan,
    meaning=MEANING,
)
