"""Splitting a piece by a line: what is kept, for random wearers, and what is refused."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.alter import CutLine, along, level, split, through, upright
from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.finish import FinishChoices, finish
from tapeline.geometry import Point, Vector, area, fair_line
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment, Step, StepKind
from tapeline.problems import InputError
from tapeline.styles.top import NecklineChoices
from tests.alter.altered import drawn, errors, in_order, refused, shape, trued
from tests.finish.shapes import TITLE
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

TEE = draw(size_wearer("92"))
LINES: dict[str, tuple[str, Callable[[Garment], CutLine]]] = {
    "back yoke": ("back", lambda g: level(g, "back.back_shoulder_tip", down=cm(9)).turned),
    "chest block": ("front", lambda g: level(g, "front.chest_level", down=cm(3))),
    "front panel": ("front", lambda g: upright(g, "front.neckline_shoulder", out=cm(4))),
    "side panel": ("back", lambda g: upright(g, "back.underarm", out=cm(-2))),
    "slanting": ("front", lambda g: through(g, "front.chest_level", "front.side_waist")),
    "sleeve": ("sleeve", lambda g: level(g, "sleeve.cap_foot", down=cm(4))),
}
"""Piece and line of cuts as a maker makes them."""


def cut(garment: Garment, kind: str) -> tuple[Garment, str]:
    """The garment split, and the piece that was cut."""
    piece, line = LINES[kind]
    return split(garment, piece, line(garment), name="part", title="Part", seam="new_seam"), piece


@pytest.mark.parametrize("kind", LINES)
@examples(40)
@given(wearers(), st.sampled_from(["tee"]))
def test_both_parts_are_together_what_was_cut(kind: str, wearer: Wearer, style: str) -> None:
    """Areas add up, by our formula and by polygons that touch and do not overlap; every edge keeps its length."""
    before = drawn(wearer, style)
    after, name = cut(before, kind)
    whole, rest, part = before.piece(name), after.piece(name), after.piece("part")
    assert area(rest.seam_line) + area(part.seam_line) == pytest.approx(area(whole.seam_line), abs=1e-3)
    assert area(rest.seam_line) < 0
    assert area(part.seam_line) < 0
    assert shape(rest).area + shape(part).area == pytest.approx(shape(whole).area, rel=1e-5)
    assert shape(rest).intersection(shape(part)).area < 1
    for edge in whole.edges:
        parts = [e.length for p in (rest, part) for e in p.edges if e.name in (edge.name, f"{edge.name}_2")]
        assert sum(parts) == pytest.approx(edge.length, abs=1e-6)
    assert part.edge("new_seam").length == pytest.approx(rest.edge("new_seam").length, abs=1e-9)


def test_a_point_that_was_meant_stays_meant() -> None:
    """A v neck's point on the fold is no fault, before the front is cut across and after."""
    wearer = size_wearer("92")
    before = draw(wearer, neckline=NecklineChoices(shape=NECK_SHAPES["v"]))
    after, _ = cut(before, "chest block")
    assert after.piece("front").pointed == before.piece("front").pointed == ("neckline",)
    assert errors(after, wearer) == errors(before, wearer) == []


@pytest.mark.parametrize("kind", LINES)
@examples(40)
@given(wearers())
def test_the_garment_is_as_true_as_before(kind: str, wearer: Wearer) -> None:
    """Truing finds what it found before and no more: seams part by part, lines over seams, folds, outlines, girths."""
    before = drawn(wearer)
    after, _ = cut(before, kind)
    in_order(before, after)
    if kind != "slanting":  # it leaves the centre aslant, which truing says
        assert errors(after, wearer) == errors(before, wearer)
    was, now = trued(before, wearer), trued(after, wearer)
    assert [g.garment_mm for g in now.girths] == pytest.approx([g.garment_mm for g in was.girths], abs=1e-6)
    assert len(now.joins) > len(was.joins) or kind == "sleeve"
    for walk in now.walks:
        mates = next((w for w in was.walks if w.seam.name == walk.seam.name), None)
        assert mates is None or len(walk.parts) >= len(mates.parts), walk.seam.name
    assert [w.off_mm for w in now.walks[:-1]] == pytest.approx([w.off_mm for w in was.walks], abs=1e-6)


@pytest.mark.parametrize("kind", LINES)
def test_no_notch_is_lost_and_the_partner_is_notched(kind: str) -> None:
    """Each notch of the piece is on one of its parts; where the new seam meets another, that one has a mark."""
    after, _ = cut(TEE, kind)
    old = sum(len(piece.notches) for piece in TEE.pieces)
    ends = {"side panel": 1, "front panel": 1, "sleeve": 0, "back yoke": 1, "chest block": 1, "slanting": 0}
    assert sum(len(piece.notches) for piece in after.pieces) == old + 2 + ends[kind] - (kind == "slanting")


def test_a_waist_notch_at_the_new_seam_is_marked_by_it() -> None:
    """Cut at the waist, the side's own notch goes, and the partner's waist notch meets the seam."""
    after, _ = cut(TEE, "slanting")
    assert not [n for p in ("front", "part") for n in after.piece(p).notches_on("side")]
    side = next(w for w in trued(after, size_wearer("92")).walks if w.seam.name == "side")
    assert len(side.parts) == 2


@pytest.mark.parametrize("style", ["tee", "vest"])
@pytest.mark.parametrize("beside_mm", [-0.7, 0.4, 0.9])
def test_a_notch_that_all_but_meets_the_cut_is_moved_to_it(style: str, beside_mm: float) -> None:
    """Sleeve and band are notched where the new seam comes, and a folded band on its other edge as well."""
    wearer = size_wearer("92")
    before = draw(wearer, style)
    (armhole,) = before.piece("back").notches_on("armhole")
    notch = before.piece("back").edge("armhole").path.at(armhole.at_mm)
    down = Length(before.points["back.nape"].y - notch.y + beside_mm)
    line = level(before, "back.nape", down=down).turned
    after = split(before, "back", line, name="yoke", title="Yoke", seam="yoke_seam")
    assert errors(after, wearer) == errors(before, wearer) == []
    counts = [
        {p.name: len(p.notches) for p in g.pieces if p.name in {"sleeve", "armhole_band"}} for g in (before, after)
    ]
    assert counts[0] == counts[1]


def test_a_part_away_from_the_fold_is_cut_for_each_side() -> None:
    """A yoke stays on the fold and is cut once; a panel at the side is cut twice, one turned over."""
    yoke, panel = (cut(TEE, kind)[0].piece("part") for kind in ("back yoke", "side panel"))
    assert (yoke.on_fold, yoke.cut.quantity, yoke.cut.mirrored) == (True, 1, False)
    assert (panel.on_fold, panel.cut.quantity, panel.cut.mirrored) == (False, 2, True)


@pytest.mark.parametrize("kind", LINES)
def test_both_parts_can_be_finished(kind: str) -> None:
    """Allowances, notches and grain go on the parts as on any piece; the grain line lies inside."""
    after, _ = cut(TEE, kind)
    finished = finish(after, FinishChoices(), TITLE)
    assert len(finished.pieces) == len(TEE.pieces) + 1
    for piece in after.pieces:
        for end in (piece.grain.start, piece.grain.end):
            assert shape(piece).buffer(0.1).covers(_place(end))


def _place(point: Point) -> object:
    from shapely import Point as Place

    return Place(point.x, point.y)


def test_a_piece_is_split_again_and_again() -> None:
    """A yoke, then a block of another colour below the arm, on back and front: everything still holds."""
    garment = TEE
    for half in ("back", "front"):
        yoke = level(garment, f"{half}.{half}_shoulder_tip", down=cm(8)).turned
        garment = split(garment, half, yoke, name=f"{half}_yoke", title="Yoke", seam=f"{half}_yoke_seam")
        block = level(garment, f"{half}.chest_level", down=cm(4))
        garment = split(garment, half, block, name=f"{half}_lower", title="Lower", seam=f"{half}_block_seam")
    assert errors(garment, size_wearer("92")) == []
    assert len(garment.pieces) == len(TEE.pieces) + 4
    side = next(seam for seam in garment.seams if seam.name == "side")
    assert side.side_text(side.a) == "front.side + front_lower.side"


def test_a_curved_line_may_cut() -> None:
    """A curved yoke line gives two edges of its length, hollow on one part and round on the other."""
    tip, fold = TEE.points["back.back_armhole_point"], TEE.points["back.chest_level"]
    path = fair_line([Point(fold.x, tip.y - 20), tip], leave=Vector(1, 0))
    step = Step(StepKind.LINE, "back.yoke_line", "A curved yoke", path=path)
    drawn_on = replace(TEE, steps=(*TEE.steps, step))
    after = split(drawn_on, "back", along(drawn_on, "back.yoke_line"), name="part", title="Part", seam="new_seam")
    edge = after.piece("part").edge("new_seam").path
    assert edge.length == pytest.approx(path.length, abs=0.05)
    parts = area(after.piece("part").seam_line) + area(after.piece("back").seam_line)
    assert parts == pytest.approx(area(TEE.piece("back").seam_line), abs=1e-3)
    assert errors(after, size_wearer("92")) == []


def test_a_slanting_line_leaves_a_point_at_the_fold_and_truing_says_so() -> None:
    """The angle at the fold is the line's own, and is found."""
    after, _ = cut(TEE, "slanting")
    slant = max(abs(s.off) for s in trued(after, size_wearer("92")).squares)
    a, b = TEE.points["front.chest_level"], TEE.points["front.side_waist"]
    assert slant == pytest.approx(abs(math.atan2(b.y - a.y, b.x - a.x)), abs=1e-9)


NONSENSE: dict[str, tuple[Callable[[], Garment], str]] = {
    "misses": (
        lambda: split(TEE, "back", level(TEE, "back.hem_centre", down=cm(5)), name="a", title="A", seam="s"),
        "line-misses-piece",
    ),
    "no such piece": (
        lambda: split(TEE, "bak", level(TEE, "back.hip_level"), name="a", title="A", seam="s"),
        "piece-unknown",
    ),
    "no such point": (
        lambda: split(TEE, "back", level(TEE, "back.hips"), name="a", title="A", seam="s"),
        "label-unknown",
    ),
    "a line for a point": (
        lambda: split(TEE, "back", level(TEE, "back.side"), name="a", title="A", seam="s"),
        "not-a-point",
    ),
    "a point for a line": (
        lambda: split(TEE, "back", along(TEE, "back.hip_level"), name="a", title="A", seam="s"),
        "not-a-point",
    ),
    "one place": (
        lambda: split(TEE, "back", through(TEE, "back.nape", "back.nape"), name="a", title="A", seam="s"),
        "points-together",
    ),
    "name of another": (
        lambda: split(TEE, "back", level(TEE, "back.hip_level"), name="front", title="A", seam="s"),
        "name-taken",
    ),
    "beside a corner": (
        lambda: split(TEE, "back", level(TEE, "back.underarm", down=cm(0.05)), name="a", title="A", seam="s"),
        "line-near-corner",
    ),
    "through a join": (
        lambda: split(TEE, "back", level(TEE, "back.underarm"), name="a", title="A", seam="s"),
        "line-through-join",
    ),
}


@pytest.mark.parametrize("kind", NONSENSE)
def test_nonsense_is_refused_with_what_to_try(kind: str) -> None:
    """A cut that cannot be made is a problem with its place and a hint; nothing is made."""
    make, code = NONSENSE[kind]
    with pytest.raises(InputError) as raised:
        make()
    assert list(refused(raised.value)) == [code]
