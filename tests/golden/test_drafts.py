"""Two invented wearers, drafted: nothing changes unseen."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tapeline.blocks.armhole_finish import ArmholeFinish, ArmholeFinishChoices
from tapeline.blocks.button_band import BAND_CLOSURES
from tapeline.blocks.hems import HEM_SHAPES, PLAIN_HEM, HemChoices, HemFinish
from tapeline.blocks.hood_choices import HoodChoices, HoodCut
from tapeline.blocks.keyhole import KeyholeChoices, KeyholePlace
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.neckband import RIB_COLLARS
from tapeline.blocks.parts import YOKES, ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.blocks.sleeve_choices import SLEEVE_LENGTHS, SLEEVE_SHAPES, SleeveChoices
from tapeline.blocks.sleeve_fullness import SLEEVE_ENDS, SLEEVE_HEADS
from tapeline.lengths import Length, cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.styles import STYLES
from tapeline.styles.top import FinishedNeckline
from tests.accepted import compare
from tests.corrections import correction
from tests.golden.dump import dump
from tests.golden.picture import picture
from tests.properties.drafts import draw

HERE = Path(__file__).parent


def wearer(name: str, figure: Figure, **cm: float) -> Wearer:
    """An invented wearer, tapes in cm."""
    return Wearer(name, figure, {tape: value * 10 for tape, value in cm.items()})


MARIT = wearer(
    "Marit", Figure.WOMAN, bust=94, upper_chest=89, waist=77, hip=101, shoulder_width=39.5, back_length=40,
    hip_depth=20.5, arm_length=58, wrist=16,
)  # fmt: skip
ARNE = wearer(
    "Arne", Figure.MAN, chest=102, upper_chest=103, waist=90, hip=101, shoulder_width=45, back_length=46,
    hip_depth=20, arm_length=63, neck=41,
)  # fmt: skip

BO = wearer(
    "Bo", Figure.CHILD, bust=66, upper_chest=66, waist=60, hip=70, shoulder_width=31, back_length=30, hip_depth=15,
    arm_length=46, wrist=14, upper_arm=20, head_girth=53,
)  # fmt: skip


@pytest.mark.parametrize(
    ("name", "person", "style", "looseness", "surveyed"),
    [
        ("marit_tee", MARIT, "tee", "slight", True),
        ("marit_block_proportional", MARIT, "block", "close", False),
        ("marit_dropped", MARIT, "dropped", "loose", True),
        ("arne_sweatshirt", ARNE, "sweatshirt", "easy", True),
        ("marit_hooded", MARIT, "hooded", "easy", True),
        ("arne_zipped", ARNE, "zipped", "easy", True),
        ("arne_cardigan", ARNE, "cardigan", "easy", True),
        ("marit_polo", MARIT, "polo", "slight", True),
        ("marit_shirt", MARIT, "shirt", "easy", True),
        ("arne_pyjama", ARNE, "pyjama", "loose", True),
        ("marit_vest", MARIT, "vest", "slight", True),
        ("marit_cut-in-one", MARIT, "cut-in-one", "easy", True),
        ("marit_raglan", MARIT, "raglan", "slight", True),
        ("marit_wrap", MARIT, "wrap", "slight", True),
        ("arne_block", ARNE, "block", "easy", True),
    ],
)
def test_a_draft_is_as_it_was(name: str, person: Wearer, style: str, looseness: str, surveyed: bool) -> None:
    """Points, lines, sizes, seams, words and formulas are those that were accepted, and so is the picture."""
    both_as_they_were(name, draw(person, style, looseness, surveyed=surveyed))


@pytest.mark.parametrize(
    ("name", "length", "hem"),
    [
        ("marit_curved_vented", cm(12), HemChoices(HEM_SHAPES["curved"], vent=cm(6))),
        ("marit_cropped", cm(-22), PLAIN_HEM),
        ("marit_hem_faced", cm(10), HemChoices(HEM_SHAPES["curved"], finish=HemFinish.FACING)),
        ("marit_hem_bound", cm(6), HemChoices(finish=HemFinish.BINDING)),
    ],
)
def test_a_hem_is_as_it_was(name: str, length: Length, hem: HemChoices) -> None:
    """The same of a tee with another hem."""
    both_as_they_were(name, draw(MARIT, length=length, hem=hem))


def test_a_childs_hood_is_as_it_was() -> None:
    """The same of a hood of three panels that overlaps, and of pockets at the hips."""
    hood = HoodChoices(cut=HoodCut.THREE, height_ease=cm(4), depth_ease=cm(4), overlap=cm(2))
    pockets = PocketChoices(PocketKind.HIPS)
    both_as_they_were("bo_hooded", draw(BO, "hooded", "easy", surveyed=False, hood=hood, pocket=pockets))


def test_a_buttoned_cardigan_is_as_it_was() -> None:
    """The same of fronts that are cut back, and of their button band."""
    both_as_they_were("marit_cardigan", draw(MARIT, "cardigan", "easy", closure=BAND_CLOSURES["buttons"]))


def test_a_pieced_top_is_as_it_was() -> None:
    """The same of a yoke over the shoulder and a colour block."""
    pieced = draw(MARIT, yoke=YokeChoices(YOKES["shirt"]), colour_block=ColourBlockChoices(cm(14)))
    both_as_they_were("marit_pieced", pieced)


def test_a_panelled_top_is_as_it_was() -> None:
    """The same of panels at the sides."""
    both_as_they_were("marit_panelled", draw(MARIT, "sweatshirt", "easy", panel=PanelChoices(cm(6))))


def test_a_corrected_tee_is_as_it_was() -> None:
    """The same after a fitting: one shoulder lower, a rounded back, a full bust."""
    made = correction(left_shoulder_lower=0.8, rounded_back=0.8, full_bust__width=0.8, full_bust__length=1)
    both_as_they_were("marit_corrected", draw(MARIT, corrections=made))


def test_every_style_has_an_accepted_drawing() -> None:
    """Text and picture lie beside each other, named after a person and the style."""
    for kind in ("txt", "svg"):
        assert {path.stem.split("_")[1] for path in HERE.glob(f"*.{kind}")} >= set(STYLES)


@pytest.mark.parametrize(
    ("name", "sleeve"),
    [
        ("marit_puffed", {"shape": SLEEVE_SHAPES["flared"], "head": "puffed", "end": "band"}),
        ("marit_bell", {"length": SLEEVE_LENGTHS["long"], "head": "smooth", "end": "bell"}),
        ("marit_rolled", {"shape": SLEEVE_SHAPES["easy"], "head": "smooth", "end": "rolled"}),
        (
            "marit_cuffed",
            {"length": SLEEVE_LENGTHS["long"], "shape": SLEEVE_SHAPES["easy"], "head": "smooth", "end": "cuff"},
        ),
    ],
)
def test_a_full_sleeve_is_as_it_was(name: str, sleeve: dict[str, Any]) -> None:
    """The same of a gathered head, a hem gathered into a band, a bell, a rolled cuff and a buttoned one."""
    words = {"head": SLEEVE_HEADS[sleeve["head"]], "end": SLEEVE_ENDS[sleeve["end"]]}
    both_as_they_were(name, draw(MARIT, sleeve=SleeveChoices(**(sleeve | words))))


def both_as_they_were(name: str, garment: Garment) -> None:
    """Text first, small picture second."""
    compare(HERE / f"{name}.txt", dump(garment))
    compare(HERE / f"{name}.svg", picture(garment))


@pytest.mark.parametrize(
    ("name", "finish", "shape"),
    [
        ("marit_boat_faced", NeckFinish.FACING, "boat"),
        ("marit_square_faced", NeckFinish.FACING, "square"),
        ("marit_scoop_bound", NeckFinish.BINDING, "scoop"),
        ("marit_round_roll", NeckFinish.COLLAR, "round"),
    ],
)
def test_a_neck_has_not_changed(name: str, finish: NeckFinish, shape: str) -> None:
    """Necklines and what is sewn to them are as accepted."""
    line = FinishedNeckline(NECK_SHAPES[shape], finish=finish, collar=RIB_COLLARS["roll"])
    both_as_they_were(name, draw(MARIT, "tee", "slight", neckline=line))


def test_a_faced_armhole_has_not_changed() -> None:
    """Bound at the neck, faced at the armholes: as accepted."""
    line = FinishedNeckline(widen=cm(2.5), lower_front=cm(4), lower_back=cm(2), finish=NeckFinish.BINDING)
    armhole = ArmholeFinishChoices(ArmholeFinish.FACING)
    both_as_they_were("marit_vest_faced", draw(MARIT, "vest", "slight", neckline=line, armhole=armhole))


def test_a_keyhole_has_not_changed() -> None:
    """Marked on back and facing, the facing going round it: as accepted."""
    line = FinishedNeckline(finish=NeckFinish.FACING, keyhole=KeyholeChoices(KeyholePlace.BACK))
    both_as_they_were("marit_keyhole", draw(MARIT, "tee", "slight", neckline=line))


def test_a_funnel_has_not_changed() -> None:
    """Cut on to back and front, what is turned inside 4 cm deep: as accepted."""
    line = FinishedNeckline(NECK_SHAPES["funnel"], cm(1.5), finish=NeckFinish.HEM, hem=cm(4))
    both_as_they_were("marit_funnel", draw(MARIT, "tee", "easy", neckline=line))
