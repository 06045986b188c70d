"""Style `shirt`: a simple shirt of woven cloth, without darts, buttoned in front, with a collar on a stand."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.collar import COLLARS, CollarChoices
from tapeline.blocks.front_edge import FRONT_EDGES, FrontEdge
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.buttoned import buttoned
from tapeline.styles.sides import LENGTH
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

__all__ = ["STYLE", "ShirtChoices", "shirt"]


@dataclass(frozen=True, slots=True)
class ShirtChoices:
    """What a maker chooses of a simple shirt."""

    looseness: Looseness = LOOSENESS["easy"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(0), lower_front=cm(0.5), lower_back=cm(0))
    front: FrontEdge = FRONT_EDGES["buttons"]
    first_button: Length = choice(cm(6), 0.5, 20, "the first button lies so far below the neckline")
    collar: CollarChoices = COLLARS["stand"]
    pocket: PocketChoices = PocketChoices()
    waist: Length = choice(cm(1), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(8), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()
    sleeve: SleeveChoices = SleeveChoices(length=SLEEVE_LENGTHS["long"], ease=CapEase(usual=cm(1)), wrist_ease=cm(8))


def shirt(d: Draft, c: ShirtChoices, *, surveyed: bool) -> Garment:
    """Back, two fronts with a facing, a sleeve with a little cap ease, stand and collar."""
    return buttoned(d, c, "shirt", surveyed=surveyed)


STYLE = Style(
    "shirt",
    "Simple shirt",
    "A shirt of woven cloth without darts, buttoned in front, with a collar on a stand",
    ShirtChoices,
    shirt,
    meaning={
        "chest": (cm(10), cm(45)),
        "waist": (cm(6), cm(80)),
        "hip": (cm(6), cm(60)),
        "upper_arm": (cm(5), cm(30)),
        "wrist": (cm(4), cm(30)),
    },
)
