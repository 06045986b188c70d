"""`./run` as a real process: what it starts, from where, and what it says when it cannot.

Nothing is fetched here: a checkout is made of the two scripts, and its Python is one that the test wrote.
"""

from __future__ import annotations

import os
import shutil
import stat
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
CANNOT = 69
"""EX_UNAVAILABLE of sysexits.h: a support program or file does not exist."""


def script(path: Path, text: str) -> Path:
    """Writes a shell script that can be started."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(f"#!/bin/sh\n{text}\n", encoding="utf-8")
    path.chmod(path.stat().st_mode | stat.S_IXUSR)
    return path


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    """A checkout with a space in its name, not set up yet."""
    folder = tmp_path / "a checkout"
    for name in ("run", "scripts/environment.sh", "requirements/run.txt"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, folder / name)
    return folder


@pytest.fixture
def ready(checkout: Path) -> Path:
    """The same, set up: its Python prints the folder it was started in, then its arguments, one a line."""
    script(checkout / ".venv/bin/python", 'pwd; printf "%s\\n" "$@"')
    shutil.copy(checkout / "requirements/run.txt", checkout / ".venv/set-up-run.txt")
    return checkout


def tools(folder: Path, *names: str) -> Path:
    """A folder with these tools of the system and no others, to be the whole PATH."""
    folder.mkdir(exist_ok=True)
    for name in ("sh", "cat", "cmp", "cp", "dirname", "flock", "mkdir", "mv", "readlink", "rm", *names):
        found = shutil.which(name, path="/usr/bin:/bin")
        if found is not None:
            (folder / name).symlink_to(found)
    return folder


def start(*words: str | Path, cwd: Path, path: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Runs a command and keeps what it says."""
    environment = {"PATH": str(path or "/usr/bin:/bin"), "HOME": str(cwd), "LC_ALL": "C"}
    return subprocess.run(words, cwd=cwd, env=environment, capture_output=True, text=True, check=False, timeout=60)


def test_words_go_to_tapeline_as_they_are(ready: Path, tmp_path: Path) -> None:
    """Arguments keep their spaces and stars, and the folder of the caller stays the current one."""
    done = start(ready / "run", "draft", "a docket.toml", "*", "", cwd=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.split("\n") == [str(tmp_path), "-m", "tapeline", "draft", "a docket.toml", "*", "", ""]


@pytest.mark.parametrize("target", ["absolute", "relative"])
def test_it_starts_through_a_link(ready: Path, tmp_path: Path, target: str) -> None:
    """A link to it, in another folder, finds the checkout."""
    link = tmp_path / "bin" / "tl"
    link.parent.mkdir()
    link.symlink_to(ready / "run" if target == "absolute" else Path(os.path.relpath(ready / "run", link.parent)))
    assert start(link, "--version", cwd=tmp_path).stdout.split("\n")[1:4] == ["-m", "tapeline", "--version"]


def test_alone_it_does_the_main_job(ready: Path, tmp_path: Path) -> None:
    """Without arguments it drafts the example into out/ of the checkout, wherever it is called from."""
    inside = start(ready / "run", cwd=ready).stdout.split("\n")
    assert inside[1:-1] == ["-m", "tapeline", "make", "examples/tee.toml", "--out", "out"]
    outside = start(ready / "run", cwd=tmp_path).stdout.split("\n")
    assert outside[1:-1] == ["-m", "tapeline", "make", f"{ready}/examples/tee.toml", "--out", f"{ready}/out"]


def test_bench_runs_the_benchmarks(ready: Path, tmp_path: Path) -> None:
    """The benchmarks are beside the package, so they run in the checkout."""
    assert start(ready / "run", "bench", "print", cwd=tmp_path).stdout.split("\n") == [
        str(ready), "-m", "benchmarks", "print", ""
    ]  # fmt: skip


def test_a_missing_python_is_named_with_its_package(checkout: Path, tmp_path: Path) -> None:
    """On a machine without Python it says what to install, and makes nothing."""
    done = start(checkout / "run", cwd=checkout, path=tools(tmp_path / "bin"))
    assert done.returncode == CANNOT
    assert "Python 3.11 or newer is needed" in done.stderr
    assert "apt-get install python3 python3-venv" in done.stderr
    assert not (checkout / ".venv").exists()


def test_an_old_python_is_refused_with_its_version(checkout: Path, tmp_path: Path) -> None:
    """A Python that is too old is named, with what to do."""
    path = tools(tmp_path / "bin")
    script(path / "python3", 'case "$2" in *exit*) exit 1 ;; *) echo 3.9.2 ;; esac')
    done = start(checkout / "run", cwd=checkout, path=path)
    assert done.returncode == CANNOT
    assert "Python 3.11 or newer is needed; python3 here is 3.9.2" in done.stderr
    assert "TAPELINE_PYTHON=" in done.stderr
    assert not (checkout / ".venv").exists()


@pytest.fixture
def without_venv(tmp_path: Path) -> Path:
    """A PATH whose Python is 3.12 and lacks the module that Debian packs apart."""
    path = tools(tmp_path / "bin")
    script(
        path / "python3",
        f"""case "$2" in
            *ensurepip*) exit 1 ;;
            *_base_executable*) echo '{path}/python3' ;;
            *%d.%d*) echo 3.12 ;;
        esac""",
    )
    return path


def test_who_is_not_root_is_told_which_package_has_venv(checkout: Path, without_venv: Path) -> None:
    """Where nothing may be installed, the exact command is said."""
    script(without_venv / "id", "echo 1000")
    done = start(checkout / "run", cwd=checkout, path=without_venv)
    assert done.returncode == CANNOT
    assert done.stderr.endswith("install it and try again: sudo apt-get install python3.12-venv\n")
    assert not (checkout / ".venv").exists()


def test_root_gets_the_package_that_has_venv(checkout: Path, without_venv: Path, tmp_path: Path) -> None:
    """For root it is installed; when the lists of packages are old, they are fetched and it is tried again."""
    script(without_venv / "id", "echo 0")
    script(without_venv / "apt-get", f'echo "$@" >>"{tmp_path}/asked"; [ "$1" = update ] || [ -e "{tmp_path}/fresh" ]')
    done = start(checkout / "run", cwd=checkout, path=without_venv)
    asked = (tmp_path / "asked").read_text(encoding="utf-8").splitlines()
    assert asked == ["install -y -q python3.12-venv", "update -q", "install -y -q python3.12-venv"]
    assert done.returncode == CANNOT
    assert "apt-get could not install python3.12-venv" in done.stderr


def test_a_set_up_that_broke_off_is_not_taken_for_a_whole_one(checkout: Path, tmp_path: Path) -> None:
    """When pip fails, no stamp is left, and the next start begins from nothing."""
    path = tools(tmp_path / "bin", "chmod")
    interpreter = script(
        path / "python3",
        f"""case "$*" in
            *_base_executable*) echo '{path}/python3' ;;
            "-m venv"*) "{path}/mkdir" -p "$3/bin"; "{path}/cp" "$0" "$3/bin/python"; echo made >>"{tmp_path}/made" ;;
            *"pip "*install*) exit 1 ;;
        esac""",
    )
    assert interpreter.exists()
    for times in (1, 2):
        done = start(checkout / "run", "x", cwd=checkout, path=path)
        assert done.returncode == CANNOT
        assert "the set-up was not finished: the packages were not installed" in done.stderr
        assert not (checkout / ".venv/set-up-run.txt").exists()
        assert (tmp_path / "made").read_text(encoding="utf-8") == "made\n" * times


def test_another_lock_file_means_another_set_up(ready: Path, tmp_path: Path) -> None:
    """When the lock file has changed, what is there is not used as it is."""
    lock = ready / "requirements/run.txt"
    lock.write_text(lock.read_text(encoding="utf-8") + "# a change\n", encoding="utf-8")
    done = start(ready / "run", "x", cwd=ready, path=tools(tmp_path / "bin"))
    assert "setting up" in done.stderr
