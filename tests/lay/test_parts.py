"""Rows of small lays: the shortest row is found, whatever the lengths."""

from __future__ import annotations

from itertools import combinations_with_replacement

from hypothesis import given
from hypothesis import strategies as st

from tapeline.geometry import Point
from tapeline.lay import LayCloth, LayPiece, LayPlan, faults
from tapeline.lay.drop import dropped
from tapeline.lay.parts import in_a_row, part, row_of


@given(
    st.dictionaries(st.integers(1, 5), st.floats(10, 1000), min_size=1),
    st.integers(1, 9),
    st.floats(0, 5),
    st.booleans(),
)
def test_the_shortest_row_is_found(lengths: dict[int, float], whole: int, gap: float, odd_once: bool) -> None:
    """As short as the shortest of all rows, tried one by one; none where there is none."""
    rows = [
        row
        for count in range(1, whole + 1)
        for row in combinations_with_replacement(lengths, count)
        if sum(row) == whole and (not odd_once or sum(size % 2 for size in row) <= 1)
    ]
    row = row_of(lengths, whole, gap, odd_once=odd_once)
    if not rows:
        assert row == ()
        return

    def length(sizes: tuple[int, ...]) -> float:
        return sum(lengths[size] for size in sizes) + gap * (len(sizes) - 1)

    assert sum(row) == whole
    assert length(row) <= min(map(length, rows)) + 1e-9


def test_lays_in_a_row_are_one_sound_lay() -> None:
    """Two and one of each of two garments, in the numbers 1:2; every copy has its own garment."""
    square = (Point(0, 0), Point(100, 0), Point(100, 80), Point(0, 80))
    pieces = [LayPiece("cuff", "marit", square, upright=2, garments=3), LayPiece("cuff", "bo", square, garments=6)]
    cloth = LayCloth(width_mm=300, gap_mm=5, repeat_along_mm=30)
    made: dict[int, LayPlan] = {}
    for size in (1, 2):
        plan = dropped(part(pieces, size), cloth)
        assert plan is not None
        made[size] = plan
    row = in_a_row(made, (2, 1), pieces, cloth)
    assert faults(row) == []
    assert {(p.piece, p.garment) for p in row.placements} == {
        *(("marit/cuff", n) for n in (1, 2, 3)),
        *(("bo/cuff", n) for n in (1, 2, 3, 4, 5, 6)),
    }
