"""Finished garments to write: drafted as a maker would, for invented wearers."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS
from tapeline.draft import Draft
from tapeline.finish import FinishChoices, Finished, Title, finish
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Cloth
from tapeline.styles import STYLES
from tapeline.truing import Truing, true

TAPES = {
    "bust": 940.0,
    "upper_chest": 890.0,
    "waist": 770.0,
    "hip": 1010.0,
    "shoulder_width": 395.0,
    "back_length": 400.0,
    "hip_depth": 205.0,
    "arm_length": 580.0,
}


@cache
def tee(sleeve: str = "short", wearer: str = "Marit Sjöström", bust: float = 940.0) -> Finished:
    """A tee for an invented wearer; `sleeve` is `short` or `long`."""
    made = Wearer(wearer, Figure.WOMAN, TAPES | {"bust": bust})
    style = STYLES["tee"]
    choices = style.choices()
    choices = replace(choices, sleeve=replace(choices.sleeve, length=SLEEVE_LENGTHS[sleeve]))
    garment = style.page(Draft(made, {}), choices, surveyed=True)
    return finish(garment, FinishChoices(), Title("tee.toml", wearer, "tee", "2031-05-02", "0.1.0"))


def trued(finished: Finished) -> Truing:
    """What truing measures on it."""
    style = STYLES["tee"]
    meaning = {name: (least.mm, most.mm) for name, (least, most) in style.meaning.items()}
    wearer = Wearer(finished.title.wearer, Figure.WOMAN, TAPES)
    return true(finished.garment, wearer, Cloth(), meaning=meaning, pull_on=style.pull_on)
