"""Files that want to do harm: cut, twisted, huge, nested without end. Each is refused or read, and nothing else."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from tapeline.problems import InputError
from tapeline.received import receive, received
from tapeline.received.pairs import LARGEST_BYTES
from tests.received.theirs import box, data, file, typed

SQUARE = box(0, 0, 300)


@pytest.mark.parametrize(
    ("raw", "code"),
    [
        (b"", "received-empty"),
        (b" \r\n\r\n", "received-empty"),
        (b"0" * (LARGEST_BYTES + 1), "received-too-large"),
        (b"AutoCAD Binary DXF\r\n\x1a\x00\x00\x00SECTION\x00", "received-not-dxf"),
        (b"AC1032\x00\x00\x00", "received-not-dxf"),
        (b"%PDF-1.6\n", "received-not-dxf"),
        (b"<svg/>", "received-not-dxf"),
        (b"IN;SP1;", "received-not-dxf"),
        ("0\nSECTION\n".encode("utf-16"), "received-not-dxf"),
        (b"\x00" * 500, "received-not-dxf"),
        (b"1\nnothing\n", "received-not-dxf"),
        (b"a letter to you\nwith love\n", "received-broken"),
        (b"  0\nSECTION\n  2\nENTITIES\nx\ny\n", "received-broken"),
        (b"  0\nSECTION\n  2\n" + b"A" * 70_000 + b"\n  0\nEOF\n", "received-broken"),
        (b"  0\nEOF\n", "received-not-dxf"),
        (typed(), "received-no-pieces"),
        (typed("LWPOLYLINE 8 1 70 1 10 nan 20 0 10 1 20 1 10 9 20 0"), "received-no-pieces"),
        (typed("LWPOLYLINE 8 1 70 1 10 1e400 20 0 10 1 20 1 10 9 20 0"), "received-no-pieces"),
        (typed(*[box(n * 10, 0, 5) for n in range(2001)]), "received-too-large"),
    ],
    ids=range(19),
)
def test_what_is_no_file_of_pieces_is_refused(raw: bytes, code: str) -> None:
    """Empty, too large, another format, broken, without pieces, with numbers that are none: each has its code."""
    with pytest.raises(InputError) as caught:
        received(raw, "bad.dxf")
    assert code in {problem.code for problem in caught.value.problems}
    assert "Nothing was read" in caught.value.problems[-1].hint or len(caught.value.problems) > 1


def test_a_file_without_pieces_says_what_was_left_out() -> None:
    """A number that is none, and a file that breaks off, are why there is no outline: both are said with it."""
    broken = typed("LWPOLYLINE 8 1 70 1 10 0,5 20 0 10 1 20 1 10 9 20 0")
    with pytest.raises(InputError) as caught:
        received(broken, "bad.dxf")
    said = {problem.code: problem for problem in caught.value.problems}
    assert "'0,5' is no number to draw with" in said["received-not-understood"].says
    assert "drawn as closed lines" in said["received-no-pieces"].hint
    assert "--outline" not in said["received-no-pieces"].hint
    with pytest.raises(InputError) as caught:
        received(typed("LINE 8 CUT 10 0 20 0 11 5 21 5", end=""), "half.dxf")
    said = {problem.code: problem for problem in caught.value.problems}
    assert "received-broken-off" in said
    assert "--outline" in said["received-no-pieces"].hint


def test_places_that_are_no_files_are_refused(tmp_path: Path) -> None:
    """A folder, a name that is not there, a file too large to be opened at all."""
    huge = tmp_path / "huge.dxf"
    with huge.open("wb") as whole:
        whole.truncate(50_000_000)
    for path, code in ((tmp_path, "no-file"), (tmp_path / "none.dxf", "no-file"), (huge, "too-large")):
        with pytest.raises(InputError) as caught:
            receive(path)
        assert caught.value.problems[0].code == f"received-{code}"


def test_a_file_that_breaks_off_says_so() -> None:
    """Pieces that are whole are there, with an error that others may be missing."""
    found = received(typed(SQUARE, box(500, 0, 300), end=""), "cut.dxf")
    assert "received-broken-off" in {problem.code for problem in found.problems}
    assert not found.holds


def test_numbers_that_are_none_cost_only_their_own_thing() -> None:
    """NaN, infinity, words and places beyond all measure are counted; the piece beside them is read."""
    bad = [f"LINE 8 8 10 {value} 20 0 11 1 21 1" for value in ("nan", "inf", "1e99", "1_0", "twelve", "12,5")]
    found = received(typed(SQUARE, *bad), "bad.dxf")
    assert len(found.pieces) == 1
    assert sum(one.count for one in found.not_understood) == len(bad)


def nested(count: int) -> bytes:
    """A block that puts itself down again and again."""
    insert = "  0\nINSERT\n  2\nA\n 10\n0\n 20\n0\n"
    head = "  0\nSECTION\n  2\nBLOCKS\n  0\nBLOCK\n  2\nA\n" + insert * count + "  0\nENDBLK\n  0\nENDSEC\n"
    return typed("INSERT 2 A 10 0 20 0", SQUARE, header=head)


def test_blocks_without_end_come_to_one() -> None:
    """A block inside itself goes eight deep and is named; a thousandfold one is refused."""
    found = received(nested(1), "nested.dxf")
    assert [one.what for one in found.not_understood] == ["INSERT"]
    with pytest.raises(InputError) as caught:
        received(nested(60), "bomb.dxf")
    assert caught.value.problems[0].code == "received-too-large"


def test_thousands_of_layers_make_a_short_report() -> None:
    """Kinds beyond two hundred are counted together."""
    lines = [f"LINE 8 L{n} 10 1 20 1 11 9 21 9" for n in range(3000)]
    found = received(typed(SQUARE, *lines), "layers.dxf")
    assert len(found.not_understood) <= 201
    assert sum(one.count for one in found.not_understood) == 3000
    assert max(len(problem.says) for problem in found.problems) < 3000


def test_splines_that_never_lie_flat_are_given_up() -> None:
    """A spline whose knots do not fit, or that takes too many chords, is named and left out."""
    knots = " ".join(f"40 {k}" for k in (0, 0, 0, *range(2000), 1999, 1999, 1999))
    places = " ".join(f"10 {n * 7919 % 900000} 20 {n * 104729 % 900000}" for n in range(2002))
    found = received(typed(SQUARE, f"SPLINE 8 8 71 3 {knots} {places}", "SPLINE 8 8 71 3 10 0 20 0"), "wild.dxf")
    assert {one.what for one in found.not_understood} == {"SPLINE"}


def test_a_spline_with_too_few_weights_is_left_out() -> None:
    """Weights for some of its control points are not taken for none: the line is named, not drawn as another one."""
    knots = " ".join(f"40 {k}" for k in (0, 0, 0, 0, 1, 1, 1, 1))
    places = "10 0 20 0 10 50 20 90 10 150 20 90 10 200 20 0"
    found = received(typed(SQUARE, f"SPLINE 8 8 71 3 {knots} {places} 41 1 41 2"), "weights.dxf")
    assert [(one.what, one.count) for one in found.not_understood] == [("SPLINE", 1)]
    assert "weights" in found.not_understood[0].why


def test_whatever_happens_to_a_file_it_is_read_or_refused() -> None:
    """Two hundred files with bytes changed, lines lost, doubled or swapped: never any other exception."""
    rng = random.Random(20310502)
    lines = data(file("R12")).splitlines()
    lines = lines[: lines.index(b"TABLES") - 3] + lines[lines.index(b"BLOCKS") - 3 :]
    read = 0
    for _ in range(200):
        hurt = list(lines)
        for _ in range(rng.randint(1, 8)):
            at = rng.randrange(len(hurt))
            match rng.randrange(6):
                case 0:
                    hurt[at] = bytes(rng.randrange(256) for _ in range(rng.randint(0, 12)))
                case 1:
                    del hurt[at : at + 2 * rng.randint(1, 20)]
                case 2:
                    hurt[at:at] = hurt[at : at + 2 * rng.randint(1, 50)]
                case 3:
                    hurt[at] = rng.choice([b"nan", b"-inf", b"1e308", b"", b"-1", b"999999999999", b"INSERT", b"%%999"])
                case 4:
                    hurt = hurt[:at] or [b""]
                case _:
                    other = rng.randrange(len(hurt))
                    hurt[at], hurt[other] = hurt[other], hurt[at]
        try:
            found = received(b"\n".join(hurt), "hurt.dxf")
        except InputError:
            continue
        read += 1
        assert all(abs(p.x) < 1e9 and abs(p.y) < 1e9 for piece in found.pieces for p in piece.outline.knots)
    assert read > 30
