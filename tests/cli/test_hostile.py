"""Names and values that were meant to do harm, or that a spreadsheet made."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tapeline.docket import docket_from_text, read_docket
from tapeline.problems import InputError
from tests.cli.process import MARIT, tapeline

LONG = "9" * 6000


@pytest.mark.slow
@pytest.mark.parametrize("name", [b"esc\x1b[31m.toml", b"two\nlines.toml", b"latin-1 \xe9.toml"])
def test_a_file_name_steers_no_terminal_and_spoils_no_file(name: bytes, tmp_path: Path) -> None:
    """The docket's name is written on the pieces and told of: signs that are no text are replaced in both."""
    path = tmp_path / os.fsdecode(name)
    path.write_text(MARIT, encoding="utf-8")
    assert read_docket(path).name.isprintable()
    done = tapeline("make", path, "--out", "out", cwd=tmp_path)
    assert done.code == 0
    assert not any(ord(sign) < 32 and sign != "\n" for sign in done.out + done.err)
    for made in (tmp_path / "out").iterdir():
        if made.suffix != ".pdf":
            assert not any(ord(sign) < 32 and sign != "\n" for sign in made.read_text(encoding="utf-8"))


def test_a_cell_steers_no_terminal(tmp_path: Path) -> None:
    """The name in a list of orders is shown on one line, without what would colour the terminal."""
    (tmp_path / "o.csv").write_text('name,figure,size\n"a\x1b[31m\nb",woman,88\n', encoding="utf-8")
    done = tapeline("batch", "o.csv", cwd=tmp_path)
    assert done.code == 1
    assert "\x1b" not in done.out
    assert "a?[31m b" in done.out


@pytest.mark.parametrize("typed", [f'"{LONG}"', f'"1/{LONG}"', f'"{LONG} cm"', f'"1.{LONG}"'])
def test_a_number_without_end_is_refused_as_any_other(typed: str) -> None:
    """Python counts no further than some thousands of digits: that is the docket's fault, not ours."""
    text = MARIT.replace("waist = 77", f"waist = {typed}", 1)
    with pytest.raises(InputError) as error:
        docket_from_text(text)
    assert error.value.problems[0].code == "length-not-understood"
    assert "far too long" in error.value.problems[0].says
    assert len(str(error.value)) < 1000


@pytest.mark.slow
def test_a_new_docket_is_always_one(tmp_path: Path) -> None:
    """A name that cannot stand in it is refused, with or without a size."""
    for more in ((), ("--size", "88")):
        done = tapeline("new", "a.toml", "--name", "x\x1b[31m", *more, cwd=tmp_path)
        assert done.code == 2
        assert "U+001B" in done.err
        assert list(tmp_path.iterdir()) == []


def test_the_sign_that_a_piece_cannot_show_is_named() -> None:
    """A joiner inside a picture is not seen by the one who typed it."""
    with pytest.raises(InputError) as error:
        docket_from_text('[wearer]\nname = "A\u200db"\nfigure = "woman"\nsize = "88"\n')
    assert "U+200D" in error.value.problems[0].says


def test_lines_for_a_file_are_written_without_being_asked_for_twice(tmp_path: Path) -> None:
    """`--out` alone writes the JSON lines; it was passed over before."""
    (tmp_path / "o.csv").write_text("name,figure,size\nMarit,woman,88\n", encoding="utf-8")
    done = tapeline("batch", "o.csv", "--out", "o.jsonl", cwd=tmp_path)
    assert done.code == 0
    assert json.loads((tmp_path / "o.jsonl").read_text(encoding="utf-8"))["name"] == "Marit"


def test_an_allowance_for_nothing_is_told_before_the_pieces(tmp_path: Path) -> None:
    """At its line of the docket, and with no half of a result above it."""
    text = MARIT.replace("allowance = 1", 'allowance = { "front.nothing" = 1 }', 1)
    (tmp_path / "a.toml").write_text(text, encoding="utf-8")
    done = tapeline("draft", "a.toml", cwd=tmp_path)
    assert (done.code, done.out) == (2, "")
    assert "in a.toml, line" in done.err


@pytest.mark.slow
def test_a_docket_that_may_not_be_read_is_a_docket_all_the_same(tmp_path: Path) -> None:
    """The words are those of the docket's reader, whatever stands in the way."""
    (tmp_path / "loop.toml").symlink_to("loop.toml")
    for command in ("draft", "measure", "batch"):
        done = tapeline(command, "loop.toml", cwd=tmp_path)
        assert done.code == 2
        assert "[docket-unreadable]" in done.err


@pytest.mark.slow
@pytest.mark.parametrize("seconds", ["²", "-x", "9" * 30])
def test_a_date_that_is_none_is_told(seconds: str, tmp_path: Path) -> None:
    """SOURCE_DATE_EPOCH is input as any other."""
    (tmp_path / "a.toml").write_text(MARIT, encoding="utf-8")
    done = tapeline("print", "a.toml", cwd=tmp_path, env={"SOURCE_DATE_EPOCH": seconds})
    assert done.code == 2
    assert "SOURCE_DATE_EPOCH" in done.err
    assert [path.name for path in tmp_path.iterdir()] == ["a.toml"]
