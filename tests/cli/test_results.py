"""What the commands print and write: the numbers of the model, calm at 80 columns, never over another's file."""

from __future__ import annotations

import json
import re
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from tapeline.docket import read_docket
from tapeline.pattern import StepKind
from tapeline.project import Drafted, draft, explain, explainable
from tests.cli.process import EXAMPLES, MARIT, tapeline

pytestmark = pytest.mark.slow
"""Each starts the command several times."""


@pytest.fixture
def marit(tmp_path: Path) -> Path:
    """A docket that drafts."""
    path = tmp_path / "marit.toml"
    path.write_text(MARIT, encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def drafted() -> Drafted:
    """The same garment, drafted here."""
    return draft(read_docket(EXAMPLES / "tee.toml"))


def files(folder: Path) -> set[str]:
    """Names of the files in a folder."""
    return {path.name for path in folder.iterdir()}


@pytest.mark.parametrize("example", ["tee.toml", "block.toml"])
@pytest.mark.parametrize("command", ["measure", "draft", "true", "explain"])
def test_the_examples_read_well_at_80_columns(command: str, example: str, tmp_path: Path) -> None:
    """No line is longer than the window, none has a colour that nobody asked for, and all is in the docket's unit."""
    done = tapeline(command, EXAMPLES / example, cwd=tmp_path)
    assert done.code == 0
    lines = (done.out + done.err).splitlines()
    assert max(map(len, lines)) <= 80
    assert "\x1b" not in done.out + done.err
    assert not any(line != line.rstrip() for line in lines)
    if command != "explain":
        other = r"\d cm\b" if example == "block.toml" else r"\.\d+ in\b"
        assert not re.search(other, done.out)


def test_draft_as_data_is_the_model(marit: Path, drafted: Drafted) -> None:
    """One object, with every point where it was drafted."""
    done = tapeline("draft", marit, "--json", cwd=marit.parent)
    made = json.loads(done.out)
    assert (done.code, done.err) == (0, "")
    points = drafted.garment.points
    assert made["points"].keys() == points.keys()
    for label, (x, y) in made["points"].items():
        assert (x, y) == pytest.approx((points[label].x, points[label].y), abs=1e-3)
    assert made["docket"]["wearer"]["name"] == "Marit"
    assert set(made["pieces"]) == {"back", "front", "sleeve", "neckband"}


def test_steps_are_all_there_in_order(marit: Path, drafted: Drafted) -> None:
    """Numbered from 1, each with its reason, so that they can be drawn along."""
    done = tapeline("draft", marit, "--steps", cwd=marit.parent)
    numbered = re.findall(r"^ *(\d+)\. (\S+):", done.out, flags=re.MULTILINE)
    steps = [step for step in drafted.garment.steps if step.kind is not StepKind.SECTION]
    assert numbered == [(str(n), step.label) for n, step in enumerate(steps, start=1)]
    text = " ".join(done.out.split())
    assert all(" ".join(step.how_text().split()) in text for step in steps)


def test_true_as_data_is_what_was_measured(marit: Path, drafted: Drafted) -> None:
    """Seams, joins, squares, girths, opening."""
    made = json.loads(tapeline("true", marit, "--json", cwd=marit.parent).out)
    assert made["holds"] is True
    for seam, walk in zip(made["seams"], drafted.truing.walks, strict=True):
        assert (seam["name"], seam["a_mm"]) == (walk.seam.name, pytest.approx(walk.a_mm, abs=1e-6))
        assert abs(seam["off_mm"]) < 0.1
    assert made["girths"]["chest"]["ease_mm"] == pytest.approx(80, abs=0.1)


def test_measure_as_data_and_as_text(marit: Path) -> None:
    """The tapes as they were read, what the others suggest, and what is estimated with its spread."""
    made = json.loads(tapeline("measure", marit, "--json", cwd=marit.parent).out)
    assert made["tapes"]["hip"]["mm"] == 1010
    assert made["estimates"]["wrist"]["sd_mm"] > 1
    assert made["estimates"]["shoulder_slope"].keys() == {"radians", "sd_radians"}
    text = tapeline("measure", marit, cwd=marit.parent).out
    assert re.search(r"^  hip +101 cm +[\d.]+ to [\d.]+ cm$", text, flags=re.MULTILINE)


@pytest.mark.parametrize("figure", ["woman", "man"])
def test_the_size_table_is_the_standard_wearers(figure: str, tmp_path: Path) -> None:
    """Marked as made from the survey, nobody was measured; a child has none."""
    done = tapeline("measure", "--sizes", "--figure", figure, cwd=tmp_path)
    assert done.code == 0
    assert "nobody was measured" in " ".join(done.out.split())
    data = json.loads(tapeline("measure", "--sizes", "--figure", figure, "--json", cwd=tmp_path).out)
    assert "98" in data["sizes"] if figure == "man" else "88" in data["sizes"]
    assert tapeline("measure", "--sizes", "--figure", "child", cwd=tmp_path).code == 2


def test_explain_tells_formula_numbers_and_movers(marit: Path, drafted: Drafted) -> None:
    """The words are those of the step; the movers are sorted; each label that is listed can be asked about."""
    done = tapeline("explain", marit, "chest_quarter", cwd=marit.parent)
    assert "= 94 / 4 + 2 = 25.5 cm" in " ".join(done.out.split())
    assert re.search(r"^  bust +2\.50$", done.out, flags=re.MULTILINE)
    made = json.loads(tapeline("explain", marit, "back.underarm", "--json", cwd=marit.parent).out)
    strengths = [abs(mover["mm_per_cm"]) for mover in made["movers"]]
    assert strengths == sorted(strengths, reverse=True)
    assert made["says"] == explain(drafted, "back.underarm").says
    listed = json.loads(tapeline("explain", marit, "--json", cwd=marit.parent).out)
    assert list(listed) == explainable(drafted.garment)


def test_make_writes_four_files_and_five_lines(marit: Path) -> None:
    """Print, drawing, data and report; what was made, what to look at, what to try next. Again is the same."""
    done = tapeline("make", marit, "--out", "new/out", cwd=marit.parent)
    out = marit.parent / "new" / "out"
    assert done.code == 0
    assert len(done.out.splitlines()) == 5
    assert files(out) == {"marit.pdf", "marit.svg", "marit.json", "marit.html"}
    assert (out / "marit.pdf").read_bytes().startswith(b"%PDF")
    assert ET.parse(out / "marit.svg").getroot().tag == "{http://www.w3.org/2000/svg}svg"
    assert json.loads((out / "marit.json").read_text("utf-8"))["unit"] == "mm"
    assert "Marit" in (out / "marit.html").read_text("utf-8")
    before = {path: path.read_bytes() for path in out.iterdir()}
    assert tapeline("make", marit, "--out", "new/out", cwd=marit.parent) == done
    assert {path: path.read_bytes() for path in out.iterdir()} == before


def test_print_is_named_after_the_docket(marit: Path) -> None:
    """And may be written over by the next one."""
    for paper, says in (("A4", "sheets, A4"), ("A0", "A0"), ("roll 914 mm", "1 sheet, roll 914 mm")):
        done = tapeline("print", marit, "--paper", paper, cwd=marit.parent)
        assert done.code == 0
        assert says in done.out
    assert files(marit.parent) == {"marit.toml", "marit.pdf"}


@pytest.mark.parametrize("command", [("print", "--out"), ("draft", "--svg")])
def test_nothing_of_anybody_elses_is_written_over(command: tuple[str, str], marit: Path) -> None:
    """Neither the docket itself nor a file of another kind, unless it is asked for by name."""
    name, option = command
    other = marit.parent / "thesis.txt"
    other.write_text("years of work", encoding="utf-8")
    for target in (marit, other):
        before = target.read_bytes()
        done = tapeline(name, marit, option, target, cwd=marit.parent)
        assert (done.code, done.out) == (2, "")
        assert "[would-overwrite]" in done.err
        assert target.read_bytes() == before
    assert tapeline(name, marit, option, other, "--force", cwd=marit.parent).code == 0
    assert tapeline(name, marit, option, marit, "--force", cwd=marit.parent).code == 2
    assert marit.read_text("utf-8") == MARIT


def test_a_folder_that_is_not_there_or_is_a_file_is_told(marit: Path) -> None:
    """Nothing is left behind."""
    (marit.parent / "file").write_text("x", encoding="utf-8")
    for arguments in (
        ("print", marit, "--out", "nowhere/a.pdf"),
        ("print", marit, "--out", "."),
        ("draft", marit, "--svg", "nowhere/a.svg"),
        ("make", marit, "--out", "file"),
        ("make", marit, "--out", "/proc/nowhere"),
        ("new", "nowhere/a.toml"),
    ):
        done = tapeline(*arguments, cwd=marit.parent)
        assert (done.code, done.out) == (2, ""), done
        assert done.err.startswith("error: ")
        assert "[cannot-write]" in done.err
    assert files(marit.parent) == {"marit.toml", "file"}


def test_new_writes_a_docket_and_keeps_what_is_there(tmp_path: Path) -> None:
    """With a size it drafts at once; a second one is refused until it is forced."""
    done = tapeline("new", "a.toml", "--size", "m", "--name", "Marit", cwd=tmp_path)
    assert done.code == 0
    assert "tapeline make a.toml" in done.out
    assert tapeline("draft", "a.toml", cwd=tmp_path).code == 0
    written = (tmp_path / "a.toml").read_text("utf-8")
    again = tapeline("new", "a.toml", "--unit", "inch", cwd=tmp_path)
    assert (again.code, again.out) == (2, "")
    assert (tmp_path / "a.toml").read_text("utf-8") == written
    assert tapeline("new", "a.toml", "--unit", "inch", "--force", cwd=tmp_path).code == 0
    unfilled = tapeline("draft", "a.toml", cwd=tmp_path)
    assert unfilled.code == 2
    assert "[tape-missing]" in unfilled.err


def test_colour_is_for_terminals_only(marit: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A terminal gets some; one that says NO_COLOR, or that is dumb, gets none; and a narrow one is kept to."""
    import os
    import pty
    import subprocess
    import sys

    from tests.cli.process import clean

    def on_terminal(**env: str) -> str:
        """Both streams of a command on a terminal."""
        keeper, terminal = pty.openpty()
        with subprocess.Popen(
            [sys.executable, "-m", "tapeline", "draft", "marit.toml"],
            cwd=marit.parent,
            env={**clean(), "TERM": "xterm", **env},
            stdin=subprocess.DEVNULL,
            stdout=terminal,
            stderr=terminal,
        ) as process:
            os.close(terminal)
            seen = b""
            try:
                while part := os.read(keeper, 4096):
                    seen += part
            except OSError:
                pass  # the terminal was closed at the other end
            os.close(keeper)
            assert process.wait(timeout=60) == 0
        return seen.decode()

    assert "\x1b[" in on_terminal()
    assert "\x1b[" not in on_terminal(NO_COLOR="1")
    assert "\x1b[" not in on_terminal(TERM="dumb")
    narrow = on_terminal(NO_COLOR="1", COLUMNS="60")
    assert max(len(line.rstrip()) for line in narrow.splitlines()) <= 60
