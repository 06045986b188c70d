"""`tapeline lay`: plans are kept, drawn and gone on from; what is wrong is said, and nothing is half written."""

from __future__ import annotations

import csv
import json
import signal
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, can_be_interrupted, clean, tapeline
from tests.lay import independent

pytestmark = pytest.mark.slow
"""Each starts the command several times."""

TEE = EXAMPLES / "tee.toml"


def test_a_plan_is_kept_drawn_listed_and_gone_on_from(tmp_path: Path) -> None:
    """The three files tell of the same coordinates, and the kept one is a plan to begin with."""
    files = ("--keep", "lay.json", "--picture", "lay.svg", "--table", "lay.csv")
    done = tapeline("lay", TEE, "--cloth", "shell", "--seconds", "1", "--price", "20", *files, cwd=tmp_path)
    assert done.code == 0, done.err
    assert "no shorter than" in done.out
    text = (tmp_path / "lay.json").read_text(encoding="utf-8")
    assert independent.wrong(text) == []
    plan = json.loads(text)
    rows = list(csv.DictReader((tmp_path / "lay.csv").read_text(encoding="utf-8").splitlines()))
    assert [float(row["x_mm"]) for row in rows] == [pytest.approx(p["x"], abs=0.001) for p in plan["placements"]]
    assert max(float(row["right_mm"]) for row in rows) == pytest.approx(plan["length_mm"], abs=0.01)
    drawn = ET.fromstring((tmp_path / "lay.svg").read_text(encoding="utf-8"))
    polygons = drawn.findall(".//{http://www.w3.org/2000/svg}polygon")
    assert len(polygons) == len(rows) == 4
    again = tapeline(
        "lay", TEE, "--cloth", "shell", "--seconds", "1", "--price", "20", "--from", "lay.json", "--json", cwd=tmp_path
    )
    assert again.code == 0, again.err
    assert json.loads(again.out)[0]["length_mm"] <= plan["length_mm"] + 0.01
    other = tapeline("lay", TEE, "--cloth", "shell", "--width", "160cm", "--from", "lay.json", cwd=tmp_path)
    assert other.code == 2
    assert "[lay-other]" in other.err


def test_each_cloth_has_its_file(tmp_path: Path) -> None:
    """Shell and rib; two garments of two dockets in one lay."""
    done = tapeline(
        "lay",
        TEE,
        EXAMPLES / "long-sleeved-tee.toml",
        "--garments",
        "2",
        "--seconds",
        "1",
        "--keep",
        "lay.json",
        cwd=tmp_path,
    )
    assert done.code == 0, done.err
    for name, pieces in (("shell", 16), ("rib", 4)):
        text = (tmp_path / f"lay-{name}.json").read_text(encoding="utf-8")
        assert independent.wrong(text) == []
        assert len(json.loads(text)["placements"]) == pieces


def test_what_is_wrong_is_said_and_nothing_is_written(tmp_path: Path) -> None:
    """Bad input of every kind ends with 2 and leaves no file."""
    (tmp_path / "empty.json").write_text("", encoding="utf-8")
    (tmp_path / "binary.json").write_bytes(b"\xff\xfe\x00")
    for words, code in (
        ((), "command-line"),
        ((TEE, "--width", "30cm"), "lay-too-narrow"),
        ((TEE, "--gap", "-1cm"), "lay-cloth"),
        ((TEE, "--tilt", "nan"), "lay-cloth"),
        ((TEE, "--seconds", "nan"), "lay-time"),
        ((TEE, "--together", "front, slev"), "lay-piece-unknown"),
        ((TEE, "--together", "front, sleeve", "--spread", "folded"), "lay-block"),
        ((TEE, "--flaw", "1, 2, 3"), "lay-flaw"),
        ((TEE, "--picture", "lay.out", "--pdf", "lay.out"), "would-overwrite"),
        ((TEE, "--picture", "nowhere/lay.svg", "--seconds", "600"), "cannot-write"),
        ((TEE, "--from", "empty.json", "--cloth", "shell"), "lay-kept"),
        (("--instance", "binary.json"), "lay-unreadable"),
        (("--instance", "empty.json", TEE), "command-line"),
    ):
        done = tapeline("lay", *words, *(("--keep", "lay.json") if TEE in words else ()), cwd=tmp_path)
        assert f"[{code}]" in done.err, (words, done.err)
        assert done.code == 2
        assert {path.name for path in tmp_path.iterdir()} == {"empty.json", "binary.json"}


def test_ctrl_c_keeps_the_best(tmp_path: Path) -> None:
    """Stopped after its first plan, the command ends well and the plan it had is kept, whole."""
    running = subprocess.Popen(
        [sys.executable, "-m", "tapeline", "lay", TEE, "--cloth", "shell", "--seconds", "100", "--keep", "lay.json"],
        cwd=tmp_path,
        env=clean(),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=can_be_interrupted,  # noqa: PLW1509 - no thread of ours holds a lock then
    )
    assert running.stderr is not None
    assert "cm" in running.stderr.readline()
    running.send_signal(signal.SIGINT)
    out, err = running.communicate(timeout=60)
    assert running.returncode == 0, err
    assert "Stopped" in out
    assert independent.wrong((tmp_path / "lay.json").read_text(encoding="utf-8")) == []


def test_pieces_of_a_dxf_are_laid_and_written_at_true_scale(tmp_path: Path) -> None:
    """An exchange file is laid as its docket is, with PDF, DXF and plotter file; both kinds at once are refused."""
    assert tapeline("cut", TEE, "--as", "exchange", cwd=tmp_path).code == 0
    words = ("--cloth", "shell", "--width", "150cm", "--seconds", "1.5")
    files = ("--pdf", "lay.pdf", "--dxf", "lay.dxf", "--plotter", "lay.plt")
    done = tapeline("lay", "tee.dxf", *words, *files, cwd=tmp_path)
    assert done.code == 0, done.err
    for name, begins in (("lay.pdf", b"%PDF"), ("lay.dxf", b"  0\nSECTION"), ("lay.plt", b"\x1bE")):
        assert (tmp_path / name).read_bytes().startswith(begins)
    assert tapeline("read", "lay.dxf", cwd=tmp_path).out.startswith("lay.dxf: 4 pieces")
    both = tapeline("lay", "tee.dxf", TEE, cwd=tmp_path)
    assert both.code == 2
    assert "[command-line]" in both.err


def test_a_cloth_that_was_not_laid_before_a_stop_is_named(tmp_path: Path) -> None:
    """Stopped at its first cloth, the command names the other, whose file is not there, and ends with 1."""
    running = subprocess.Popen(
        [sys.executable, "-m", "tapeline", "lay", TEE, "--seconds", "100", "--keep", "lay.json"],
        cwd=tmp_path,
        env=clean(),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=can_be_interrupted,  # noqa: PLW1509 - no thread of ours holds a lock then
    )
    assert running.stderr is not None
    assert "cm" in running.stderr.readline()
    running.send_signal(signal.SIGINT)
    out, err = running.communicate(timeout=60)
    assert running.returncode == 1, err
    assert "Not laid, and no file of it written: rib." in out
    assert [path.name for path in tmp_path.iterdir()] == ["lay-shell.json"]


def test_letters_that_a_file_cannot_hold_are_said_once(tmp_path: Path) -> None:
    """A DXF by the layers of pieces has plain Latin letters, a PDF a few more; a note says what is lost."""
    named = TEE.read_text(encoding="utf-8").replace('"Marit"', '"Zo\u00eb \u5c0f"')
    (tmp_path / "zoe.toml").write_text(named, encoding="utf-8")
    files = ("--dxf", "lay.dxf", "--pdf", "lay.pdf")
    done = tapeline("lay", "zoe.toml", "--seconds", "0.5", *files, cwd=tmp_path)
    assert done.code == 0, done.err
    assert done.err.count("the exchange file has no letters") == 1
    assert done.err.count("the print has no letters") == 1


def test_the_notes_of_a_lay_do_not_contradict_it(tmp_path: Path) -> None:
    """Pieces that are larger by the shrinkage are to be cut unwashed; nothing says to wash that cloth."""
    done = tapeline("lay", TEE, "--cloth", "shell", "--seconds", "0.5", cwd=tmp_path)
    assert "[lay-shrinks]" in done.err
    assert "[cloth-shrinks]" not in done.err
