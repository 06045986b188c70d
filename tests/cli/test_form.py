"""`tapeline form`: a stand as picture, solid and data."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, tapeline

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


def test_each_end_names_what_is_written(tmp_path: Path) -> None:
    """Picture, solid and data, each with how its kind begins; in the data every tape that was taken is met."""
    for end, begins in ((".png", b"\x89PNG"), (".glb", b"glTF"), (".json", b"{")):
        done = tapeline("form", EXAMPLES / "tee.toml", "--out", f"stand{end}", cwd=tmp_path)
        assert (done.code, done.err) == (0, "")
        assert (tmp_path / f"stand{end}").read_bytes().startswith(begins)
    data = json.loads((tmp_path / "stand.json").read_text(encoding="utf-8"))
    taken = [tape for tape in data["tapes"].values() if tape["given"]]
    assert len(taken) >= 8
    assert all(abs(tape["read"] - tape["wanted"]) < 0.5 for tape in taken)


def test_a_childs_docket_is_refused_by_name(tmp_path: Path) -> None:
    """Nothing is written."""
    done = tapeline("form", EXAMPLES / "childs-tee.toml", "--out", "stand.png", cwd=tmp_path)
    assert done.code == 2
    assert "[form-child]" in done.err
    assert list(tmp_path.iterdir()) == []


def test_an_end_that_says_nothing_is_refused(tmp_path: Path) -> None:
    """The three ends are named."""
    done = tapeline("form", EXAMPLES / "tee.toml", "--out", "stand.obj", cwd=tmp_path)
    assert done.code == 2
    assert ".png, .glb, .json" in done.err
