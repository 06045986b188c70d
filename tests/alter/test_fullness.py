"""Fullness: gathers, pleats and swing ease add what they say, where they say, and the partner stays."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.alter import Stretch, gather, level, pleat, split, swing
from tapeline.geometry import Path, Point, Rigid
from tapeline.lengths import cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment, NotchKind
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape
from tests.alter.whole import notches_of, whole
from tests.properties.drafts import examples
from tests.wearers import wearers

HINGED_MM = 0.3
"""A hinge is drawn anew as a fair line, and keeps its length within that."""


def yoked(garment: Garment) -> Garment:
    """A back with a yoke: fullness below it is gathered or pleated into its seam."""
    line = level(garment, "back.back_shoulder_tip", down=cm(8)).turned
    return split(garment, "back", line, name="yoke", title="Back yoke", seam="yoke")


def lengths(garment: Garment, piece: str) -> dict[str, float]:
    """Of every edge of a piece, mm."""
    return {edge.name: edge.length for edge in garment.piece(piece).edges}


@examples(12)
@given(wearers(), st.floats(2, 10), st.booleans())
def test_gathers_add_what_they_say_between_two_notches(wearer: Wearer, by: float, hinged: bool) -> None:
    """The stretch grows by the amount, its partner not at all; both have notches at its ends; truing finds no fault."""
    before = yoked(drawn(wearer))
    after = gather(before, "back", Stretch("yoke", 0.1, 0.8), cm(by), toward=Stretch("hem", 0.2, 0.9), hinged=hinged)
    in_order(before, after)
    assert not whole(after)
    assert errors(after, wearer) == errors(before, wearer)
    old, new = lengths(before, "back"), lengths(after, "back")
    assert new["yoke"] - old["yoke"] == pytest.approx(by * 10, abs=0.06)
    assert new["centre"] == pytest.approx(old["centre"], abs=1e-6)
    assert new["hem"] - old["hem"] == pytest.approx(0 if hinged else by * 10, abs=HINGED_MM if hinged else by)
    partner = after.piece("yoke")
    assert partner.edges == before.piece("yoke").edges
    seam = next(seam for seam in after.seams if seam.name == "yoke")
    assert abs(seam.ease.mm) == pytest.approx(by * 10, abs=0.06)
    assert f"{1 + by * 10 / (0.7 * old['yoke']):.1f} to 1" in seam.reason
    ends = [notch.at_mm for notch in after.piece("back").notches_on("yoke")]
    for share, more in ((0.1, 0), (0.8, by * 10)):
        assert min(abs(at - share * old["yoke"] - more) for at in ends) < 1.1
    assert len(partner.notches_on("yoke")) == len(ends)
    grew = shape(after.piece("back")).area - shape(before.piece("back")).area
    tall = before.piece("back").edge("centre").length
    assert grew == pytest.approx(by * 10 * tall * (0.5 if hinged else 1), rel=0.12)


@examples(12)
@given(wearers(), st.floats(1, 4), st.integers(1, 3), st.booleans(), st.booleans())
def test_a_folded_pleat_lies_under_the_edge_that_was(
    wearer: Wearer, by: float, number: int, to_end: bool, hinged: bool
) -> None:
    """Turned over about its lines every layer of a pleat ends on the old edge; beside it the edge is as it was."""
    before = drawn(wearer)
    along, toward = Stretch("cap_back", 0.45, 0.95), Stretch("hem", 0.5, 0.8)
    after = pleat(before, "sleeve", along, number, cm(by), toward=toward, hinged=hinged, folded_to_end=to_end)
    in_order(before, after)
    assert not whole(after)
    known = [error for error in errors(before, wearer) if "girth" not in error]
    assert [error for error in errors(after, wearer) if "girth" not in error] == known
    old, new = before.piece("sleeve").edge("cap_back").path, after.piece("sleeve").edge("cap_back").path
    marks = {mark.name: mark.path for mark in after.piece("sleeve").marks}
    at = 0.0
    gone = 0.0
    for k in range(1, number + 1):
        fold, onto = marks[f"pleat_{k}_fold"], marks[f"pleat_{k}_onto"]
        first, last = (fold, onto) if to_end else (onto, fold)
        start, end = (new.length_to(line.start) for line in (first, last))
        # Beside the pleat: as long as it was, up to where it was cut.
        cut = old.length * (0.45 + 0.5 * (k - 0.5) / number)
        assert start - at == pytest.approx(cut - gone, abs=0.05)
        roof = new.part(start, end)
        half = roof.part(0, roof.length / 2) if to_end else roof.part(roof.length / 2, roof.length)
        way = fold.leaves
        over = Rigid.laying(fold.start, way, fold.start, way, turned_over=True)
        beside = new.part(at, start) if to_end else new.part(end, new.length)
        assert all(beside.distance_to(over.point(place)) < 0.01 for place in places(half))
        assert roof.length > by * 10 - 0.01
        kinds = [n.kind for n in after.piece("sleeve").notches_on("cap_back") if abs(n.at_mm - end) < 0.02]
        assert kinds == [NotchKind.PLEAT]
        at, gone = end, cut
    assert notches_of(after)["pleat"] == number
    assert len(marks) == len(before.piece("sleeve").marks) + 3 * number
    seam = next(seam for seam in after.seams if seam.name == "armhole_back")
    assert "pleat" in seam.reason
    assert new.length - old.length == pytest.approx(
        seam.ease.mm - next(s.ease.mm for s in before.seams if s.name == "armhole_back"), abs=1e-6
    )


def places(path: Path) -> list[Point]:
    """Some places along a line."""
    return [path.at(path.length * k / 8) for k in range(9)]


@examples(12)
@given(wearers(), st.floats(2, 12))
def test_swing_ease_grows_the_hem_alone(wearer: Wearer, by: float) -> None:
    """Hem and area grow; shoulder, armhole, neckline, side and the angle at side and hem are as they were."""
    before = drawn(wearer)
    after = before
    for half in ("back", "front"):
        after = swing(after, half, Stretch("hem", 0.2, 0.8), cm(by), hinge=Stretch("shoulder", 0.2, 0.8))
        old, new = lengths(before, half), lengths(after, half)
        assert new.pop("hem") - old.pop("hem") == pytest.approx(by * 10, abs=0.06)
        shoulders = new.pop("shoulder"), old.pop("shoulder")
        assert shoulders[0] == pytest.approx(shoulders[1], abs=HINGED_MM)
        assert new == pytest.approx(old, abs=1e-6)
        for edges in (("side", "hem"), ("armhole", "side"), ("hem", "centre")):
            angles = [garment.piece(half).corner(*edges)[1] for garment in (before, after)]
            assert angles[0] == pytest.approx(angles[1], abs=1e-6)
    in_order(before, after)
    assert not whole(after)


def test_what_cannot_be_fuller_is_said() -> None:
    """An edge that nothing holds, a stretch that is none, nothing at all, a seam that is eased the other way."""
    tee = drawn(size_wearer("92"))
    hem, shoulder = Stretch("hem", 0.2, 0.8), Stretch("shoulder", 0.2, 0.8)

    def code(act: object, *args: object, **more: object) -> list[str]:
        with pytest.raises(InputError) as error:
            act(*args, **more)  # type: ignore[operator]  # one of the alterations
        return list(refused(error.value))

    assert code(gather, tee, "back", hem, cm(5), toward=shoulder) == ["edge-not-sewn"]
    assert code(gather, tee, "back", shoulder, cm(0), toward=hem) == ["fullness-not-more"]
    assert code(gather, tee, "back", Stretch("shoulder", 0.8, 0.2), cm(5), toward=hem) == ["stretch-unclear"]
    assert code(gather, tee, "back", shoulder, cm(5), toward=Stretch("shoulder", 0.9, 1)) == ["stretch-unclear"]
    full = gather(tee, "back", shoulder, cm(5), toward=hem)
    assert code(gather, full, "front", shoulder, cm(5), toward=hem) == ["fullness-against-ease"]
    near = Stretch("shoulder", 0, 0.1)
    assert code(pleat, tee, "back", near, 1, cm(4), toward=hem) == ["pleat-too-near"]
