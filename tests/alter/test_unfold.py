"""Unfolding a half on the fold and turning a piece over: what is doubled, and what stays true."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import scale
from shapely.ops import unary_union

from tapeline.alter import mirror, split, unfold, upright
from tapeline.finish import FinishChoices, finish
from tapeline.geometry import area
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Piece
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.finish.shapes import TITLE
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))
ORDERS = [("back",), ("front",), ("back", "front"), ("front", "back"), ("back", "front", "neckband"), ("neckband",)]


@examples(60)
@given(wearers(), st.sampled_from(["back", "front", "neckband"]))
def test_the_whole_is_the_half_and_its_image(wearer: Wearer, name: str) -> None:
    """The area doubles, by our areas and as the union of a polygon and its mirror image; lengths and notches repeat."""
    before = drawn(wearer)
    after = unfold(before, name)
    half, whole = before.piece(name), after.piece(name)
    assert area(whole.seam_line) == pytest.approx(2 * area(half.seam_line), rel=1e-12)
    axis = next(edge.path.start for edge in half.edges if edge.fold)
    upright_fold = name != "neckband" or _upright(half)
    flip = (-1, 1) if upright_fold else (1, -1)
    image = scale(shape(half), *flip, origin=(axis.x, axis.y))
    both = unary_union([shape(half).buffer(1e-6), image.buffer(1e-6)])
    assert both.symmetric_difference(shape(whole)).area < 1
    for edge in half.edges:
        if not edge.fold:
            assert whole.edge(edge.name) == edge
            assert whole.edge(f"{edge.name}_mirrored").length == pytest.approx(edge.length, abs=1e-9)
    assert len(whole.notches) == 2 * len(half.notches)
    assert not whole.on_fold


def _upright(half: Piece) -> bool:
    path = next(edge.path for edge in half.edges if edge.fold)
    return bool(abs(path.leaves.x) < 1e-9)


@pytest.mark.parametrize("order", ORDERS, ids="-".join)
@examples(30)
@given(wearers())
def test_the_garment_is_as_true_as_before(order: tuple[str, ...], wearer: Wearer) -> None:
    """Whichever pieces are unfolded in whichever order: every seam and its image, joins, outlines and girths hold."""
    before = after = drawn(wearer)
    for name in order:
        after = unfold(after, name)
    in_order(before, after)
    assert errors(after, wearer) == errors(before, wearer)
    was, now = trued(before, wearer), trued(after, wearer)
    assert [g.garment_mm for g in now.girths] == pytest.approx([g.garment_mm for g in was.girths], abs=1e-6)
    walks = {walk.seam.name: walk for walk in now.walks}
    for walk in was.walks:
        for name in (walk.seam.name, f"{walk.seam.name}_mirrored"):
            if name in walks:
                assert walks[name].off_mm == pytest.approx(walk.off_mm, abs=1e-6)
                assert len(walks[name].parts) == len(walk.parts)
    assert len({seam.name for seam in after.seams}) == len(after.seams)


def test_the_lines_run_on_over_the_fold() -> None:
    """Neckline and hem, square to the fold, are straight on in its middle."""
    whole = unfold(TEE, "front").piece("front")
    for name in ("neckline", "hem"):
        assert whole.corner(name, f"{name}_mirrored")[1] == pytest.approx(math.pi, abs=1e-6)


def test_a_whole_garment_sews_each_side_to_its_own() -> None:
    """With back and front unfolded the left shoulder is sewn to the left shoulder."""
    garment = unfold(unfold(TEE, "back"), "front")
    seam = next(seam for seam in garment.seams if seam.name == "shoulder_mirrored")
    assert (seam.side_text(seam.a), seam.side_text(seam.b)) == ("front.shoulder_mirrored", "back.shoulder_mirrored")
    join = next(j for j in garment.joins if (j.line, j.seam) == ("hem", "side_mirrored"))
    assert join.corners == (("front", "hem_mirrored", "side_mirrored"), ("back", "hem_mirrored", "side_mirrored"))


def test_a_band_that_stood_for_both_sides_is_sewn_end_to_end() -> None:
    """Its centre back was sewn to itself; whole, it is sewn to its image."""
    seam = next(seam for seam in unfold(TEE, "neckband").seams if seam.name == "band_ends")
    assert (str(seam.a[0]), str(seam.b[0])) == ("neckband.centre_back", "neckband.centre_back_mirrored")


def test_a_whole_piece_can_be_split_and_finished() -> None:
    """An unfolded front is split off its middle, which a half cannot be, and is given allowances."""
    whole = unfold(TEE, "front")
    line = upright(whole, "front.neckline_shoulder", out=cm(4))
    after = split(whole, "front", line, name="panel", title="Left panel", seam="panel_seam")
    assert errors(after, size_wearer("92")) == []
    assert (after.piece("panel").cut.quantity, after.piece("front").cut.quantity) == (1, 1)
    assert len(finish(after, FinishChoices(), TITLE).pieces) == len(TEE.pieces) + 1


@examples(40)
@given(wearers(), st.sampled_from(["back", "sleeve", "neckband"]))
def test_turned_over_everything_is_kept(wearer: Wearer, name: str) -> None:
    """Area, lengths, angles and names are those of the piece; its outline still runs clockwise."""
    piece = drawn(wearer).piece(name)
    over = mirror(piece)
    assert area(over.seam_line) == pytest.approx(area(piece.seam_line), rel=1e-12)
    assert scale(shape(piece), -1, 1, origin=(0, 0)).symmetric_difference(shape(over)).area < 1
    names = [edge.name for edge in piece.edges]
    for one, two in zip(names, [*names[1:], names[0]], strict=True):
        assert over.edge(one).length == pytest.approx(piece.edge(one).length, abs=1e-9)
        assert over.corner(one, two)[1] == pytest.approx(piece.corner(one, two)[1], abs=1e-9)


def test_a_whole_piece_cannot_be_unfolded() -> None:
    """A sleeve has no fold, and the refusal says what to do instead; so for a piece that there is not."""
    for name, code in (("sleeve", "no-fold"), ("bodice", "piece-unknown")):
        with pytest.raises(InputError) as raised:
            unfold(TEE, name)
        assert list(refused(raised.value)) == [code]
