"""Edges that nothing is sewn to: extended, turned up, faced."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.alter import extend, face, hem
from tapeline.alter.opened import round_at
from tapeline.finish import FinishChoices, finish
from tapeline.geometry import area
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Cut, EdgeKind, Garment
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape
from tests.alter.whole import whole
from tests.finish.shapes import TITLE
from tests.properties.drafts import examples
from tests.wearers import wearers


@examples(12)
@given(wearers(), st.floats(0.5, 8))
def test_a_front_that_laps_over_keeps_girths_and_seams(wearer: Wearer, by: float) -> None:
    """The half grows by its centre's length times the amount; it is cut for each side, and measured to its centre."""
    before = drawn(wearer)
    after = extend(before, "front", "centre", cm(by))
    in_order(before, after)
    assert not whole(after)
    assert errors(after, wearer) == errors(before, wearer)
    old, new = before.piece("front"), after.piece("front")
    assert shape(new).area - shape(old).area == pytest.approx(old.edge("centre").length * by * 10, rel=1e-4)
    assert new.cut == Cut(2, mirrored=True)
    assert not new.on_fold
    assert new.edge("hem").length - old.edge("hem").length == pytest.approx(by * 10, abs=1e-6)
    assert next(mark.path for mark in new.marks if mark.name == "centre") == old.edge("centre").path
    for girth in before.girths:
        assert round_at(after, girth) == pytest.approx(round_at(before, girth), abs=1e-6)


def test_a_hem_has_its_own_width_in_the_cut_line() -> None:
    """The outline stays, and the cut line lies the width below it, whatever the docket's hems are."""
    before = drawn(size_wearer("92"))
    after = hem(before, "back", "hem", cm(6))
    in_order(before, after)
    assert after.piece("back").seam_line == before.piece("back").seam_line
    made = next(one for one in finish(after, FinishChoices(), TITLE).pieces if one.piece.name == "back")
    at = after.piece("back").edge("hem").path
    assert made.cut_line.distance_to(at.at(at.length / 2)) == pytest.approx(60, abs=0.01)


@examples(12)
@given(wearers(), st.floats(2, 8))
def test_a_facing_is_as_long_as_what_it_faces(wearer: Wearer, by: float) -> None:
    """Seams fit, the facings lie on their pieces, they are sewn together at the sides, and nothing else changes."""
    before = drawn(wearer)
    after = face(before, [("back", "hem"), ("front", "hem")], cm(by))
    in_order(before, after)
    assert not whole(after)
    assert errors(after, wearer) == errors(before, wearer)
    for half in ("back", "front"):
        body, facing = after.piece(half), after.piece(f"{half}_facing")
        assert facing.edge("hem").path == body.edge("hem").path
        assert body.edge("hem").kind is EdgeKind.SEAM
        assert [n.at_mm for n in facing.notches] == [n.at_mm for n in body.notches_on("hem")]
        assert shape(body).buffer(0.1).covers(shape(facing))
        assert -area(facing.seam_line) == pytest.approx(by * 10 * body.edge("hem").length, rel=0.1)
        assert facing.on_fold
    assert {seam.name for seam in after.seams} - {seam.name for seam in before.seams} == {
        "back_facing_seam",
        "front_facing_seam",
        "front_facing_side",
    }
    assert [piece.seam_line for piece in after.pieces[: len(before.pieces)]] == [p.seam_line for p in before.pieces]


def test_a_sleeve_is_faced_round_its_own_seam() -> None:
    """The facing of one piece is sewn to itself where the piece is."""
    after = face(drawn(size_wearer("92")), [("sleeve", "hem")], cm(4))
    assert not whole(after)
    assert after.seams[-1].side_text(after.seams[-1].a).startswith("sleeve_facing.underarm")


def test_what_is_sewn_is_neither_extended_nor_turned_up_nor_faced() -> None:
    """Each refusal is named; so is a facing wider than the piece, and an extension along a curve."""
    tee = drawn(size_wearer("92"))
    tries: tuple[tuple[Callable[[], Garment], str], ...] = (
        (lambda: extend(tee, "back", "side", cm(2)), "edge-sewn"),
        (lambda: hem(tee, "back", "side", cm(2)), "edge-sewn"),
        (lambda: hem(tee, "back", "centre", cm(2)), "edge-sewn"),
        (lambda: face(tee, [("back", "neckline")], cm(2)), "edge-sewn"),
        (lambda: face(tee, [("sleeve", "hem")], cm(60)), "facing-does-not-fit"),
        (lambda: face(tee, [("back", "hem"), ("back", "hem")], cm(4)), "name-taken"),
        (lambda: extend(tee, "front", "centre", cm(0)), "fullness-not-more"),
        (lambda: hem(tee, "front", "him", cm(2)), "edge-unknown"),
    )
    for act, code in tries:
        with pytest.raises(InputError) as error:
            act()
        assert list(refused(error.value)) == [code]
