"""How a command ends: exit codes, quiet endings, and our own faults."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tapeline.cli.main import run
from tests.cli.process import EXAMPLES, MARIT, can_be_interrupted, clean, tapeline


@pytest.fixture
def marit(tmp_path: Path) -> Path:
    """A docket that drafts."""
    path = tmp_path / "marit.toml"
    path.write_text(MARIT, encoding="utf-8")
    return path


SLOW = [pytest.param(name, marks=pytest.mark.slow) for name in ("true", "explain", "print", "make")]


@pytest.mark.parametrize("command", ["draft", "measure", *SLOW])
def test_a_docket_that_cannot_be_used_ends_with_2(command: str, marit: Path) -> None:
    """Every command tells of it on stderr, in the words of the docket's reader, and writes nothing."""
    marit.write_text(MARIT.replace("hip = 101", 'hip = "9.8"'), encoding="utf-8")
    done = tapeline(command, "marit.toml", cwd=marit.parent)
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith("error: hip is 9.8 cm;")
    line = MARIT.splitlines().index("hip = 101") + 1
    assert f'  in marit.toml, line {line}: hip = "9.8"\n' in done.err
    assert "Nothing was drafted." in " ".join(done.err.split())
    assert [path.name for path in marit.parent.iterdir()] == ["marit.toml"]


@pytest.mark.slow
def test_swapped_tapes_stop_the_draft(marit: Path) -> None:
    """Bust and waist in each other's place are seen and named."""
    text = MARIT.replace("bust = 94", "bust = 77", 1).replace("waist = 77", "waist = 94", 1)
    marit.write_text(text, encoding="utf-8")
    for command in ("draft", "measure"):
        done = tapeline(command, marit, cwd=marit.parent)
        assert done.code == 2
        assert "bust and waist look as if they had changed places" in done.err


@pytest.mark.slow
@pytest.mark.parametrize("command", ["draft", "true", "print"])
def test_a_garment_that_fails_a_check_ends_with_1(command: str, marit: Path) -> None:
    """It is drafted and shown, and the failure is told on stderr: here the head does not go through."""
    text = MARIT.replace("arm_length = 58", "arm_length = 58\nhead_girth = 57")
    text = text.replace("stretch_across = 35", "stretch_across = 0")
    marit.write_text(text, encoding="utf-8")
    done = tapeline(command, marit, cwd=marit.parent)
    assert done.code == 1
    assert "[head-does-not-pass]" in done.err
    assert done.out


def test_a_fault_of_our_own_ends_with_3(
    marit: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A short report and no trace; the trace when it is asked for."""

    def fail(*_: object) -> None:
        raise ZeroDivisionError("planted\nsecond line")

    monkeypatch.setattr("tapeline.project.draft", fail)
    assert run(["draft", str(marit)]) == 3
    shown = capsys.readouterr()
    assert shown.err.startswith("error: Tapeline itself failed: ZeroDivisionError: planted")
    assert "Traceback" not in shown.err
    assert "please report this" in shown.err
    monkeypatch.setenv("TAPELINE_TRACE", "1")
    assert run(["draft", str(marit)]) == 3
    assert "Traceback" in capsys.readouterr().err


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="signals as on Debian")
def test_ctrl_c_ends_quietly_with_130(tmp_path: Path) -> None:
    """In the middle of a batch, with worker processes: no trace, no half of a file."""
    rows = (EXAMPLES / "orders.csv").read_text(encoding="utf-8").splitlines()
    (tmp_path / "orders.csv").write_text("\n".join([rows[0], *rows[1:] * 200]) + "\n", encoding="utf-8")
    with subprocess.Popen(
        [sys.executable, "-m", "tapeline", "batch", "orders.csv", "--json-lines", "--out", "o.jsonl", "--jobs", "2"],
        cwd=tmp_path,
        env=clean(),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
        text=True,
        preexec_fn=can_be_interrupted,  # noqa: PLW1509 - no thread of ours holds a lock then
    ) as process:
        until = time.monotonic() + 60
        while (
            not any(p.suffix == ".part" and p.stat().st_size for p in tmp_path.iterdir()) and time.monotonic() < until
        ):
            time.sleep(0.05)
        os.killpg(process.pid, signal.SIGINT)
        out, err = process.communicate(timeout=60)
    assert (process.returncode, out, err) == (130, "", "")
    assert [path.name for path in tmp_path.iterdir()] == ["orders.csv"]


def test_a_reader_that_goes_away_is_no_fault(marit: Path) -> None:
    """`tapeline draft ... | head -1` ends quietly."""
    script = f'"{sys.executable}" -m tapeline draft marit.toml --json | head -1'
    done = subprocess.run(
        ["/bin/sh", "-c", script], cwd=marit.parent, env=clean(), capture_output=True, text=True, check=False
    )
    assert (done.stdout, done.stderr) == ("{\n", "")


def test_a_full_disk_is_told(marit: Path) -> None:
    """/dev/full is a disk without room; nothing of ours fails for it."""
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        done = subprocess.run(
            [sys.executable, "-m", "tapeline", "draft", "marit.toml", "--json"],
            cwd=marit.parent,
            env=clean(),
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )
    assert done.returncode == 2
    assert "no space left on device" in done.stderr
    assert "Traceback" not in done.stderr
