"""`tapeline read`: pieces of another program listed, drawn and counted; problems told, nothing half written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, tapeline
from tests.received.theirs import box, typed

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


def test_what_was_cut_is_read_and_drawn(tmp_path: Path) -> None:
    """The file that `cut` writes is listed, given as JSON, and drawn."""
    assert tapeline("cut", EXAMPLES / "tee.toml", "--as", "exchange", cwd=tmp_path).code == 0
    done = tapeline("read", "tee.dxf", "--picture", "tee.svg", cwd=tmp_path)
    assert (done.code, done.err) == (0, "")
    assert "tee.dxf: 4 pieces in 1 size: Marit." in done.out
    assert (tmp_path / "tee.svg").read_text(encoding="utf-8").count('class="cut-line"') == 4
    data = json.loads(tapeline("read", "tee.dxf", "--json", cwd=tmp_path).out)
    assert [piece["name"] for piece in data["pieces"]] == ["Back", "Front", "Sleeve", "Neckband"]


def test_what_is_left_out_is_named_and_what_is_wrong_ends_with_1(tmp_path: Path) -> None:
    """A line on a strange layer stands in the list; an open outline is an error beside the piece that was read."""
    strange = "LINE 8 FRILLS 10 1 20 1 11 9 21 9"
    (tmp_path / "theirs.dxf").write_bytes(typed(box(0, 0, 300), strange, "LINE 8 1 10 500 20 0 11 600 21 0"))
    done = tapeline("read", "theirs.dxf", cwd=tmp_path)
    assert done.code == 1
    assert "FRILLS" in done.out
    assert "[received-open]" in done.err


def test_what_is_no_dxf_is_refused(tmp_path: Path) -> None:
    """Empty and huge files, other formats, a folder, no file: each ends with 2, says why, and draws nothing."""
    (tmp_path / "empty.dxf").touch()
    with (tmp_path / "huge.dxf").open("wb") as file:
        file.truncate(50_000_000)
    (tmp_path / "print.dxf").write_bytes(b"%PDF-1.6")
    for name, code in (
        ("empty.dxf", "received-empty"),
        ("huge.dxf", "received-too-large"),
        ("print.dxf", "received-not-dxf"),
        (".", "received-no-file"),
        ("none.dxf", "received-no-file"),
    ):
        done = tapeline("read", name, "--picture", "picture.svg", cwd=tmp_path)
        assert done.code == 2
        assert f"[{code}]" in done.err
    assert not (tmp_path / "picture.svg").exists()
