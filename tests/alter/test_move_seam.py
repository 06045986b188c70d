"""Moving a seam into one of its pieces: what the one gives the other takes, for random wearers."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.alter import move_seam
from tapeline.geometry import area
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment, NotchKind
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.alter.whole import notches_of, off, whole
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))
BOTH = ("back", "front")
STYLED = st.sampled_from(["tee", "vest", "sweatshirt"])


def across(garment: Garment, edge: str) -> float:
    """One line over back and front, mm."""
    return sum(e.length for half in BOTH for e in garment.piece(half).edges if e.name in (edge, f"front_{edge}"))


@examples(80)
@given(wearers(), STYLED, st.sampled_from(BOTH), st.just(0.0) | st.floats(2, 25), st.floats(3, 25))
def test_a_shoulder_seam_moves_and_nothing_is_gained_or_lost(
    wearer: Wearer, style: str, into: str, start: float, end: float
) -> None:
    """Areas together, neckline and armhole over both halves are what they were; every seam and line is as true."""
    before = drawn(wearer, style)
    after = move_seam(before, "shoulder", Length(start), into=into, by_end=Length(end))
    in_order(before, after)
    assert whole(after) == []
    assert set(errors(after, wearer)) <= set(errors(before, wearer))
    other = next(half for half in BOTH if half != into)
    gave = area(before.piece(into).seam_line) - area(after.piece(into).seam_line)
    took = area(after.piece(other).seam_line) - area(before.piece(other).seam_line)
    assert -gave == pytest.approx(-took, abs=1e-3)
    assert shape(after.piece(other)).area - shape(before.piece(other)).area == pytest.approx(-gave, rel=2e-3, abs=1)
    for edge in ("neckline", "armhole"):
        assert across(after, edge) == pytest.approx(across(before, edge), abs=1e-6)
    assert notches_of(after) == notches_of(before)
    for seam in before.seams:
        now = next(one for one in after.seams if one.name == seam.name)
        assert off(after, now) == pytest.approx(off(before, seam), abs=1e-3), seam.name
    bends = [[join.bend for join in trued(g, wearer).joins] for g in (before, after)]
    assert bends[0] == pytest.approx(bends[1], abs=1e-6)


@examples(40)
@given(wearers(), STYLED, st.floats(2, 25))
def test_moved_there_and_back_the_garment_is_as_it_was(wearer: Wearer, style: str, by: float) -> None:
    """Forward by an amount and back again, no corner is elsewhere by more than a hundredth of a millimetre."""
    before = drawn(wearer, style)
    there = move_seam(before, "shoulder", Length(by), into="front")
    back = move_seam(there, "shoulder", Length(by), into="back")
    for piece in before.pieces:
        for edge in piece.edges:
            now = back.piece(piece.name).edge(edge.name).path
            assert now.start.distance_to(edge.path.start) < 0.01, (piece.name, edge.name)
            assert now.length == pytest.approx(edge.length, abs=0.01)
        was, now_at = (sorted((n.edge, n.at_mm) for n in one.notches) for one in (piece, back.piece(piece.name)))
        assert [edge for edge, _ in was] == [edge for edge, _ in now_at]
        assert [at for _, at in was] == pytest.approx([at for _, at in now_at], abs=0.02)


def test_the_seam_moves_by_what_is_said() -> None:
    """The new shoulder of the front is the old one's parallel, a centimetre inside; the back's lies on it, sewn."""
    after = move_seam(TEE, "shoulder", cm(1), into="front")
    old, new = TEE.piece("front").edge("shoulder").path, after.piece("front").edge("shoulder").path
    assert old.distance_to(new.at(new.length / 2)) == pytest.approx(10, abs=1e-9)
    assert old.leaves.turn_to(new.leaves) == pytest.approx(0, abs=1e-9)
    assert after.piece("back").edge("shoulder").length == pytest.approx(new.length, abs=1e-9)


def test_the_crown_and_the_bands_notch_go_along() -> None:
    """The crown stays where both parts of the cap meet, and they are longer and shorter by the armhole's centimetre."""
    after = move_seam(TEE, "shoulder", cm(1), into="front")
    was, now = TEE.piece("sleeve"), after.piece("sleeve")
    moved = after.piece("back").edge("armhole").length - TEE.piece("back").edge("armhole").length
    assert now.edge("cap_back").length - was.edge("cap_back").length == pytest.approx(moved, rel=0.02)
    assert now.edge("cap_back").length + now.edge("cap_front").length == pytest.approx(
        was.edge("cap_back").length + was.edge("cap_front").length, abs=1e-6
    )
    (crown,) = (n for n in now.notches if n.kind is NotchKind.CROWN)
    assert (crown.edge, crown.at_mm) == ("cap_front", 0.0)
    notch = [p.notches_on("neckline")[0].at_mm for p in (TEE.piece("neckband"), after.piece("neckband"))]
    share = TEE.piece("neckband").edge("neckline").length / across(TEE, "neckline")
    longer = after.piece("back").edge("neckline").length - TEE.piece("back").edge("neckline").length
    assert notch[1] - notch[0] == pytest.approx(longer * share, rel=0.02)


@examples(40)
@given(wearers(), st.sampled_from(BOTH), st.floats(2, 25))
def test_a_straight_side_seam_moves_and_the_sleeve_is_notched(wearer: Wearer, into: str, by: float) -> None:
    """The girths stay; the part of the armhole that was taken is an edge of its own, and the sleeve gets its notch."""
    before = drawn(wearer, "block")
    after = move_seam(before, "side", Length(by), into=into)
    in_order(before, after)
    known = errors(before, wearer)
    assert [e for e in errors(after, wearer) if e not in known] == []
    girths = [[g.garment_mm for g in trued(garment, wearer).girths] for garment in (before, after)]
    assert girths[0] == pytest.approx(girths[1], abs=0.01)
    other = next(half for half in BOTH if half != into)
    taken = after.piece(other).edge(f"{into}_armhole").length
    given_up = before.piece(into).edge("armhole").length - after.piece(into).edge("armhole").length
    assert taken == pytest.approx(given_up, abs=1e-6)
    assert len(after.piece("sleeve").notches) == len(before.piece("sleeve").notches) + 1


@pytest.mark.parametrize(
    ("code", "move"),
    [
        ("seam-unknown", lambda: move_seam(TEE, "shoulders", cm(1), into="front")),
        ("not-in-seam", lambda: move_seam(TEE, "shoulder", cm(1), into="sleeve")),
        ("seam-moved-back", lambda: move_seam(TEE, "shoulder", cm(-1), into="front")),
        ("seam-moved-too-far", lambda: move_seam(TEE, "shoulder", cm(30), into="front")),
        ("seam-not-flat", lambda: move_seam(TEE, "side", cm(1), into="front")),
    ],
)
def test_what_cannot_be_moved_is_refused(code: str, move: Callable[[], Garment]) -> None:
    """With a code, a reason and a hint."""
    with pytest.raises(InputError) as error:
        move()
    assert code in refused(error.value)
