"""Collars that are turned down: as long as their neckline, and bent so that they lie where they are meant to."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tapeline.blocks.collar import COLLARS, CollarChoices
from tapeline.draft import Draft
from tapeline.geometry import Path
from tapeline.lengths import cm
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tests.golden.test_drafts import ARNE, MARIT
from tests.properties.drafts import draw, style_choices
from tests.properties.measuring import turnings
from tests.unit.sizes import size


def turning(path: Path) -> float:
    """How far a line turns in all, radians."""
    return abs(path.leaves.turn_to(path.arrives))


@pytest.mark.parametrize("rise", [0, 1, 3])
def test_a_stand_is_as_long_as_the_neckline_and_its_lap(rise: float) -> None:
    """To a hundredth of a millimetre, however it is bent; its notches meet shoulder, centre front and centre back."""
    garment = draw(MARIT, "shirt", "easy", collar=CollarChoices(rise=cm(rise)))
    back, front, lap = (
        garment.piece(piece).edge(edge).length
        for piece, edge in (("back", "neckline"), ("front", "neckline"), ("front", "lap"))
    )
    stand = garment.piece("stand")
    assert stand.edge("neckline").length == pytest.approx(back + front + lap, abs=0.01)
    at = [notch.at_mm for notch in stand.notches_on("neckline")]
    assert at == pytest.approx([lap, lap + front, lap + front + back], abs=0.01)


def test_a_collar_in_one_piece_ends_at_the_centre_front() -> None:
    """It is as long as the neckline, without the lap; its notch meets the shoulder."""
    garment = draw(ARNE, "pyjama", "loose")
    back, front = (garment.piece(half).edge("neckline").length for half in ("back", "front"))
    leaf = garment.piece("collar")
    assert leaf.edge("neckline").length == pytest.approx(back + front, abs=0.01)
    assert [notch.at_mm for notch in leaf.notches_on("neckline")] == pytest.approx([front, front + back], abs=0.01)
    assert "stand" not in {piece.name for piece in garment.pieces}


@pytest.mark.parametrize("rise", [0.5, 1.5, 2.5])
def test_a_stand_that_is_bent_up_leans_in_to_the_neck(rise: float) -> None:
    """A strip whose seam turns by an angle has an upper edge that is shorter by angle times height: plane geometry."""
    choices = replace(COLLARS["stand"], rise=cm(rise))
    garment = draw(MARIT, "shirt", "easy", collar=choices)
    upper = garment.piece("stand").edge("collar").path
    seam = garment.lines["stand.seam_line"]
    shorter = seam.length - upper.length
    assert shorter > 0
    # Between the heights in front and behind; the strip narrows a little to the front.
    assert 25 * turning(seam) * 0.9 < shorter < 30 * turning(seam) * 1.1


@pytest.mark.parametrize("rise", [0.5, 1.5, 2.5])
def test_the_leaf_is_long_enough_to_lie_over_the_seam(rise: float) -> None:
    """Where it comes down to the seam, a stand's height out from its own, the leaf is longer than the neckline there.

    The same geometry the other way round: the leaf turns away, so it grows by angle times distance.
    """
    garment = draw(MARIT, "shirt", "easy", collar=replace(COLLARS["stand"], rise=cm(rise)))
    seam, neck = garment.lines["collar.seam_line"], garment.lines["stand.seam_line"]
    reaches = seam.offset_left(30).length
    assert reaches == pytest.approx(seam.length + 30 * turning(seam), abs=0.1)
    assert reaches > neck.length


@pytest.mark.parametrize(("style", "piece"), [("shirt", "stand"), ("shirt", "collar"), ("pyjama", "collar")])
def test_the_seam_of_a_collar_bends_one_way(style: str, piece: str) -> None:
    """One sweep from the centre back: it turns to one side only, and leaves the fold level."""
    seam = draw(MARIT, style, "easy").lines[f"{piece}.seam_line"]
    assert min(turnings(seam)) < math.radians(0.05)
    assert max(turnings(seam)) > math.radians(5)
    assert seam.leaves.y == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("forward", [-1, 0, 3])
def test_the_point_lies_where_it_was_put(forward: float) -> None:
    """So far square off the seam at its end, and so far forward of it: measured along both ways."""
    garment = draw(ARNE, "pyjama", "loose", collar=replace(COLLARS["one-piece"], forward=cm(forward)))
    seam = garment.lines["collar.seam_line"]
    off = garment.points["collar.point"] - seam.end
    assert off.dot(seam.arrives) == pytest.approx(10 * forward, abs=0.05)
    assert off.dot(seam.arrives.left) == pytest.approx(70, abs=0.05)


def test_the_stand_has_a_button_at_the_centre_front() -> None:
    """Half way up the front end of the stand, its buttonhole along the stand (common practice, no source)."""
    garment = draw(MARIT, "shirt", "easy")
    marks = {mark.name: mark.path for mark in garment.piece("stand").marks}
    place = garment.points["stand.button_place"]
    front, top = garment.points["stand.centre_front"], garment.points["stand.centre_front_top"]
    assert place.distance_to(front) == pytest.approx(place.distance_to(top))
    assert marks["buttonhole"].distance_to(place) < 1e-6
    assert marks["buttonhole"].length == pytest.approx(15)
    assert (
        not draw(MARIT, "shirt", "easy", front=replace(style_choices("shirt", "easy").front, button=cm(0)))
        .piece("stand")
        .marks
    )


@pytest.mark.parametrize("turn", [0.2, 0.4])
@pytest.mark.parametrize("style", ["shirt", "pyjama"])
def test_the_upper_collar_is_larger_by_the_turn_of_cloth(style: str, turn: float) -> None:
    """2 to 3 mm in thin cloth, more in thick (common practice, no source): round the edge, and not at the seam."""
    choices = replace(style_choices(style, "easy").collar, turn=cm(turn))
    garment = draw(MARIT, style, "easy", collar=choices)
    upper, under = garment.piece("collar"), garment.piece("under_collar")
    caught = "stand" if style == "shirt" else "neckline"
    assert upper.edge(caught).path == under.edge(caught).path
    for share in (0, 0.2, 0.5, 0.8):
        place = under.edge("outer").path.at(under.edge("outer").length * share)
        assert upper.edge("outer").path.distance_to(place) == pytest.approx(10 * turn, abs=0.6)
    for name in ("collar_outer", "collar_end"):
        (seam,) = [seam for seam in garment.seams if seam.name == name]
        assert 0 < seam.ease.mm <= 2 * 10 * turn
        assert "larger" in seam.reason
    assert (upper.cut.quantity, under.cut.quantity) == (1, 1)


def test_without_a_turn_both_layers_are_cut_alike_on_the_fold() -> None:
    """Upper and under collar, outer and inner stand: two of each."""
    garment = draw(MARIT, "shirt", "easy", collar=replace(COLLARS["stand"], turn=cm(0)))
    assert "under_collar" not in {piece.name for piece in garment.pieces}
    for name in ("stand", "collar"):
        piece = garment.piece(name)
        assert piece.cut.quantity == 2
        assert piece.edge("centre_back").fold


def test_a_leaf_that_does_not_cover_its_stand_is_refused() -> None:
    """A collar of 3 cm on a stand of 3 cm shows its seam."""
    with pytest.raises(InputError) as refused:
        draw(MARIT, "shirt", "easy", collar=CollarChoices(stand=cm(3), width=cm(3)))
    assert [problem.code for problem in refused.value.problems] == ["collar-too-narrow"]


def test_a_collar_that_does_not_close_round_the_neck_is_doubted() -> None:
    """A neck taped as long as the closed collar leaves no room; without the tape nothing is said."""

    def codes(neck_mm: float | None) -> set[str]:
        d = Draft(MARIT if neck_mm is None else MARIT.with_tape("neck", neck_mm), {"neck_width": 70})
        STYLES["shirt"].page(d, style_choices("shirt", "easy"), surveyed=True)
        return {note.code for note in d.notes}

    drawn = 2 * size(draw(MARIT, "shirt", "easy", by_hand={"neck_width": 70}), "neckline")
    assert "collar-tight" in codes(drawn - 5)
    assert "collar-tight" not in codes(drawn - 15)
    assert "collar-tight" not in codes(None)
