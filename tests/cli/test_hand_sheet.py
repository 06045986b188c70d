"""`tapeline draft --hand-sheet`: writes one PDF, named as asked; its numbers are those of --steps."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, MARIT, tapeline
from tests.sheets.hand_sheets import text_of

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


@pytest.mark.parametrize("example", ["tee.toml", "block.toml"])
def test_its_numbers_are_those_of_the_steps(example: str, tmp_path: Path) -> None:
    """What each printed step comes to stands in the file, under the same number; one docket is in cm, one in inches."""
    done = tapeline("draft", EXAMPLES / example, "--hand-sheet", "--out", "sheet.pdf", cwd=tmp_path)
    assert done.code == 0
    assert re.search(r"sheet\.pdf: hand sheet, .+, \d+ pages\.", done.out)
    text = text_of((tmp_path / "sheet.pdf").read_bytes())
    printed = tapeline("draft", EXAMPLES / example, "--steps", cwd=tmp_path).out
    steps = re.split(r"^ *(\d+)\. (\S+):", printed, flags=re.MULTILINE)[1:]
    checked = 0
    for number, label, body in zip(steps[::3], steps[1::3], steps[2::3], strict=True):
        result = re.findall(r"= (-?[\d.]+ (?:cm|in))\s", body)
        name = label.rpartition(".")[2].replace("_", "")
        assert re.search(rf"{number}([a-z]+:)?{name}", text), label
        if result and "." not in label:
            value = re.escape(result[-1].replace(" ", ""))
            assert re.search(rf"{number}{name}(-.{{0,200}}?\.)?{value}", text), label
            checked += 1
        elif result:
            assert result[-1].replace(" ", "") in text
    assert checked > 40


def test_a_class_sheet_and_its_name(tmp_path: Path) -> None:
    """Without --out both are named after the docket; again they are written over."""
    (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
    for _ in range(2):
        assert tapeline("draft", "marit.toml", "--hand-sheet", "--scale", "5", cwd=tmp_path).code == 0
        done = tapeline("draft", "marit.toml", "--hand-sheet", "--blank", cwd=tmp_path)
        assert done.code == 0
        assert "Marit" not in done.out
    names = {path.name for path in tmp_path.iterdir()}
    assert names == {"marit.toml", "marit-hand-sheet.pdf", "marit-class-sheet.pdf"}
    assert "Marit" not in text_of((tmp_path / "marit-class-sheet.pdf").read_bytes())


def test_what_cannot_be_asked_for_is_told(tmp_path: Path) -> None:
    """A scale without the sheet, two products at once, a scale that does not fit: nothing is written."""
    for words, code in (
        (("--scale", "4"), "command-line"),
        (("--blank",), "command-line"),
        (("--hand-sheet", "--steps"), "command-line"),
        (("--hand-sheet", "--scale", "1"), "drawing-too-large"),
        (("--hand-sheet", "--scale", "0"), "command-line"),
    ):
        done = tapeline("draft", EXAMPLES / "tee.toml", *words, cwd=tmp_path)
        assert (done.code, done.out) == (2, "")
        assert f"[{code}]" in " ".join(done.err.split())
    assert not list(tmp_path.iterdir())
