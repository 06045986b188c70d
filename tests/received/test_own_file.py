"""Our own exchange file read back gives the model: within 0.05 mm, by shapely's distances."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from shapely import LineString, Polygon

from tapeline.docket import read_docket
from tapeline.export import Release, exchange
from tapeline.export.drawing import draw
from tapeline.finish import Finished, FinishedPiece
from tapeline.geometry import Path as Line
from tapeline.project import draft, finished
from tapeline.received import ReceivedPiece, received
from tapeline.units import Unit
from tests.export.test_exchange import EXAMPLES, far, shape

WITHIN_MM = 0.05


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(path, id=path.stem, marks=[] if path.stem == "tee" else pytest.mark.slow) for path in EXAMPLES
    ],
)
def garment(request: pytest.FixtureRequest) -> Finished:
    """Every example, finished."""
    path: Path = request.param
    return finished(draft(read_docket(path)))


def ring(path: Line) -> Polygon:
    """A closed path as it was read."""
    return Polygon([(p.x, p.y) for p in path.knots])


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("release", Release)
def test_every_piece_comes_back(garment: Finished, release: Release, unit: Unit) -> None:
    """Names, quantities, outlines, sew lines, grain, fold, notches, marks: all are those of the garment."""
    file = received(exchange([garment], unit, release).data, "ours.dxf")
    assert file.problems == ()
    assert file.not_understood == ()
    assert (file.unit, file.style) == (unit, garment.title.style)
    assert len(file.pieces) == len(garment.pieces)
    for back, piece in zip(file.pieces, garment.pieces, strict=True):
        cut = piece.piece.cut
        assert (back.name, back.size) == (piece.piece.title, garment.title.wearer)
        assert (back.quantity, back.mirrored, back.material) == (cut.quantity, cut.mirrored, cut.cloth)
        assert far(ring(back.outline).exterior, shape(piece.cut_line, closed=True)) < WITHIN_MM
        assert back.area_mm2 == pytest.approx(ring(back.outline).area, rel=1e-9)
        lines_are_those(back, piece)


def lines_are_those(back: ReceivedPiece, piece: FinishedPiece) -> None:
    """What lies on a piece beside its outline."""
    grain = piece.piece.grain
    assert back.grain is not None
    assert back.grain.start.distance_to(grain.start) < WITHIN_MM
    assert back.grain.end.distance_to(grain.end) < WITHIN_MM
    folds = [edge.path for edge in piece.piece.edges if edge.fold]
    assert (back.fold is not None) == bool(folds)
    if back.fold is not None:
        assert back.fold.start.distance_to(folds[0].start) < WITHIN_MM
        assert back.fold.end.distance_to(folds[0].end) < WITHIN_MM
        assert ring(back.whole).area == pytest.approx(2 * ring(back.outline).area, rel=1e-3)
    sewn = sum(edge.path.length for edge in piece.piece.edges if not edge.fold)
    assert sum(path.length for path in back.sew_lines) == pytest.approx(sewn, abs=WITHIN_MM)
    ticks = [line.start for tick in piece.ticks for line in tick.lines]
    assert len(back.notches) == len(ticks)
    assert all(notch.at.distance_to(tick) < WITHIN_MM for notch, tick in zip(back.notches, ticks, strict=True))
    marks = [mark for mark in piece.piece.marks if "eyelet" not in mark.name]
    assert len(back.inside) == len(marks)
    for path, mark in zip(back.inside, marks, strict=True):
        assert far(LineString([(p.x, p.y) for p in path.knots]), shape(mark.path)) < WITHIN_MM
    assert len(back.drills) == len(piece.piece.marks) - len(marks)
    assert {label.text for label in draw(piece).labels} == set(back.texts) - {
        text for text in back.texts if text.startswith(("cut half of them", "half a piece"))
    }


def test_several_sizes_stay_apart(garment: Finished) -> None:
    """Two wearers in one file: each piece knows whose it is."""
    other = replace(garment, title=replace(garment.title, wearer="another one"))
    file = received(exchange([garment, other]).data, "ours.dxf")
    assert file.sizes == (garment.title.wearer, "another one")
    assert [piece.size for piece in file.pieces].count("another one") == len(garment.pieces)
