"""`tapeline size-run`: sizes from three places, files named as asked, never half written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, MARIT, tapeline

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


def test_chart_and_steps_are_shown_and_nothing_is_written(tmp_path: Path) -> None:
    """Without --as the command only tells: the chart, what is uneven and why."""
    done = tapeline("size-run", EXAMPLES / "tee.toml", "--sizes", "96-110", "--points", cwd=tmp_path)
    assert done.code == 0
    assert "Tee in 4 sizes: 96, 100, 104, 110." in done.out
    assert "Chest, round" in done.out
    assert "the tape bust steps +6.00, usually +4.00" in " ".join(done.out.split())
    assert "15.0 / 0.0" in done.out
    assert list(tmp_path.iterdir()) == []


def test_each_kind_of_file_has_its_name(tmp_path: Path) -> None:
    """Files are named after the docket, in the folder asked for; again they are written over."""
    (tmp_path / "out").mkdir()
    kinds = ("print", "drawing", "projection", "exchange", "report", "data", "chart", "grade")
    words = [word for kind in kinds for word in ("--as", kind)]
    for _ in range(2):
        done = tapeline("size-run", EXAMPLES / "tee.toml", "--sizes", "S,M", *words, "--out", "out", cwd=tmp_path)
        assert done.code == 0, done.err
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert {"tee-sizes.pdf", "tee-sizes-projection.pdf", "tee-sizes.svg", "tee-sizes.dxf"} <= names
    assert {"tee-sizes.html", "tee-sizes.json", "tee-sizes-chart.csv", "tee-sizes-grade.csv"} <= names
    assert len(names) == len(kinds)
    data = json.loads((tmp_path / "out" / "tee-sizes.json").read_text(encoding="utf-8"))
    assert [size["label"] for size in data["sizes"]] == ["S", "M"]


def test_sizes_come_from_a_table_or_from_wearers(tmp_path: Path) -> None:
    """A table of one's own and other dockets' wearers are drafted by this docket's choices."""
    (tmp_path / "ours.csv").write_text("size,bust,waist,hip\n38,88,72,96\n40,92,76,100\n", encoding="utf-8")
    done = tapeline("size-run", EXAMPLES / "tee.toml", "--table", "ours.csv", cwd=tmp_path)
    assert done.code == 0
    assert "Tee in 2 sizes: 38, 40." in done.out
    assert "survey's mean" in " ".join(done.err.split())
    words = [word for name in ("tee", "sweatshirt") for word in ("--wearers", EXAMPLES / f"{name}.toml")]
    people = tapeline("size-run", EXAMPLES / "tee.toml", *words, cwd=tmp_path)
    assert people.code == 0
    assert "Tee in 2 sizes: Marit," in people.out


def test_one_size_that_cannot_be_made(tmp_path: Path) -> None:
    """It is named and nothing is written; with --go-on the others are, and what was not made is said, with code 1."""
    words = ("size-run", EXAMPLES / "gusset-top.toml", "--sizes", "M-XL", "--as", "chart")
    done = tapeline(*words, cwd=tmp_path)
    assert done.code == 2
    assert "size XL:" in done.err
    assert "[cut-in-one-tight]" in done.err
    assert list(tmp_path.iterdir()) == []
    done = tapeline(*words, "--go-on", cwd=tmp_path)
    assert done.code == 1
    assert "not made: XL; made: M, L" in done.err
    chart = (tmp_path / "gusset-top-sizes-chart.csv").read_text(encoding="utf-8")
    assert chart.startswith("measure,unit,M,L\n")


def test_what_cannot_be_asked_for_is_told(tmp_path: Path) -> None:
    """Sizes from nowhere or from two places, options of another kind, a file of somebody else's: nothing is written."""
    (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
    (tmp_path / "marit-sizes.svg").write_text("my own words", encoding="utf-8")
    for words, code in (
        ((), "command-line"),
        (("--sizes", "S", "--table", "ours.csv"), "command-line"),
        (("--sizes", "S", "--paper", "A0"), "command-line"),
        (("--sizes", "85"), "size-unknown"),
        (("--table", "none.csv"), "docket-missing"),
        (("--sizes", "S-M", "--as", "print", "--paper", "A9"), "paper-unknown"),
        (("--sizes", "S-M", "--as", "print", "--paper", "roll 250 mm", "--as", "chart"), "roll-too-narrow"),
        (("--sizes", "S-M", "--as", "chart", "--as", "drawing"), "would-overwrite"),
        (("--sizes", "76-152", "--as", "chart", "--as", "print"), "run-too-long"),
    ):
        done = tapeline("size-run", "marit.toml", *words, cwd=tmp_path)
        assert done.code == 2, words
        assert f"[{code}]" in done.err
    assert {path.name for path in tmp_path.iterdir()} == {"marit.toml", "marit-sizes.svg"}
    assert (tmp_path / "marit-sizes.svg").read_text(encoding="utf-8") == "my own words"
