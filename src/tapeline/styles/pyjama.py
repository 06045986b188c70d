"""Style `pyjama`: a pyjama top of woven cloth, with a collar in one piece, easy sleeves and a pocket."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.collar import COLLARS, CollarChoices
from tapeline.blocks.front_edge import FRONT_EDGES, FrontEdge
from tapeline.blocks.hems import PLAIN_HEM, HemChoices
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES, SleeveChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, choice
from tapeline.styles.buttoned import buttoned
from tapeline.styles.sides import LENGTH
from tapeline.styles.style import Style
from tapeline.styles.top import NecklineChoices

__all__ = ["STYLE", "PyjamaChoices", "pyjama"]


@dataclass(frozen=True, slots=True)
class PyjamaChoices:
    """What a maker chooses of a pyjama top."""

    looseness: Looseness = LOOSENESS["loose"]
    neckline: NecklineChoices = NecklineChoices(widen=cm(0.5), lower_front=cm(1), lower_back=cm(0))
    front: FrontEdge = FRONT_EDGES["buttons"]
    first_button: Length = choice(cm(2), 0.5, 20, "the first button lies so far below the neckline")
    collar: CollarChoices = COLLARS["one-piece"]
    pocket: PocketChoices = PocketChoices(kind=PocketKind.BREAST)
    waist: Length = choice(cm(0), -3, 5, "taken in at each side seam, at the waist")
    length: Length = choice(cm(8), *LENGTH)
    flare: Length = choice(cm(0), 0, 20, "out at each side seam, level with the hem")
    hem: HemChoices = PLAIN_HEM
    yoke: YokeChoices = YokeChoices()
    colour_block: ColourBlockChoices = ColourBlockChoices()
    panel: PanelChoices = PanelChoices()
    sleeve: SleeveChoices = SleeveChoices(
        length=SLEEVE_LENGTHS["long"], shape=SLEEVE_SHAPES["easy"], ease=CapEase(usual=cm(0.5)), wrist_ease=cm(10)
    )


def pyjama(d: Draft, c: PyjamaChoices, *, surveyed: bool) -> Garment:
    """Back, two fronts with a facing, a sleeve that hardly narrows, a collar that turns over by itself, a pocket."""
    return buttoned(d, c, "pyjama", surveyed=surveyed)


STYLE = Style(
    "pyjama",
    "Pyjama top",
    "A loose top of woven cloth, buttoned in front, with a collar in one piece and easy sleeves",
    PyjamaChoices,
    pyjama,
    meaning={
        "chest": (cm(12), cm(50)),
        "waist": (cm(8), cm(90)),
        "hip": (cm(8), cm(60)),
        "upper_arm": (cm(6), cm(36)),
    },
)
