"""Pockets are as large as a hand asks for, lie where they are marked on the front, and have room there."""

from __future__ import annotations

import pytest

from tapeline.blocks.pocket_choices import PocketChoices, PocketKind
from tapeline.docket import docket_from_text
from tapeline.finish import FinishChoices
from tapeline.finish.choices import allowances
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.project import draft
from tests.properties.drafts import draw, taped_children
from tests.properties.hoods import pocket_holds
from tests.properties.measuring import widths_at
from tests.unit.sizes import size

TAPES = {
    "bust": 960, "upper_chest": 910, "waist": 800, "hip": 1030, "shoulder_width": 400, "back_length": 410,
    "hip_depth": 205, "arm_length": 570,
}  # fmt: skip
ILSE = Wearer("Ilse", Figure.WOMAN, TAPES)
SEWN = [kind for kind in PocketKind if kind is not PocketKind.NONE]


def pocketed(kind: PocketKind, style: str = "hooded", wearer: Wearer = ILSE, **lengths: float) -> Garment:
    """A top with that pocket, lengths in cm."""
    choices = PocketChoices(kind, **{name: cm(value) for name, value in lengths.items()})
    return draw(wearer, style, "easy", surveyed=wearer.figure.has_survey, pocket=choices)


@pytest.mark.parametrize("kind", SEWN)
@pytest.mark.parametrize("wearer", [ILSE, *taped_children()[2::3]], ids=lambda wearer: wearer.name)
def test_a_pocket_is_as_large_as_its_place(kind: PocketKind, wearer: Wearer) -> None:
    """Piece and mark are congruent, the mark lies on the front, one edge is open and all others are stitched down."""
    assert list(pocket_holds(pocketed(kind, wearer=wearer))) == []


def test_a_kangaroo_pocket_lets_a_hand_in() -> None:
    """As deep as a hand and a tenth, and open wide enough: half a hand's girth of 19, from memory, and a third more."""
    garment = pocketed(PocketKind.KANGAROO)
    assert size(garment, "hand") == pytest.approx(190)
    assert size(garment, "pocket_depth") == pytest.approx(209)
    assert garment.piece("pocket").edge("opening").length > 190 / 2 * 4 / 3
    assert garment.piece("pocket").on_fold


@pytest.mark.parametrize(("kind", "pieces"), [(PocketKind.BREAST, 1), (PocketKind.HIPS, 2)])
def test_patches_are_cut_whole(kind: PocketKind, pieces: int) -> None:
    """One for the breast, two for the hips; their mouths are turned in by 2, their other edges as seams are."""
    garment = pocketed(kind)
    pocket = garment.piece("pocket")
    assert (pocket.cut.quantity, pocket.on_fold) == (pieces, False)
    widths = allowances(garment, FinishChoices(allowance_mm=8, hem_mm=30))["pocket"]
    assert widths.pop("mouth") == 20
    assert set(widths.values()) == {8}


@pytest.mark.parametrize("kind", [PocketKind.KANGAROO, PocketKind.HIPS])
@pytest.mark.parametrize("above", [0, 4])
def test_a_pocket_lies_above_the_hem(kind: PocketKind, above: float) -> None:
    """By what was chosen, where the hem is highest under it; its lower edge is level."""
    garment = pocketed(kind, above_hem=above)
    hem = garment.piece("front").edge("hem").path
    low = garment.points["front.pocket_foot"].y
    (mark,) = (mark for mark in garment.piece("front").marks if mark.name == "pocket")
    across = sorted(point.x for point in mark.path.knots)
    under = [point.y for point in hem.flattened(1e-6) if across[0] <= point.x <= across[-1]]
    assert low - max(under) == pytest.approx(10 * above, abs=0.05)


@pytest.mark.parametrize("above", [-4, 0, 2, 4])
def test_a_breast_pocket_keeps_off_the_armhole(above: float) -> None:
    """Its mouth lies above the chest line as chosen, a centimetre and more inside the armhole."""
    garment = pocketed(PocketKind.BREAST, above_chest=above)
    mouth, chest = garment.points["front.pocket_mouth"], garment.points["front.chest_level"]
    assert mouth.y - chest.y == pytest.approx(10 * above)
    corner = garment.points["front.pocket_high_out"]
    armhole = widths_at(garment.piece("front").edge("armhole").path, corner.y)
    assert all(x - corner.x > 10 for x in armhole)


def test_no_pocket_changes_nothing() -> None:
    """Without one there is no piece, no mark and no number of it."""
    garment = pocketed(PocketKind.NONE)
    assert all(piece.name != "pocket" for piece in garment.pieces)
    assert not garment.piece("front").marks
    assert not any("pocket" in step.label or step.label == "hand" for step in garment.steps)


@pytest.mark.parametrize(
    ("kind", "lengths", "code"),
    [
        (PocketKind.KANGAROO, {"above_hem": 25}, "pocket-too-deep"),
        (PocketKind.HIPS, {"above_hem": 25}, "pocket-too-deep"),
        (PocketKind.HIPS, {"roomier": 15}, "pocket-too-wide"),
        (PocketKind.BREAST, {"roomier": 5, "above_chest": 8}, "pocket-over-armhole"),
    ],
)
def test_a_pocket_without_room_is_refused(kind: PocketKind, lengths: dict[str, float], code: str) -> None:
    """Refused by name, with a way out; never drawn over an edge."""
    with pytest.raises(InputError) as refused:
        pocketed(kind, "hooded", ILSE, **lengths)
    (problem,) = refused.value.problems
    assert problem.code == code
    assert "garment." in problem.hint


def test_a_breast_pocket_keeps_off_the_hem_of_a_cropped_top() -> None:
    """Cropped 25 cm above the hip line a pocket at the chest would hang over the hem: refused, with the way out."""
    text = 'wearer = {{ figure = "woman", size = "92" }}\n[garment]\nstyle = "pyjama"\nlength = {}'
    with pytest.raises(InputError) as refused:
        draft(docket_from_text(text.format(-25)))
    assert [problem.code for problem in refused.value.problems] == ["pocket-past-hem"]
    assert list(pocket_holds(draft(docket_from_text(text.format(-12))).garment)) == []


@pytest.mark.parametrize("style", ["cardigan", "shirt", "pyjama"])
def test_a_front_that_opens_has_no_pocket_across_it(style: str) -> None:
    """Patches it may have, on either front; what lies across it would close it."""
    for kind in (PocketKind.BREAST, PocketKind.HIPS):
        assert list(pocket_holds(pocketed(kind, style))) == []
    with pytest.raises(InputError) as refused:
        pocketed(PocketKind.KANGAROO, style)
    assert [problem.code for problem in refused.value.problems] == ["kangaroo-on-opening"]
