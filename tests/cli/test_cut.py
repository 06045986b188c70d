"""`tapeline cut`: files for machines, named as asked, never half written."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, MARIT, tapeline

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


def test_each_kind_has_its_name(tmp_path: Path) -> None:
    """Without --out the files are named after the docket; again they are written over."""
    for _ in range(2):
        for kind in ("exchange", "curves", "plotter"):
            assert tapeline("cut", EXAMPLES / "tee.toml", "--as", kind, cwd=tmp_path).code == 0
    assert {path.name for path in tmp_path.iterdir()} == {"tee.dxf", "tee-curves.dxf", "tee.plt"}


def test_each_cloth_has_a_cutters_drawing(tmp_path: Path) -> None:
    """Shell and rib are cut apart; the caution is said."""
    done = tapeline("cut", EXAMPLES / "tee.toml", "--as", "cutter", cwd=tmp_path)
    assert done.code == 0
    assert "[cutter-safety]" in done.err
    assert {path.name for path in tmp_path.iterdir()} == {"tee-cutter-shell.svg", "tee-cutter-rib.svg"}


def test_frames_are_files_of_their_own(tmp_path: Path) -> None:
    """A narrow plotter gets a file for each part of the roll."""
    done = tapeline(
        "cut", EXAMPLES / "t-shirt-dress.toml", "--as", "plotter", "--roll", "roll 500 mm", "--narrow", cwd=tmp_path
    )
    assert done.code == 0
    names = sorted(path.name for path in tmp_path.iterdir())
    assert len(names) > 1
    assert names == [f"t-shirt-dress-{n}.plt" for n in range(1, len(names) + 1)]


def test_what_cannot_be_asked_for_is_told(tmp_path: Path) -> None:
    """Options of another kind, a sheet for a plotter, a file of somebody else's: nothing is written."""
    (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
    (tmp_path / "mine.dxf").write_text("my own words", encoding="utf-8")
    for words, code in (
        ((), "command-line"),
        (("--as", "curves", "--release", "R12"), "command-line"),
        (("--as", "exchange", "--narrow"), "command-line"),
        (("--as", "plotter", "--roll", "A4"), "not-a-roll"),
        (("--as", "plotter", "--roll", "roll 250 mm"), "roll-too-narrow"),
        (("--as", "exchange", "--out", "mine.dxf"), "would-overwrite"),
        (("--as", "plotter", "--narrow", "--hpgl2"), "command-line"),
        (("--as", "exchange", "--bed", "900"), "command-line"),
        (("--as", "cutter", "--bed", "100"), "cutter-bed"),
    ):
        done = tapeline("cut", "marit.toml", *words, cwd=tmp_path)
        assert done.code == 2
        assert f"[{code}]" in done.err
    assert {path.name for path in tmp_path.iterdir()} == {"marit.toml", "mine.dxf"}
    assert (tmp_path / "mine.dxf").read_text(encoding="utf-8") == "my own words"


def test_a_projection_is_a_print_of_one_page(tmp_path: Path) -> None:
    """It has a name of its own; its options stand alone."""
    assert (
        tapeline("print", EXAMPLES / "tee.toml", "--projector", "--inverted", "--wide", "1200", cwd=tmp_path).code == 0
    )
    assert (tmp_path / "tee-projection.pdf").read_bytes().startswith(b"%PDF")
    for words, code in (
        (("--inverted",), "command-line"),
        (("--projector", "--paper", "A4"), "command-line"),
        (("--projector", "--line", "0.1"), "line-width"),
        (("--projector", "--wide", "200"), "roll-too-narrow"),
        (("--projector", "--wide", "nan"), "paper-unknown"),
    ):
        done = tapeline("print", EXAMPLES / "tee.toml", *words, "--out", "no.pdf", cwd=tmp_path)
        assert done.code == 2
        assert f"[{code}]" in done.err
    assert not (tmp_path / "no.pdf").exists()
