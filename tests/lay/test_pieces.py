"""What is laid is what was drafted: grain along the cloth, halves whole, larger by what shrinks."""

from __future__ import annotations

import math
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tapeline.geometry import Line, Point, area, bounds, ground
from tapeline.lay import LayCloth, Spread, cloths_of, lay_pieces, need
from tapeline.problems import InputError
from tests.lay.lays import example

ROOT = Path(__file__).resolve().parents[2]
SHIRT = "simple-shirt"


def test_cloths_are_those_of_the_cutting_list() -> None:
    """A hooded sweatshirt has a shell and a rib."""
    assert cloths_of([example("hooded-sweatshirt")]) == ("shell", "rib")


@pytest.mark.parametrize("name", ["tee", SHIRT, "hooded-sweatshirt", "raglan-top", "gusset-top"])
def test_the_ground_laid_is_the_ground_drafted(name: str) -> None:
    """Over all cloths and spreads: the area inside the cut lines (by their curves, exactly), halves twice."""
    finished = example(name)
    for cloth in cloths_of([finished]):
        for spread in (Spread.OPEN, Spread.FACE_TO_FACE):
            for piece in lay_pieces(finished, LayCloth(name=cloth, spread=spread)):
                drafted = next(one for one in finished.pieces if one.piece.name == piece.name)
                halves = 2 if drafted.piece.on_fold else 1
                assert ground(piece.outline) == pytest.approx(abs(area(drafted.cut_line)) * halves, rel=2e-4)
                assert piece.upright + piece.turned_over == drafted.piece.cut.quantity


def test_the_grain_lies_along_the_cloth() -> None:
    """Every grain line of every piece runs along x."""
    for piece in lay_pieces(example(SHIRT), LayCloth()):
        for line in piece.lines:
            if line.kind == "grain":
                start, end = line.points
                assert end.y == pytest.approx(start.y, abs=1e-9)


def test_a_pair_is_two_mirror_images_on_open_cloth_and_one_on_two_layers() -> None:
    """Sleeves: one as drawn and one turned over; on two layers both come from one place."""
    for spread, wanted in ((Spread.OPEN, {False: 1, True: 1}), (Spread.FOLDED, {False: 1, True: 0})):
        cloth = LayCloth(spread=spread)
        sleeve = next(p for p in lay_pieces(example(SHIRT), cloth) if p.name == "sleeve")
        assert need(sleeve, cloth) == wanted


def test_one_on_the_fold_lies_on_it_and_two_are_one_whole_one() -> None:
    """On folded cloth the back is half a piece with its fold at y = 0; of two stands one whole one is cut, doubled."""
    cloth = LayCloth(spread=Spread.FOLDED)
    pieces = {piece.name: piece for piece in lay_pieces(example(SHIRT), cloth)}
    assert pieces["back"].on_fold
    assert bounds(pieces["back"].outline)[1] == pytest.approx(0, abs=1e-6)
    assert not pieces["stand"].on_fold
    assert need(pieces["stand"], cloth) == {False: 1, True: 0}


def test_two_garments_on_two_layers_share_whole_pieces() -> None:
    """Of two shirts the backs are one whole back on folded cloth; of three, or on narrow cloth, each is on the fold."""
    for count, width, on_fold in ((2, 1400, False), (3, 1400, True), (2, 1100, True)):
        cloth = LayCloth(width_mm=width, spread=Spread.FOLDED)
        back = next(p for p in lay_pieces(example(SHIRT), cloth, garments=count) if p.name == "back")
        assert back.on_fold is on_fold
        assert need(back, cloth) == {False: count if on_fold else 1, True: 0}


def test_what_shrinks_is_laid_larger() -> None:
    """After 5 % in length and 3 % in width the piece has the size that was drafted."""
    plain = lay_pieces(example(SHIRT), LayCloth())
    larger = lay_pieces(example(SHIRT), LayCloth(shrink_length=5, shrink_width=3))
    for before, after in zip(plain, larger, strict=True):
        (left, low, right, high), shrunk = bounds(before.outline), bounds(after.outline)
        assert (shrunk[2] - shrunk[0]) * 0.95 == pytest.approx(right - left, abs=0.01)
        assert (shrunk[3] - shrunk[1]) * 0.97 == pytest.approx(high - low, abs=0.01)


def test_a_fold_across_the_grain_is_refused_on_folded_cloth_only() -> None:
    """Contradictory grain and fold: named with the angle; on open cloth the piece is cut whole."""
    finished = example("tee")
    back = finished.pieces[0]
    across = replace(back.piece, grain=Line(Point(0, 100), Point(100, 100)))
    turned = replace(finished, pieces=(replace(back, piece=across),))
    with pytest.raises(InputError, match=r"90\.0 degrees off its grain"):
        lay_pieces(turned, LayCloth(spread=Spread.FOLDED))
    (whole,) = lay_pieces(turned, LayCloth())
    assert ground(whole.outline) == pytest.approx(2 * abs(area(back.cut_line)), rel=2e-4)


def test_no_garment_is_refused() -> None:
    """A lay of none, or of fewer."""
    for count in (0, -1):
        with pytest.raises(InputError, match="at least one"):
            lay_pieces(example("tee"), LayCloth(), garments=count)


def test_stripes_meet_along_the_side_seam() -> None:
    """Front and back of a tee: their matched places are as far from the hem's side end, along the grain."""
    from tapeline.lay import matches

    finished = example("tee")
    places = matches(finished)
    levels = {}
    for name in ("front", "back"):
        piece = finished.garment.piece(name)
        way = (piece.grain.end - piece.grain.start).unit
        side = piece.edge("side").path
        hem_end = min((side.start, side.end), key=lambda p, way=way: (p - Point(0, 0)).dot(way))  # type: ignore[misc]  # a default binds the loop's value
        levels[name] = (places[name] - hem_end).dot(way)
    assert levels["front"] == pytest.approx(levels["back"], abs=1.0)
    assert math.isfinite(places["sleeve"].y)


@pytest.mark.slow
def test_stripes_meet_in_the_same_places_on_every_run() -> None:
    """However Python's run orders its sets, a top with panels has the same matched places in the same order."""
    script = (
        "from tests.lay.lays import example; from tapeline.lay import matches; print(matches(example('panelled-top')))"
    )
    found = {
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": f"{ROOT / 'src'}{os.pathsep}{ROOT}"},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(found) == 1
