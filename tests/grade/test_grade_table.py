"""How points move from size to size, against each size drafted alone."""

from __future__ import annotations

import csv
import io

import pytest

from tapeline.grade import Meet
from tapeline.project import draft, grade_csv
from tests.grade.runs import alone, run_of


@pytest.mark.parametrize("meet", list(Meet))
def test_points_lie_where_each_size_drafted_alone_has_them(meet: Meet) -> None:
    """From the point where sizes meet, every point lies as in the draft of a docket with that size written in it."""
    run = run_of("84-92")
    garments = [draft(alone(label)).garment for label in run.labels]
    label = {Meet.CHEST: "front.chest_level", Meet.NECK: "front.nape_level"}[meet]
    graded = [point for point in run.grades(meet) if point.piece == "front" and not point.corner]
    assert len(graded) > 20
    for point in graded:
        for garment, place in zip(garments, point.places, strict=True):
            own = garment.points[f"front.{point.name.replace(' ', '_')}"] - garment.points[label]
            assert (place.x, place.y) == pytest.approx((own.x, own.y), abs=1e-6)


def test_moves_lead_from_size_to_size() -> None:
    """The first place of a point and its moves, added up, are its last place."""
    for point in run_of("84-100").grades():
        x = point.places[0].x + sum(move.x for move in point.moves)
        y = point.places[0].y + sum(move.y for move in point.moves)
        assert (x, y) == pytest.approx((point.places[-1].x, point.places[-1].y), abs=1e-9)


def test_every_corner_of_every_piece_is_there() -> None:
    """Each piece has as many corners in the table as edges, and its sizes meet where they are said to."""
    run = run_of("84-92", "simple-shirt")
    graded = run.grades()
    for piece in run.sizes[0].drafted.garment.pieces:
        corners = [point for point in graded if point.piece == piece.name and point.corner]
        assert len(corners) == len(piece.edges)
        assert len({point.meets for point in corners}) == 1


def test_a_quarter_of_the_bust_step_lies_on_each_underarm() -> None:
    """EN 13402-3 bust sizes step by 4 cm up to 104 and by 6 cm from there (read in a secondary text): 10 and 15 mm."""
    graded = run_of("96-116").grades()
    (underarm,) = [point for point in graded if point.piece == "front" and point.name == "underarm"]
    assert [move.x for move in underarm.moves] == pytest.approx([10, 10, 15, 15], abs=1e-6)
    assert [move.y for move in underarm.moves] == pytest.approx([0, 0, 0, 0], abs=1e-6)


def test_the_file_of_the_table_says_the_same() -> None:
    """Read back as CSV, each row has both moves of each step to a thousandth of a millimetre."""
    run = run_of("84-92")
    rows = list(csv.reader(io.StringIO(grade_csv(run))))
    graded = run.grades()
    assert rows[0][:4] == ["piece", "point", "kind", "sizes meet at"]
    assert rows[0][4:6] == ["84 to 88 to the side", "84 to 88 up"]
    assert len(rows) == 1 + len(graded)
    for row, point in zip(rows[1:], graded, strict=True):
        assert row[:2] == [point.piece, point.name]
        moves = [value for move in point.moves for value in (move.x, move.y)]
        assert [float(cell) for cell in row[4:]] == pytest.approx(moves, abs=6e-4)
