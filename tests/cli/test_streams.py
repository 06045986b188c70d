"""Streams that are closed or full, and signals at bad moments."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.cli.process import EXAMPLES, SOURCE, can_be_interrupted, clean


def shell(script: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """Run a shell script in which `tapeline` is the command, wherever the project lies: its path may have spaces."""
    env = {**clean(), "python": sys.executable, "tee": str(EXAMPLES / "tee.toml")}
    script = f'tapeline() {{ "$python" -m tapeline "$@"; }}\n{script}'
    return subprocess.run(["/bin/sh", "-c", script], cwd=cwd, env=env, capture_output=True, text=True, check=False)


@pytest.mark.slow
@pytest.mark.parametrize("command", ['draft "$tee" --json', 'make "$tee"', "--help"])
def test_a_closed_output_is_told_before_anything_is_done(command: str, tmp_path: Path) -> None:
    """`>&-` leaves nowhere to write a result: that is said, in one report, and no file appears."""
    done = shell(f"tapeline {command} >&-", tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith("error: there is nowhere to write to")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.slow
@pytest.mark.parametrize("ending", ["2>&-", "2>/dev/full"])
def test_where_problems_cannot_be_told_the_exit_code_still_does(ending: str, tmp_path: Path) -> None:
    """A closed or full standard error changes no exit code."""
    assert shell(f"tapeline draft nowhere.toml {ending}", tmp_path).returncode == 2
    assert shell(f"tapeline measure {ending}", tmp_path).returncode == 0


def test_ctrl_c_while_loading_is_quiet(tmp_path: Path) -> None:
    """From the first line of ours on there is no traceback; a library slow to load stands for all of them."""
    (tmp_path / "click.py").write_text("print('loading', flush=True)\nimport time\ntime.sleep(60)\n", encoding="utf-8")
    env = {**clean(), "PYTHONPATH": f"{tmp_path}:{SOURCE}"}
    with subprocess.Popen(
        [sys.executable, "-m", "tapeline", "--help"],
        cwd=tmp_path,
        env=env,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=can_be_interrupted,  # noqa: PLW1509 - no thread of ours holds a lock then
    ) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == "loading\n"
        process.send_signal(signal.SIGINT)
        _, err = process.communicate(timeout=60)
    assert (process.returncode, err) == (-signal.SIGINT, "")


@pytest.mark.slow
def test_a_process_that_is_asked_to_end_cleans_up(tmp_path: Path) -> None:
    """SIGTERM in the middle of a batch leaves no temporary file, and ends as shells expect."""
    rows = (EXAMPLES / "orders.csv").read_text(encoding="utf-8").splitlines()
    (tmp_path / "orders.csv").write_text("\n".join([rows[0], *rows[1:] * 100]) + "\n", encoding="utf-8")
    with subprocess.Popen(
        [sys.executable, "-m", "tapeline", "batch", "orders.csv", "--json-lines", "--out", "o.jsonl", "--jobs", "2"],
        cwd=tmp_path,
        env=clean(),
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        until = time.monotonic() + 60
        while not any(p.suffix == ".part" for p in tmp_path.iterdir()) and time.monotonic() < until:
            time.sleep(0.05)
        os.kill(process.pid, signal.SIGTERM)
        _, err = process.communicate(timeout=60)
    assert (process.returncode, err) == (143, "")
    assert [path.name for path in tmp_path.iterdir()] == ["orders.csv"]
