"""Cutting and spreading or overlapping: areas, distances and seams, for random wearers."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.alter import Edges, Spread, level, split, spread, upright
from tapeline.alter.outline_cut import cut_outline
from tapeline.docket import docket_from_text
from tapeline.geometry import area
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.project import draft
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))


@examples(60)
@given(wearers(), st.floats(1, 80), st.floats(1, 80))
def test_spread_in_parallel_the_area_grows_by_cut_times_amount(wearer: Wearer, one: float, two: float) -> None:
    """Along two lines at once, with straight bridges: the sum of both strips, by our areas and by polygons."""
    before = drawn(wearer)
    lines = [upright(before, "back.neckline_shoulder", out=cm(out)) for out in (3, 6)]
    cuts = [cut_outline(before.piece("back"), line).path.length for line in lines]
    spreads = [Spread(line, Length(by)) for line, by in zip(lines, (one, two), strict=True)]
    after = spread(before, "back", spreads, edges=Edges.STRAIGHT)
    old, new = before.piece("back"), after.piece("back")
    grown = cuts[0] * one + cuts[1] * two
    assert area(old.seam_line) - area(new.seam_line) == pytest.approx(grown, abs=1e-3)
    assert shape(new).area - shape(old).area == pytest.approx(grown, rel=1e-4, abs=0.5)
    assert new.edge("side").length == pytest.approx(old.edge("side").length, abs=1e-9)
    assert new.edge("armhole").length == pytest.approx(old.edge("armhole").length, abs=1e-9)
    in_order(before, after)


@examples(60)
@given(wearers(), st.floats(5, 120))
def test_hinged_at_the_shoulder_the_hem_opens_by_the_amount(wearer: Wearer, by: float) -> None:
    """The sides of the wedge stand the amount apart at the hem, and all that is beyond turned as one piece of paper."""
    before = drawn(wearer)
    line = upright(before, "back.neckline_shoulder", out=cm(4))
    found = cut_outline(before.piece("back"), line)
    after = spread(before, "back", [Spread(line, Length(by), hinge="shoulder")], edges=Edges.STRAIGHT)
    old, new = before.piece("back"), after.piece("back")
    chord = found.path.length
    angle = 2 * math.asin(by / 2 / chord)
    assert area(old.seam_line) - area(new.seam_line) == pytest.approx(chord**2 * math.sin(angle) / 2, rel=1e-9)
    assert new.edge("hem").length - old.edge("hem").length == pytest.approx(by, abs=1e-6)
    for name in ("armhole", "side", "shoulder"):
        assert new.edge(name).length == pytest.approx(old.edge(name).length, abs=1e-6)
    turned = old.edge("side").path.leaves.turn_to(new.edge("side").path.leaves)
    assert abs(turned) == pytest.approx(angle, abs=1e-9)
    corner = [piece.corner("armhole", "side")[1] for piece in (old, new)]
    assert corner[0] == pytest.approx(corner[1], abs=1e-9)


@examples(40)
@given(wearers(), st.floats(5, 60))
def test_a_flare_at_back_and_front_keeps_the_garment_true(wearer: Wearer, by: float) -> None:
    """Back and front flared alike from the armhole: side seams, hem over the side, folds and outlines hold.

    The armhole is redrawn and its seam to the sleeve no longer walked: that is drafted anew, or truing says so.
    """
    before = drawn(wearer)
    after = before
    for half in ("back", "front"):
        line = upright(after, f"{half}.underarm", out=cm(-2))
        # On a hip far narrower than the chest it would come out at the side: no flare of the hem.
        ends = cut_outline(after.piece(half), line)
        assume("hem" in (ends.beyond[0].was, ends.beyond[-1].was))
        after = spread(after, half, [Spread(line, Length(by), hinge="armhole")])
    in_order(before, after)
    known = errors(before, wearer)
    assert [found for found in errors(after, wearer) if "seam armhole_" not in found and found not in known] == []
    side = {walk.seam.name: walk for walk in trued(after, wearer).walks}["side"]
    assert abs(side.off_mm) < 0.1


@examples(40)
@given(wearers(), st.floats(5, 40))
def test_the_girths_grow_by_what_was_spread_and_say_so(wearer: Wearer, by: float) -> None:
    """Spread straight down by an amount, chest, waist and hip are wider by twice that, and meant to be."""
    before = drawn(wearer)
    line = upright(before, "back.neckline_shoulder", out=cm(4))
    after = spread(before, "back", [Spread(line, Length(by))])
    was, now = trued(before, wearer).girths, trued(after, wearer).girths
    for old, new in zip(was[:3], now[:3], strict=True):
        # The side may be cut lower by the hem that rises; at chest, waist and hip it is not.
        assert new.garment_mm - old.garment_mm == pytest.approx(2 * by, abs=1e-6)
        assert new.ease_mm == pytest.approx(new.girth.ease.mm, abs=0.1)


@examples(40)
@given(wearers(), st.floats(5, 50))
def test_overlapped_the_piece_loses_the_strip(wearer: Wearer, by: float) -> None:
    """Laid over itself in parallel, what lies between the two lines is gone, as a polygon cut by shapely says too."""
    before = drawn(wearer)
    line = level(before, "back.waist_level", down=cm(2))
    after = spread(before, "back", [Spread(line, Length(-by))], edges=Edges.STRAIGHT)
    from shapely import box

    old = shape(before.piece("back"))
    top = line.at.y
    strip = old.intersection(box(-1000, top - by, 2000, top)).area
    assert old.area - shape(after.piece("back")).area == pytest.approx(strip, rel=1e-4, abs=1)


@examples(40)
@given(wearers(), st.floats(5, 25))
def test_overlapped_at_the_hem_and_spread_again_it_is_what_it_was(wearer: Wearer, by: float) -> None:
    """A wedge laid over and opened again by as much leaves the side where it was, to a tenth of a millimetre."""
    before = drawn(wearer)
    line = upright(before, "back.neckline_shoulder", out=cm(4))
    less = spread(before, "back", [Spread(line, Length(-by), hinge="shoulder")])
    again = spread(less, "back", [Spread(line, Length(by), hinge="shoulder")])
    was, now = before.piece("back").edge("side").path, again.piece("back").edge("side").path
    assert was.start.distance_to(now.start) < 0.1
    assert was.end.distance_to(now.end) < 0.1


def test_lines_stay_smooth_where_they_are_redrawn() -> None:
    """A flared hem is one fair curve: square to the fold, square to the side, without a corner."""
    line = upright(TEE, "back.neckline_shoulder", out=cm(4))
    hem = spread(TEE, "back", [Spread(line, cm(6), hinge="shoulder")]).piece("back")
    assert hem.corner("hem", "centre")[1] == pytest.approx(math.pi / 2, abs=1e-6)
    assert hem.corner("side", "hem")[1] == pytest.approx(math.pi / 2, abs=1e-6)
    path = hem.edge("hem").path
    for one, two in zip(path.segments, path.segments[1:], strict=False):
        assert abs(one.direction(1).turn_to(two.direction(0))) < 1e-6


def test_a_straight_edge_at_a_hinge_keeps_its_angles() -> None:
    """Hinged at a yoke seam, the seam bends: square to the fold as before, and as it was to the armhole."""
    line = level(TEE, "back.back_shoulder_tip", down=cm(8)).turned
    yoked = split(TEE, "back", line, name="yoke", title="Yoke", seam="yoke_seam")
    cuts = [Spread(upright(yoked, "back.neckline_shoulder", out=cm(x)), cm(5), hinge="yoke_seam") for x in (2, 7)]
    old, new = yoked.piece("back"), spread(yoked, "back", cuts).piece("back")
    for one, two in (("centre", "yoke_seam"), ("yoke_seam", "armhole"), ("hem", "centre"), ("side", "hem")):
        assert new.corner(one, two)[1] == pytest.approx(old.corner(one, two)[1], abs=1e-6), (one, two)
    assert new.edge("yoke_seam").length == pytest.approx(old.edge("yoke_seam").length, abs=1)


NONSENSE: dict[str, tuple[Callable[[], Garment], str]] = {
    "wider than the piece": (
        lambda: spread(TEE, "back", [Spread(upright(TEE, "back.neckline_shoulder", out=cm(2)), cm(-40))]),
        "overlap-too-wide",
    ),
    "hinged elsewhere": (
        lambda: spread(TEE, "back", [Spread(upright(TEE, "back.neckline_shoulder", out=cm(2)), cm(2), "side")]),
        "hinge-not-cut",
    ),
    "in no order": (
        lambda: spread(
            TEE, "back", [Spread(upright(TEE, "back.neckline_shoulder", out=cm(out)), cm(2)) for out in (6, 3)]
        ),
        "lines-cross",
    ),
    "opened farther than it is long": (
        lambda: spread(TEE, "back", [Spread(upright(TEE, "back.neckline_shoulder", out=cm(2)), cm(90), "hem")]),
        "spread-too-wide",
    ),
    "over the fold": (
        lambda: spread(TEE, "back", [Spread(level(TEE, "back.hip_level"), cm(2), "side")]),
        "fold-left",
    ),
    "unknown piece": (
        lambda: spread(TEE, "bodice", [Spread(level(TEE, "back.hip_level"), cm(2))]),
        "piece-unknown",
    ),
}


@pytest.mark.parametrize("kind", NONSENSE)
def test_nonsense_is_refused_with_what_to_try(kind: str) -> None:
    """What cannot be spread so is a problem with its place and a hint."""
    make, code = NONSENSE[kind]
    with pytest.raises(InputError) as raised:
        make()
    assert list(refused(raised.value)) == [code]


@pytest.mark.parametrize("bell", [1.44, 12, 24, 40])
def test_an_outline_closes_to_the_last_digit(bell: float) -> None:
    """Cut seven times and turned upright, every edge of a bell begins exactly where the one before ends.

    A gap of 1e-13 mm is nothing to the shears, and still a crossing to a program that reads the outline.
    """
    for size in ("76", "92", "116"):
        choices = f"sleeve = {{ length = 'long', end = {{ bell = {bell} }} }}"
        text = f"wearer = {{ figure = 'woman', size = '{size}' }}\n[garment]\nstyle = 'tee'\n{choices}"
        edges = draft(docket_from_text(text)).garment.piece("bell").edges
        for before, after in zip((edges[-1], *edges), edges, strict=False):
            assert before.path.end == after.path.start, (size, before.name, after.name)
