"""Ticks, words and the cutting list of the invented top."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tapeline.finish import FinishChoices, Finished, finish
from tapeline.finish.cut_line import cut_line
from tapeline.finish.notches import ticks
from tapeline.geometry import Line
from tapeline.pattern import Cut, Notch, NotchKind
from tests.finish.shapes import TITLE, straight, top


@pytest.fixture(scope="module")
def finished() -> Finished:
    """The invented top with the usual widths."""
    return finish(top(), FinishChoices(by_name={"neckline": 6}), TITLE)


def test_every_notch_becomes_ticks_on_the_cut_line(finished: Finished) -> None:
    """One for the front, two for the back, one at the crown; each starts on the cut line, square to the seam line."""
    counts = {NotchKind.SINGLE: 1, NotchKind.DOUBLE: 2, NotchKind.CROWN: 1}
    seen = set()
    for piece in finished.pieces:
        assert len(piece.ticks) == len(piece.piece.notches)
        for tick in piece.ticks:
            seen.add(tick.kind)
            assert len(tick.lines) == counts[tick.kind]
            path = piece.piece.edge(tick.edge).path
            for line in tick.lines:
                assert piece.cut_line.distance_to(line.start) < 1e-6
                # At most half the allowance and 3 to 6 mm (common practice in the trade, no source).
                assert line.length == pytest.approx(5, abs=0.01)
                across = path.direction_at(path.length_to(line.end)).dot(line.direction(0))
                assert abs(across) < 1e-6
                assert path.distance_to(line.end) == pytest.approx(10 - line.length, abs=0.02)
    assert seen == set(counts)


def test_a_double_notch_lies_evenly_about_its_place(finished: Finished) -> None:
    """Its two ticks stand 6 mm apart along the seam line, 3 mm to either side of the matched place."""
    back = next(piece for piece in finished.pieces if piece.piece.name == "back")
    (tick,) = back.ticks
    path = back.piece.edge("armhole").path
    places = [path.length_to(line.end) for line in tick.lines]
    assert places == pytest.approx([117, 123], abs=0.01)


def test_a_tick_never_comes_near_the_stitches() -> None:
    """In an allowance of 6 mm a tick is 3 mm deep, whatever depth was asked for."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), notches=[Notch("a", 50)])
    widths = dict.fromkeys("abcd", 6.0)
    (tick,) = ticks(piece, cut_line(piece, widths), widths, 5)
    (line,) = tick.lines
    assert (line.start.x, line.start.y, line.end.x, line.end.y) == pytest.approx((-6, 50, -3, 50))


def test_without_allowance_a_tick_is_cut_into_the_piece() -> None:
    """On a bare edge the tick starts on the seam line and goes 2 mm in."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), notches=[Notch("a", 50)])
    widths = {"a": 0.0, "b": 6.0, "c": 6.0, "d": 6.0}
    (tick,) = ticks(piece, cut_line(piece, widths), widths, 5)
    (line,) = tick.lines
    assert (line.start.x, line.start.y, line.end.x, line.end.y) == pytest.approx((0, 50, 2, 50))


def test_a_double_notch_at_a_corner_slides_onto_its_edge() -> None:
    """Both ticks stay on the edge, 6 mm apart."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), notches=[Notch("a", 100, NotchKind.DOUBLE)])
    widths = dict.fromkeys("abcd", 10.0)
    (tick,) = ticks(piece, cut_line(piece, widths), widths, 5)
    assert [line.start.y for line in tick.lines] == pytest.approx([94, 100])


def test_a_notch_off_its_edge_is_a_fault_of_the_draft() -> None:
    """It is not moved onto the edge quietly."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), notches=[Notch("a", 101)])
    widths = dict.fromkeys("abcd", 10.0)
    with pytest.raises(ValueError, match=r"101.00 mm along shape.a, which is 100.00 mm long"):
        ticks(piece, cut_line(piece, widths), widths, 5)


def test_the_words_name_piece_wearer_quantity_docket_and_date(finished: Finished) -> None:
    """Everything that a cutter has to know stands on the piece."""
    front = next(piece for piece in finished.pieces if piece.piece.name == "front")
    assert front.words == (
        "Front",
        "tee, Marit",
        "cut 1 in shell, on the fold",
        "tee.toml, 2024-05-01",
        "Tapeline 0.1.0",
    )


def test_allowances_are_told_in_the_order_of_the_edges(finished: Finished) -> None:
    """Each edge of each piece has its width beside it."""
    for piece in finished.pieces:
        assert [name for name, _ in piece.allowances] == [edge.name for edge in piece.piece.edges]
    assert dict(finished.pieces[0].allowances)["neckline"] == 6


def test_the_cutting_list_has_all_pieces_by_cloth(finished: Finished) -> None:
    """Shell first, as the first piece is; then rib."""
    rows = [(row.piece, row.cloth, row.quantity, row.on_fold, row.mirrored) for row in finished.cutting_list]
    assert rows == [
        ("back", "shell", 1, True, False),
        ("front", "shell", 1, True, False),
        ("sleeve", "shell", 2, False, True),
        ("neckband", "rib", 1, False, False),
    ]


def test_a_piece_on_the_fold_is_as_wide_as_it_is_unfolded() -> None:
    """60 mm and an allowance of 10, twice; 100 mm, an allowance of 10 and a hem of 25 along the grain."""
    piece = straight((0, 0), (0, 100), (60, 100), (60, 0), folds="a", hems="d")
    garment = type(top())("tee", (piece,), (), (), (), (), ())
    (row,) = finish(garment, FinishChoices(), TITLE).cutting_list
    assert (row.width_mm, row.length_mm) == pytest.approx((140, 135))


def test_width_is_across_the_grain_however_the_piece_lies() -> None:
    """A strip drawn aslant, its grain along it, is as wide as the strip."""
    turned = math.radians(30)
    corners = [(0.0, 0.0), (0.0, 100.0), (40.0, 100.0), (40.0, 0.0)]
    aslant = [
        (x * math.cos(turned) - y * math.sin(turned), x * math.sin(turned) + y * math.cos(turned)) for x, y in corners
    ]
    piece = straight(*aslant, cut=Cut(1, "rib"))
    along, *_ = piece.edges[0].path.segments
    assert isinstance(along, Line)
    along_grain = replace(piece, grain=along)
    garment = type(top())("tee", (along_grain,), (), (), (), (), ())
    (row,) = finish(garment, FinishChoices(allowance_mm=5), TITLE).cutting_list
    assert (row.width_mm, row.length_mm) == pytest.approx((50, 110))
