"""Cut lines around outlines by chance: closed, simple, outside, at their distance, of the right area."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.finish.cut_line import cut_line
from tapeline.geometry import area, crosses_itself
from tapeline.pattern import Piece
from tests.finish.polygons import polygon, ring, widened
from tests.finish.shapes import inside_angles, outlines


@given(outlines(), st.lists(st.floats(0, 15), min_size=8, max_size=8))
def test_a_cut_line_is_simple_outside_and_at_its_distance(piece: Piece, widths: list[float]) -> None:
    """With any allowances up to 15 mm: one clockwise outline around the seam line, each edge at its own distance."""
    assume(all(55 < angle < 285 for angle in inside_angles(piece)))
    assert not crosses_itself(piece.seam_line)
    allowances = {edge.name: width for edge, width in zip(piece.edges, widths, strict=False)}
    line = cut_line(piece, allowances)
    assert line.start == line.end
    assert not crosses_itself(line)
    assert area(line) < 0
    assert ring(line).is_simple
    assert polygon(piece.seam_line).difference(polygon(line).buffer(0.02)).area < 1e-6
    for edge in piece.edges:
        middle = edge.path.at(edge.length / 2)
        assert line.distance_to(middle) == pytest.approx(allowances[edge.name], abs=0.02)


@given(outlines(), st.floats(2, 15))
def test_equal_allowances_give_the_parallel_outline(piece: Piece, width: float) -> None:
    """One allowance all round, no slender point: the area is that of the parallel polygon with pointed corners."""
    assume(all(55 < angle < 285 for angle in inside_angles(piece)))
    line = cut_line(piece, {edge.name: width for edge in piece.edges})
    assert -area(line) == pytest.approx(widened(piece.seam_line, width), rel=2e-4)


@given(outlines(), st.floats(2, 15))
def test_no_point_of_the_cut_line_is_a_spike(piece: Piece, width: float) -> None:
    """Nothing of the cut line is further from the seam line than the ends of the widest square cut."""
    line = cut_line(piece, {edge.name: width for edge in piece.edges})
    seam = ring(piece.seam_line)
    assert seam.hausdorff_distance(ring(line)) < math.hypot(2.5, 1) * width + 0.02
