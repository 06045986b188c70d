"""The examples in README.md and docs/: every command that a reader is shown is run, and says what is printed there.

A block fenced as `console` is a session. Lines that begin with `$ ` are commands; the lines under one are its output,
where `...` stands for anything, and no lines mean that nothing is compared. A page is one session from its top to its
end, in a fresh folder that holds a copy of examples/. `# exit 2` after a command is the exit code to expect. Blocks
fenced as `sh` are not run: they are for what would fetch or change something. `>>>` examples are run by pytest itself.
"""

from __future__ import annotations

import doctest
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PAGES = sorted(path for path in (ROOT / "README.md", *(ROOT / "docs").rglob("*.md")) if path.exists())
SESSION = re.compile(r"^```console\n(.*?)^```$", flags=re.MULTILINE | re.DOTALL)
ANYTHING = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE


@dataclass(frozen=True, slots=True)
class Command:
    """One command of a page."""

    line: str
    """As it is typed."""
    exit_code: int
    """What it is expected to come to."""
    prints: str
    """What stands under it; nothing when nothing is to be compared."""


def commands(page: str) -> Iterator[Command]:
    """The commands of a page in the order in which they stand."""
    for session in SESSION.findall(page):
        for part in re.split(r"^\$ ", session, flags=re.MULTILINE)[1:]:
            line, _, prints = part.partition("\n")
            line, _, code = line.partition("  # exit ")
            yield Command(line.strip(), int(code or 0), prints.strip("\n"))


@pytest.mark.slow
@pytest.mark.parametrize("page", PAGES, ids=[str(page.relative_to(ROOT)) for page in PAGES])
def test_the_commands_of_a_page_do_what_it_says(page: Path, tmp_path: Path) -> None:
    """Run in their order, the commands end and print as the page says."""
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    names = tmp_path / "bin"
    names.mkdir()
    for name in ("tapeline", "run"):
        (names / name).write_text(f'#!/bin/sh\nexec "{sys.executable}" -m tapeline "$@"\n', encoding="utf-8")
        (names / name).chmod(0o755)
    shutil.copy(names / "run", tmp_path / "run")
    environment = {
        "PATH": f"{names}:/usr/bin:/bin",
        "PYTHONPATH": str(ROOT / "src"),
        "LC_ALL": "C.UTF-8",
        "COLUMNS": "100",
    }
    for command in commands(page.read_text(encoding="utf-8")):
        done = subprocess.run(
            ["/bin/sh", "-c", command.line],
            cwd=tmp_path,
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            check=False,
            timeout=120,
        )
        assert done.returncode == command.exit_code, f"$ {command.line}\n{done.stdout}"
        if command.prints:
            same = doctest.OutputChecker().check_output(command.prints + "\n", done.stdout, ANYTHING)
            assert same, f"$ {command.line}\n--- the page says\n{command.prints}\n--- it printed\n{done.stdout}"


def test_a_session_is_read_as_it_stands() -> None:
    """Commands, their exit codes and what is printed under them are told apart."""
    page = "Text\n```console\n$ tapeline a\none\n\ntwo\n$ tapeline b  # exit 2\n```\n```sh\n$ not run\n```\n"
    assert list(commands(page)) == [Command("tapeline a", 0, "one\n\ntwo"), Command("tapeline b", 2, "")]
