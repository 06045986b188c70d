"""Joining two pieces along a seam: areas, lengths and seams are those of both."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.alter import join, level, split, upright
from tapeline.geometry import area
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import EdgeRef, Garment, Seam
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))


def panelled(garment: Garment) -> Garment:
    """A strip at the side of back and front, each a piece of its own, where it does not end in a corner."""
    for half in ("back", "front"):
        line = upright(garment, f"{half}.underarm", out=cm(-1.5))
        try:
            garment = split(garment, half, line, name=f"{half}_panel", title="Panel", seam=f"{half}_panel_seam")
        except InputError as error:
            assume(error.problems[0].code not in ("line-near-corner", "line-through-join"))
            raise
    return garment


@examples(60)
@given(wearers(), st.sampled_from(["yoke", "block", "panel"]))
def test_what_was_split_is_joined_again(wearer: Wearer, kind: str) -> None:
    """Split and joined along the new seam, outline, notches, seams and girths are those from before."""
    before = drawn(wearer)
    line = {
        "yoke": level(before, "back.back_shoulder_tip", down=cm(9)),
        "block": level(before, "back.chest_level", down=cm(3)),
        "panel": upright(before, "back.neckline_shoulder", out=cm(3)),
    }[kind]
    parts = split(before, "back", line.turned, name="part", title="Part", seam="new_seam")
    after = join(parts, "new_seam")
    in_order(parts, after)
    assert errors(after, wearer) == errors(before, wearer)
    old, new = before.piece("back"), after.piece("part")
    assert area(new.seam_line) == pytest.approx(area(old.seam_line), abs=1e-3)
    assert shape(new).symmetric_difference(shape(old)).area < 1
    assert {e.name: pytest.approx(e.length, abs=1e-6) for e in new.edges} == {e.name: e.length for e in old.edges}
    assert new.on_fold
    assert new.cut == old.cut
    was = sorted((n.edge, round(n.at_mm, 3)) for n in old.notches)
    assert sorted((n.edge, round(n.at_mm, 3)) for n in new.notches) == was
    assert [s.name for s in after.seams] == [s.name for s in before.seams]
    girths = [g.garment_mm for g in trued(after, wearer).girths]
    assert girths == pytest.approx([g.garment_mm for g in trued(before, wearer).girths], abs=1e-6)


@examples(40)
@given(wearers())
def test_pieces_that_were_drawn_as_mirror_images_are_turned_over(wearer: Wearer) -> None:
    """Back and front of the block, straight at the side: the area is the sum, the pieces do not overlap."""
    before = drawn(wearer, "block", "close")
    girthless = _without_girths(before)
    with pytest.raises(InputError) as raised:
        join(girthless, "side")
    assert list(refused(raised.value)) == ["two-folds"]
    strips = _without_girths(panelled(before))
    after = join(strips, "side")
    one, two = strips.piece("front_panel"), strips.piece("back_panel")
    made = after.piece("front_panel")
    both = -area(one.seam_line) - area(two.seam_line)
    assert -area(made.seam_line) == pytest.approx(both, rel=1e-9)
    assert shape(made).area == pytest.approx(shape(one).area + shape(two).area, rel=1e-5)
    assert "side" not in [seam.name for seam in after.seams]
    assert errors(after, wearer) == errors(strips, wearer)


def _without_girths(garment: Garment) -> Garment:
    return replace(garment, girths=())


def band_on_back() -> Garment:
    """A seam between two cloths, one edge each."""
    band = Seam(
        "odd", (EdgeRef("neckband", "centre_back"),), (EdgeRef("neckband_2", "centre_back", backwards=True),), cm(0)
    )
    other = replace(TEE.piece("neckband"), name="neckband_2", cut=replace(TEE.piece("neckband").cut, cloth="shell"))
    return replace(TEE, pieces=(*TEE.pieces, other), seams=(*TEE.seams, band))


NONSENSE: dict[str, tuple[Callable[[], Garment], str]] = {
    "no such seam": (lambda: join(TEE, "yoke"), "seam-unknown"),
    "a curve to a curve of another kind": (lambda: join(TEE, "armhole_front"), "seam-not-flat"),
    "a run of edges": (lambda: join(TEE, "neckline"), "seam-not-flat"),
    "an edge to itself": (lambda: join(TEE, "band_ends"), "seam-not-flat"),
    "on two folds": (lambda: join(_without_girths(TEE), "shoulder"), "two-folds"),
    "a girth across what would lie aslant": (
        lambda: join(panelled(draw(size_wearer("92"), "block")), "side"),
        "girth-turned",
    ),
    "two cloths": (lambda: join(band_on_back(), "odd"), "cut-differently"),
}


@pytest.mark.parametrize("kind", NONSENSE)
def test_what_cannot_be_cut_in_one_is_refused(kind: str) -> None:
    """Each refusal says why, where and what to try."""
    make, code = NONSENSE[kind]
    with pytest.raises(InputError) as raised:
        make()
    assert list(refused(raised.value)) == [code]
