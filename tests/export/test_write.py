"""Files are written whole or not at all, whatever goes wrong."""

from __future__ import annotations

import os
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from tapeline.export import write_all, write_whole
from tapeline.problems import InputError


def refused(*files: tuple[Path, bytes]) -> str:
    """What is said when the files cannot be written."""
    with pytest.raises(InputError) as caught:
        write_all(dict(files))
    (problem,) = caught.value.problems
    assert problem.code == "cannot-write"
    assert "written" in problem.hint
    return str(problem)


def in_a_child(code: str, folder: Path) -> str:
    """What a process of its own prints, so that its limits end with it."""
    head = "import os, resource, signal, sys\nfrom pathlib import Path\nfrom tapeline.export import write_all\n"
    head += f"from tapeline.problems import InputError\nfolder = Path({str(folder)!r})\n"
    done = subprocess.run(
        [sys.executable, "-c", head + textwrap.dedent(code)],
        capture_output=True,
        text=True,
        check=False,
        env={"PYTHONPATH": ":".join(sys.path)},
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_a_file_is_written_and_replaced(tmp_path: Path) -> None:
    """The bytes are there, an older file is replaced, nothing else is left in the folder, and others may read it."""
    path = tmp_path / "tee.pdf"
    for data in (b"first", b"second" * 1000):
        write_whole(path, data)
        assert path.read_bytes() == data
    assert list(tmp_path.iterdir()) == [path]
    mask = os.umask(0)
    os.umask(mask)
    assert path.stat().st_mode & 0o777 == 0o666 & ~mask


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    """It is not made without being asked for."""
    said = refused((tmp_path / "nowhere" / "tee.pdf", b"x"))
    assert "there is no folder" in said
    assert not (tmp_path / "nowhere").exists()


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    """A folder of that name stays a folder."""
    (tmp_path / "tee.pdf").mkdir()
    assert "it is a folder" in refused((tmp_path / "tee.pdf", b"x"))
    assert (tmp_path / "tee.pdf").is_dir()


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    """A file in the place of the folder is left alone."""
    (tmp_path / "out").write_text("mine")
    refused((tmp_path / "out" / "tee.pdf", b"x"))
    assert (tmp_path / "out").read_text() == "mine"


def test_one_bad_place_stops_all_files(tmp_path: Path) -> None:
    """Of several files none appears when one of them cannot be written."""
    refused((tmp_path / "tee.pdf", b"x"), (tmp_path / "nowhere" / "tee.svg", b"x"))
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_leaves_nothing_behind(tmp_path: Path) -> None:
    """Past the system's limit on a file's size: one report, the old file as it was, no half file, no temporary."""
    (tmp_path / "tee.pdf").write_bytes(b"old")
    said = in_a_child(
        """
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (50_000, 50_000))
        try:
            write_all({folder / "tee.svg": b"y" * 10, folder / "tee.pdf": b"x" * 200_000})
        except InputError as error:
            print(error)
        """,
        tmp_path,
    )
    assert "cannot-write" in said
    assert "tee.pdf: file too large" in said
    assert [path.name for path in tmp_path.iterdir()] == ["tee.pdf"]
    assert (tmp_path / "tee.pdf").read_bytes() == b"old"


def test_a_disk_that_is_truly_full_leaves_nothing_behind(tmp_path: Path) -> None:
    """On a file system of 64 kB in memory: `no space left`, and what was there is still there."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mounted = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", disk], capture_output=True, check=False
    )
    if mounted.returncode:
        pytest.skip("only root can mount a small disk here; the limit on a file's size is tested instead")
    try:
        write_whole(disk / "tee.pdf", b"old")
        assert "no space left" in refused((disk / "tee.pdf", b"x" * 500_000))
        assert [path.name for path in disk.iterdir()] == ["tee.pdf"]
        assert (disk / "tee.pdf").read_bytes() == b"old"
    finally:
        subprocess.run(["umount", disk], check=True)


def test_a_folder_that_may_not_be_written_is_said(tmp_path: Path) -> None:
    """For an ordinary user: permission denied, and nothing changed."""
    locked = tmp_path / "locked"
    locked.mkdir(mode=0o555)
    said = in_a_child(
        """
        if os.geteuid() == 0:
            os.setuid(65534)
        try:
            write_all({folder / "tee.pdf": b"x"})
        except InputError as error:
            print(error)
        """,
        locked,
    )
    assert "cannot-write" in said
    assert "permission denied" in said
    assert list(locked.iterdir()) == []


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """The file that it points to is written, there or not yet there."""
    (tmp_path / "shelf").mkdir()
    (tmp_path / "tee.pdf").symlink_to(tmp_path / "shelf" / "tee.pdf")
    for data in (b"first", b"second"):
        write_whole(tmp_path / "tee.pdf", data)
        assert (tmp_path / "tee.pdf").is_symlink()
        assert (tmp_path / "shelf" / "tee.pdf").read_bytes() == data
    assert len(list((tmp_path / "shelf").iterdir())) == 1


def test_a_pipe_or_a_device_is_not_replaced_by_a_file(tmp_path: Path) -> None:
    """/dev/null, written by root, would be a file from then on: it is refused, as a pipe is."""
    os.mkfifo(tmp_path / "tee.pdf")
    assert "a device or a pipe" in refused((tmp_path / "tee.pdf", b"x"))
    assert (tmp_path / "tee.pdf").is_fifo()
    (tmp_path / "null").symlink_to("/dev/null")
    assert "a device or a pipe" in refused((tmp_path / "null", b"x"))
    assert Path("/dev/null").is_char_device()


def test_what_was_not_written_is_said_as_it_is(tmp_path: Path) -> None:
    """When the second of two files has no folder, neither is there, and that is what is said."""
    said = refused((tmp_path / "tee.pdf", b"x"), (tmp_path / "nowhere" / "tee.svg", b"x"))
    assert said.endswith("Nothing was written.")


def test_ctrl_c_between_two_files_leaves_no_temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was stopped while files get their names is cleaned away."""

    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "replace", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_all({tmp_path / "tee.pdf": b"x", tmp_path / "tee.svg": b"y"})
    assert list(tmp_path.iterdir()) == []
