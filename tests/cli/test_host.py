"""Opening the page to other machines: what is refused, what is said, and where the password never appears."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tapeline.cli.host import address_of, listen
from tapeline.cli.password import SHORTEST, password_of
from tapeline.problems import InputError
from tests.cli.process import EXAMPLES, clean, tapeline

WORD = "blue thread, long seam"
ELSEWHERE = "192.0.2.20"  # an address for documentation, RFC 5737


def password_file(folder: Path, text: str = WORD + "\n", mode: int = 0o600) -> Path:
    """A password file."""
    path = folder / "password.txt"
    path.write_bytes(text.encode("utf-8", "surrogateescape"))
    path.chmod(mode)
    return path


def code_of(path: Path) -> str:
    """The code with which a password file is refused."""
    with pytest.raises(InputError) as refused:
        password_of(path)
    (problem,) = refused.value.problems
    assert problem.hint.endswith("Nothing was opened.")
    return problem.code


@pytest.mark.parametrize("host", [ELSEWHERE, "2001:db8::20", "8.8.8.8", "10.0.0.1", "::ffff:192.0.2.20"])
def test_another_address_wants_a_password(host: str, tmp_path: Path) -> None:
    """Without a password file it is refused: what, why, what to try, what was not done."""
    done = tapeline("open", "--no-browser", "--host", host, cwd=tmp_path, env={"XDG_STATE_HOME": str(tmp_path)})
    said = " ".join(done.err.split())
    assert (done.code, done.out) == (2, "")
    assert "[host-wants-password]" in said
    assert "could read this docket and change it" in said
    assert "add --password-file FILE" in said
    assert said.endswith("Nothing was opened.")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "host",
    ["", "kitchen", "localhost", "0.0.0.0", "::", "::ffff:0.0.0.0", "224.0.0.1", "fe80::1", "fe80::1%eth0", "1.2.3"],  # noqa: S104 - refused
)
def test_what_is_no_one_address_is_refused_even_with_a_password(host: str) -> None:
    """A name can be made to mean another machine; all addresses at once are not the one that was given."""
    with pytest.raises(InputError) as refused:
        address_of(host, password=True)
    assert [problem.code for problem in refused.value.problems] == ["host-not-understood"]


@pytest.mark.parametrize("host", ["127.0.0.1", "127.0.0.2", "::1", "::ffff:127.0.0.1"])
def test_this_machine_needs_no_password(host: str) -> None:
    """Addresses of this machine alone are open as ever."""
    assert address_of(host, password=False).is_loopback


def test_an_address_that_cannot_be_had_is_told() -> None:
    """Another machine's address, and a port that is taken, are told as such, and no trace is shown."""
    with pytest.raises(InputError) as refused:
        listen(address_of(ELSEWHERE, password=True), 0)
    assert [problem.code for problem in refused.value.problems] == ["cannot-listen"]
    with listen(address_of("127.0.0.1", password=False), 0) as taken, pytest.raises(InputError) as refused:
        listen(address_of("127.0.0.1", password=False), taken.getsockname()[1])
    assert "address already in use" in str(refused.value)


def test_a_password_is_the_one_line_of_its_file(tmp_path: Path) -> None:
    """With or without an end of line, as editors write it."""
    for end in ("", "\n", "\r\n"):
        assert password_of(password_file(tmp_path, WORD + end)) == WORD
    assert password_of(password_file(tmp_path, "\ufeff" + WORD)) == WORD
    assert password_of(password_file(tmp_path, "é" * SHORTEST, 0o400)) == "é" * SHORTEST


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o620, 0o602, 0o644, 0o610])
def test_a_file_that_others_may_read_or_write_is_refused(mode: int, tmp_path: Path) -> None:
    """Any right for group or others is one too many."""
    assert code_of(password_file(tmp_path, mode=mode)) == "password-file-shared"


def test_a_file_of_somebody_else_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its owner could read it."""
    path = password_file(tmp_path)
    monkeypatch.setattr(os, "geteuid", lambda: path.stat().st_uid + 1)
    assert code_of(path) == "password-file-shared"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "password-short"),
        ("\n", "password-short"),
        ("  \n", "password-short"),
        ("x" * (SHORTEST - 1), "password-short"),
        (WORD + "\nanother line\n", "password-not-a-line"),
        (WORD + " \n", "password-not-a-line"),
        (WORD + "\0", "password-not-a-line"),
        ("x" * 5000, "password-not-a-line"),
        ("\udcff" * 20, "password-not-a-line"),
    ],
)
def test_what_is_no_password_is_refused(text: str, code: str, tmp_path: Path) -> None:
    """Empty, short, of several lines, with signs that cannot be typed: each is named, and not shown."""
    path = password_file(tmp_path, text)
    assert code_of(path) == code


def test_what_is_no_file_is_refused_at_once(tmp_path: Path) -> None:
    """No file, a folder, and a pipe with nobody at its other end."""
    assert code_of(tmp_path / "none") == "password-file-unreadable"
    assert code_of(tmp_path) == "password-file-unreadable"
    assert code_of(Path("a\0b")) == "password-file-unreadable"
    os.mkfifo(tmp_path / "pipe", 0o600)
    assert code_of(tmp_path / "pipe") == "password-file-unreadable"


@contextmanager
def opened(folder: Path, *words: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A page that is open, and its address."""
    process = subprocess.Popen(
        [sys.executable, "-m", "tapeline", "open", str(EXAMPLES / "tee.toml"), "--no-browser", *words],
        cwd=folder,
        env={**clean(), "XDG_STATE_HOME": str(folder / "state"), "PYTHONUNBUFFERED": "1"},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    try:
        assert process.stdout is not None
        first = process.stdout.readline()
        assert first.startswith("Tapeline is at "), first
        yield process, first.split()[-1]
    finally:
        process.kill()
        process.wait()
        assert process.stdout is not None
        process.stdout.close()


def status(address: str, form: dict[str, str] | None = None) -> int:
    """What is answered to a request, or to a form that is sent."""
    data = urllib.parse.urlencode(form).encode() if form is not None else None
    try:
        with urllib.request.urlopen(address, data, timeout=20) as answer:  # noqa: S310 - our own address
            return int(answer.status)
    except urllib.error.HTTPError as error:
        with error:
            return error.code


@pytest.mark.slow
def test_it_says_what_it_means_and_keeps_the_password_to_itself(tmp_path: Path) -> None:
    """Who can reach it, no TLS, who changes what, how to stop; the word is in no output, file or list of processes."""
    path = password_file(tmp_path)
    with opened(tmp_path, "--host", "127.0.0.2", "--password-file", str(path)) as (process, address):
        assert "key" not in address
        assert status(address) == 200
        assert status(address + "enter", {"password": "guess"}) == 403
        assert status(address + "enter", {"password": WORD}) == 200  # let in, and without a cookie asked again
        listed = Path(f"/proc/{process.pid}/cmdline")
        if listed.exists():
            assert WORD.encode() not in listed.read_bytes()
            assert WORD.encode() not in Path(f"/proc/{process.pid}/environ").read_bytes()
        process.send_signal(signal.SIGINT)
        process.wait(timeout=20)
        assert process.stdout is not None
        out = process.stdout.read()
    for words in (
        "Who can reach it: ",
        "Everybody with the password sees this docket and changes it",
        "no TLS",
        "Ctrl-C",
    ):
        assert words in out
    assert WORD not in out
    assert "guess" not in out
    kept = [found for found in (tmp_path / "state").rglob("*") if found.is_file()]
    assert kept
    assert all(WORD.encode() not in found.read_bytes() for found in kept)


@pytest.mark.slow
def test_slow_and_many_connections_keep_nobody_out(tmp_path: Path) -> None:
    """One address that opens 300 connections and finishes no request: another is answered, and soon it is again too."""
    path = password_file(tmp_path)
    with opened(tmp_path, "--host", "127.0.0.2", "--password-file", str(path)) as (_, address):
        port = int(address.rstrip("/").rpartition(":")[2])
        held = []
        try:
            for _ in range(300):
                held.append(socket.create_connection(("127.0.0.2", port), 5, source_address=("127.0.0.3", 0)))
                held[-1].sendall(b"GET / HTTP/1.1\r\nHost: 127.0.0.2\r\n")
            assert status(address) == 200
            end = time.monotonic() + 25
            while time.monotonic() < end:
                with socket.create_connection(("127.0.0.2", port), 5, source_address=("127.0.0.3", 0)) as again:
                    try:
                        again.sendall(f"GET / HTTP/1.1\r\nHost: 127.0.0.2:{port}\r\n\r\n".encode())
                        if again.recv(15) == b"HTTP/1.1 200 OK":
                            break
                    except OSError:
                        pass
                time.sleep(0.5)
            else:
                pytest.fail("slow connections were not closed")
        finally:
            for connection in held:
                connection.close()
