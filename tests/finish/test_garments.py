"""Drafted garments of random wearers, finished: what a pattern maker would check with ruler and scissors."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapeline.draft import Draft
from tapeline.finish import FinishChoices, FinishedPiece, finish
from tapeline.geometry import area, crosses_itself
from tapeline.measures import Figure, Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tests.finish.polygons import polygon
from tests.finish.shapes import TITLE
from tests.finish.test_after_sewing import CLOSE_MM, ends_of_allowance, folded_over
from tests.wearers import random_wearers, wearers

USUAL = (
    FinishChoices(),
    # Common practice in the trade, no source: sewn at home; overlocked with a narrow neckline.
    FinishChoices(allowance_mm=15, hem_mm=40),
    FinishChoices(allowance_mm=6, by_name={"neckline": 5}, hem_mm=20),
)
RUNS_ON = (
    ("back", "shoulder", "neckline"),
    ("front", "shoulder", "armhole"),
    ("back", "side", "armhole"),
    ("front", "side", "armhole"),
    ("sleeve", "underarm_front", "cap_front"),
    ("sleeve", "underarm_back", "cap_back"),
    ("back_sleeve", "overarm", "neckline"),
    ("back", "overarm", "neckline"),
    ("front_sleeve", "underarm", "raglan"),
    ("back", "side", "raglan"),
)
"""Piece, seam, and the line that crosses it; a straight seam or one that is straight near the line."""


@cache
def drafted(wearer: str, style: str, figure: Figure = Figure.WOMAN) -> Garment:
    """A garment of one of the first random wearers."""
    found = next(w for w in random_wearers(figure, 12) if w.name == wearer)
    return drawn_for(found, style)


def drawn_for(wearer: Wearer, style: str) -> Garment:
    """A garment as its style draws it when nothing is chosen."""
    page = STYLES[style]
    return page.page(Draft(wearer, {}), page.choices(), surveyed=True)


def check(piece: FinishedPiece) -> None:
    """One simple clockwise line outside the seam line, each edge at its distance, ticks on it."""
    line = piece.cut_line
    assert line.start == line.end
    assert not crosses_itself(line)
    assert area(line) < 0
    assert polygon(piece.piece.seam_line).difference(polygon(line).buffer(0.02)).area < 1e-6
    for name, allowance in piece.allowances:
        edge = piece.piece.edge(name)
        # Square off the middle: on a strip the neighbour's cut line may be nearer.
        middle = edge.path.at(edge.length / 2) + edge.path.direction_at(edge.length / 2).left * allowance
        assert line.distance_to(middle) < 0.02
    assert len(piece.ticks) == len(piece.piece.notches)
    for tick in piece.ticks:
        assert all(line.distance_to(t.start) < 1e-6 for t in tick.lines)


@pytest.mark.slow
@given(wearers(), st.sampled_from(sorted(STYLES)), st.sampled_from(USUAL))
def test_every_drafted_garment_can_be_finished(wearer: Wearer, style: str, choices: FinishChoices) -> None:
    """With the usual allowances no garment that can be drafted is refused, and every cut line is sound."""
    try:
        garment = drawn_for(wearer, style)
    except InputError:
        assume(False)
        raise
    for piece in finish(garment, choices, TITLE).pieces:
        check(piece)


@pytest.mark.parametrize("style", sorted(STYLES))
@pytest.mark.parametrize("wearer", [w.name for w in random_wearers(Figure.WOMAN, 6)])
def test_pressed_open_a_seam_ends_on_the_line_that_crosses_it(style: str, wearer: str) -> None:
    """The end of the allowance, folded back along the seam at its corner, coincides with the crossing cut line."""
    pieces = {f.piece.name: f for f in finish(drafted(wearer, style), FinishChoices(), TITLE).pieces}
    there = [
        (pieces[piece], seam, line)
        for piece, seam, line in RUNS_ON
        if piece in pieces and {seam, line} <= {edge.name for edge in pieces[piece].piece.edges}
    ]
    assert there
    for found, seam, line in there:
        ends_on_the_line(found, seam, line)


def ends_on_the_line(finished: FinishedPiece, seam: str, line: str) -> None:
    """Press one seam open and look where its allowance ends."""
    path = finished.piece.edge(seam).path
    at_start = path.start.distance_to(finished.piece.edge(line).path.start) < 1e-6 or (
        path.start.distance_to(finished.piece.edge(line).path.end) < 1e-6
    )
    # Fold along the seam's direction at the corner: a side that bends is pressed flat over a bend of no account here.
    near = path.part(0, 0.02) if at_start else path.part(path.length - 0.02, path.length)
    corner = near.start if at_start else near.end
    places = [
        p
        for found in ends_of_allowance(finished.cut_line, near, 10 - 0.03)
        for p in found
        if p.distance_to(corner) < 13 and abs(path.distance_to(p) - 10) > 0.02
    ]
    assert places
    over = folded_over(near)
    assert max(finished.cut_line.distance_to(over.point(p)) for p in places) < CLOSE_MM


@pytest.mark.parametrize("wearer", [w.name for w in random_wearers(Figure.WOMAN, 6)])
def test_on_the_fold_the_unfolded_piece_has_no_point_and_no_step(wearer: str) -> None:
    """The edges beside a fold meet it squarely, each at its allowance from the seam line."""
    folds = 0
    for piece in finish(drafted(wearer, "tee"), FinishChoices(), TITLE).pieces:
        edges, widths = piece.piece.edges, [width for _, width in piece.allowances]
        for k, edge in enumerate(edges):
            if edge.fold:
                folds += 1
                fold = edge.path
                along = (fold.end - fold.start).unit
                knots = [p - fold.start for p in piece.cut_line.knots if abs((p - fold.start).cross(along)) < 1e-6]
                heights = [knot.dot(along) for knot in knots]
                assert min(heights) == pytest.approx(-widths[k - 1], abs=0.1)
                assert max(heights) == pytest.approx(fold.length + widths[(k + 1) % len(edges)], abs=0.1)
    assert folds >= 2
