"""Lengthening and shortening at a line: what moves, what grows, and what stays true, for random wearers."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.alter import Edges, along, lengthen, level, split, through
from tapeline.alter.outline_cut import cut_outline
from tapeline.geometry import area
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))
BELOW_WAIST = cm(4)


def both_longer(garment: Garment, by: Length, edges: Edges = Edges.FAIR) -> Garment:
    """Back and front lengthened alike below the waist."""
    for half in ("back", "front"):
        line = level(garment, f"{half}.waist_level", down=BELOW_WAIST)
        garment = lengthen(garment, half, line, by, edges=edges)
    return garment


@examples(60)
@given(wearers(), st.sampled_from(["tee", "block"]), st.floats(1, 150))
def test_lengthened_straight_the_area_grows_by_the_strip(wearer: Wearer, style: str, by: float) -> None:
    """The strip is as long as the cut and as wide as the amount, by our areas and by polygons."""
    before = drawn(wearer, style)
    line = level(before, "back.waist_level", down=BELOW_WAIST)
    wide = cut_outline(before.piece("back"), line).path.length
    after = lengthen(before, "back", line, Length(by), edges=Edges.STRAIGHT)
    old, new = before.piece("back"), after.piece("back")
    assert area(old.seam_line) - area(new.seam_line) == pytest.approx(wide * by, abs=1e-3)
    assert shape(new).area - shape(old).area == pytest.approx(wide * by, rel=1e-4, abs=0.5)
    for name in ("centre", "side"):
        assert new.edge(name).length - old.edge(name).length == pytest.approx(by, abs=1e-6)
    for name in ("neckline", "shoulder", "armhole"):
        assert new.edge(name) == old.edge(name)
    assert new.edge("hem").length == pytest.approx(old.edge("hem").length, abs=1e-9)


@examples(60)
@given(wearers(), st.sampled_from(["tee", "block"]), st.floats(-60, 120).filter(lambda by: abs(by) > 0.1))
def test_lengthened_or_shortened_the_garment_is_as_true_as_before(wearer: Wearer, style: str, by: float) -> None:
    """Back and front altered alike: seams part by part, lines over seams, folds, outlines and girths still hold."""
    before = drawn(wearer, style)
    # The block's side is straight and slants: drawn anew it would turn, as the explanation says.
    assume(style == "tee" or by > 0)
    after = both_longer(before, Length(by), Edges.FAIR if style == "tee" else Edges.STRAIGHT)
    in_order(before, after)
    assert errors(after, wearer) == errors(before, wearer)
    for half in ("back", "front"):
        old, new = before.piece(half), after.piece(half)
        assert new.edge("centre").length - old.edge("centre").length == pytest.approx(by, abs=1e-6)
        assert after.points[f"{half}.hip_level_2"].y == pytest.approx(
            before.points[f"{half}.hip_level"].y - by, abs=1e-9
        )
        assert [e.name for e in new.edges] == [e.name for e in old.edges]
        assert [(n.edge, n.kind) for n in new.notches] == [(n.edge, n.kind) for n in old.notches]
    assert (after.seams, after.joins) == (before.seams, before.joins)
    parts = {w.seam.name: len(w.parts) for w in trued(before, wearer).walks}
    assert {w.seam.name: len(w.parts) for w in trued(after, wearer).walks} == parts


@examples(40)
@given(wearers(), st.floats(5, 60))
def test_what_is_put_in_can_be_taken_out(wearer: Wearer, by: float) -> None:
    """Lengthened and shortened at the same line by the same amount, the outline is what it was, to a tenth of a mm."""
    before = drawn(wearer)
    there = both_longer(before, Length(by))
    back = both_longer(there, Length(-by))
    for half in ("back", "front"):
        for edge in before.piece(half).edges:
            again = back.piece(half).edge(edge.name).path
            assert max(edge.path.distance_to(again.at(again.length * k / 20)) for k in range(21)) < 0.1


@examples(40)
@given(wearers(), st.floats(1, 60))
def test_a_sleeve_stays_true_along_its_underarm(wearer: Wearer, by: float) -> None:
    """The underarm seam, its two edges and the line of the hem hold; the cap is untouched.

    Lengthened straight, that is: drawn anew the slanting seam turns, and with it its angle at the hem.
    """
    before = drawn(wearer, "block")
    line = level(before, "sleeve.cap_foot", down=cm(15))
    after = lengthen(before, "sleeve", line, Length(by), edges=Edges.STRAIGHT)
    assert errors(after, wearer) == errors(before, wearer)
    for name in ("cap_front", "cap_back"):
        assert after.piece("sleeve").edge(name) == before.piece("sleeve").edge(name)


def test_lengthened_by_nothing_everything_is_as_it_was() -> None:
    """The redrawn lines are the lines: a fair line through its own knots is itself."""
    after = lengthen(TEE, "back", level(TEE, "back.chest_level", down=cm(-2)), Length(0))
    for edge in TEE.piece("back").edges:
        again = after.piece("back").edge(edge.name).path
        for old, new in zip(edge.path.control_points(), again.control_points(), strict=True):
            assert old.distance_to(new) < 1e-6


def test_the_waist_notch_moves_with_the_paper() -> None:
    """Lengthened above the waist, the notch is as much farther down the side; below it, it stays."""
    above, below = (lengthen(TEE, "back", level(TEE, "back.waist_level", down=cm(d)), cm(2)) for d in (-3, 3))
    at = {name: g.piece("back").notches_on("side")[0].at_mm for name, g in (("above", above), ("below", below))}
    was = TEE.piece("back").notches_on("side")[0].at_mm
    assert at["above"] - was == pytest.approx(20, abs=0.3)
    assert at["below"] - was == pytest.approx(0, abs=0.3)


def test_the_story_names_line_amount_and_what_moved() -> None:
    """The line is told by the point that it goes through, and each point by where it was."""
    after = lengthen(TEE, "front", level(TEE, "front.waist_level", down=cm(4)), cm(3))
    assert after.step("front.lengthened").how_text() == "4 cm below front waist level"
    assert after.step("front.side_hip_2").needs == ("front.side_hip", "front.lengthened")
    assert after.step("front.side_2").path == after.piece("front").edge("side").path
    assert after.step("front.side_2").needs == ("front.side", "front.lengthened")


NONSENSE: dict[str, tuple[Callable[[], Garment], str]] = {
    "more than there is": (
        lambda: lengthen(TEE, "back", level(TEE, "back.waist_level"), cm(-50)),
        "overlap-too-wide",
    ),
    "over a corner": (
        lambda: lengthen(TEE, "back", level(TEE, "back.underarm", down=cm(-3)), cm(-8)),
        "overlap-too-wide",
    ),
    "aslant to the fold": (
        lambda: lengthen(TEE, "back", through(TEE, "back.side_waist", "back.chest_level"), cm(2)),
        "fold-left",
    ),
    "through a corner": (lambda: lengthen(TEE, "back", level(TEE, "back.underarm"), cm(2)), "line-through-corner"),
    "beside the piece": (
        lambda: lengthen(TEE, "back", level(TEE, "back.hem_centre", down=cm(9)), cm(2)),
        "line-misses-piece",
    ),
    "unknown piece": (lambda: lengthen(TEE, "yoke", level(TEE, "back.hip_level"), cm(2)), "piece-unknown"),
    "a curved line": (lambda: lengthen(TEE, "back", along(TEE, "back.neckline"), cm(2)), "line-not-straight"),
}


@pytest.mark.parametrize("kind", NONSENSE)
def test_nonsense_is_refused_with_what_to_try(kind: str) -> None:
    """What cannot be lengthened so is a problem with its place and a hint."""
    make, code = NONSENSE[kind]
    with pytest.raises(InputError) as raised:
        make()
    assert list(refused(raised.value)) == [code]


def test_alterations_follow_each_other() -> None:
    """A piece that was lengthened is split at a level that has moved, and holds."""
    longer = both_longer(TEE, cm(5))
    for half in ("back", "front"):
        line = level(longer, f"{half}.hip_level", down=cm(-6))
        longer = split(longer, half, line, name=f"{half}_low", title="Low", seam=f"{half}_low_seam")
    assert errors(longer, size_wearer("92")) == []
