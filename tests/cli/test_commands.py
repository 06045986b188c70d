"""Every command has help and an example that runs, and no word that is nearly right is left without an answer."""

from __future__ import annotations

import os
import re
import shlex
import shutil
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from tapeline.cli.commands import COMMANDS
from tapeline.cli.commands import tapeline as group
from tests.cli.process import EXAMPLES, MARIT, SOURCE, clean, tapeline
from tests.received.theirs import box, typed

NO_COMMANDS = {
    *(
        "__init__",
        "main",
        "commands",
        "show",
        "options",
        "output",
        "sizes",
        "batch_row",
        "batch_run",
        "counted",
        "host",
        "password",
        "lay_instance",
        "lay_options",
        "lay_report",
    )
}
"""Files of the command line that are no command."""


def command(name: str) -> click.Command:
    """A command, as the group finds it."""
    found = group.get_command(click.Context(group), name)
    assert found is not None
    return found


def examples(name: str) -> list[str]:
    """The lines of a command's example."""
    epilog = command(name).epilog or ""
    assert epilog.startswith("\b\nExample:\n")
    return [line.strip() for line in epilog.splitlines()[2:]]


def test_every_file_is_a_command_or_known_to_be_none() -> None:
    """A command that is written and not listed would never be found."""
    files = {path.stem for path in (SOURCE / "tapeline" / "cli").glob("*.py")}
    assert files - NO_COMMANDS == {name.replace("-", "_") for name in COMMANDS}


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_has_help_and_an_example(name: str) -> None:
    """It says what it does in a sentence that is not cut in the list, and each option says what it is for."""
    made = command(name)
    assert made.name == name
    assert made.help
    assert not made.get_short_help_str(60).endswith("...")
    for parameter in made.params:
        assert not isinstance(parameter, click.Option) or parameter.help, parameter.name
    assert all(line.startswith(f"tapeline {name} ") for line in examples(name))
    shown = CliRunner().invoke(group, [name, "--help"])
    assert shown.exit_code == 0
    assert "Example:" in shown.output
    assert max(map(len, shown.output.splitlines())) <= 80


@pytest.mark.slow
@pytest.mark.parametrize("name", [name for name in COMMANDS if name != "open"])  # it serves until it is stopped
def test_the_examples_run(name: str, tmp_path: Path) -> None:
    """What help shows can be typed as it stands, where there is a docket of that name."""
    for table in ("orders.csv", "sizes.csv"):
        shutil.copy(EXAMPLES / table, tmp_path)
    for drawing, layer in (("theirs.dxf", "1"), ("drawing.dxf", "CUT")):
        (tmp_path / drawing).write_bytes(typed(box(0, 0, 30, layer)))
    for line in examples(name):
        (tmp_path / "marit.toml").unlink(missing_ok=True)
        if name != "new":
            (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
        done = tapeline(*shlex.split(line)[1:], cwd=tmp_path)
        assert done.code == 0, done
        assert done.out


@pytest.mark.slow
def test_the_examples_of_open_serve(tmp_path: Path) -> None:
    """Each example of `open` says its address, answers there without the key by a refusal, and ends when stopped."""
    (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
    for line in examples("open"):
        words = [sys.executable, "-m", *shlex.split(line), "--no-browser"]
        environment = os.environ | {"XDG_STATE_HOME": str(tmp_path / "state"), "PYTHONPATH": str(SOURCE)}
        with subprocess.Popen(words, cwd=tmp_path, env=environment, stdout=subprocess.PIPE, text=True) as server:
            assert server.stdout is not None
            address = server.stdout.readline().split()[-1].partition("?")[0]
            try:
                with pytest.raises(urllib.error.HTTPError, match="403"):
                    _until_it_answers(address)
            finally:
                server.terminate()


def _until_it_answers(address: str) -> None:
    for _ in range(100):
        try:
            urllib.request.urlopen(address, timeout=10).close()  # noqa: S310 - our own server on this machine
        except urllib.error.HTTPError:
            raise
        except OSError:
            time.sleep(0.1)


def test_help_lists_the_commands_in_the_order_of_the_day(tmp_path: Path) -> None:
    """Also without any word, which is no mistake to be told off for."""
    shown = tapeline("--help", cwd=tmp_path)
    assert (shown.code, shown.err) == (0, "")
    assert tapeline(cwd=tmp_path) == shown
    assert re.findall(r"^  ([a-z][a-z-]+)  +\w", shown.out, flags=re.MULTILINE) == list(COMMANDS)
    assert "Example:" in shown.out


def test_help_loads_nothing_heavy() -> None:
    """Help is there before numpy would be: the measure of it stands in the benchmark."""
    code = (
        "import sys; from tapeline.cli.main import run; run(['--help'])\n"
        "heavy = {'numpy', 'scipy', 'shapely', 'kurbopy', 'reportlab', 'pikepdf', 'rich', 'tapeline.docket'}\n"
        "print(sorted(heavy & sys.modules.keys()), file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], env=clean(), capture_output=True, text=True, check=True)
    assert done.stderr.strip() == "[]"


@pytest.mark.parametrize(
    ("typed", "answer"),
    [
        ("drft", "did you mean draft?"),
        ("draft marit.toml --stps", "did you mean --steps?"),
        ("draft", "tapeline draft needs DOCKET"),
        ("draft a.toml b.toml", "unexpected extra argument"),
        ("measure --how hipp", "did you mean hip?"),
        ("measure --figure wman", "'woman'"),
        ("new a.toml --style te", "did you mean tee?"),
        ("new a.toml --unit inches", "did you mean inch?"),
        ("new a.toml --size 89", "there is no size 89"),
        ("explain marit.toml back.armhol", "did you mean back.armhole?"),
        ("print marit.toml --paper A44", "did you mean A4?"),
        ("batch marit.toml --jobs 0", "not in the range"),
    ],
)
def test_a_word_that_is_nearly_right_is_answered(typed: str, answer: str, tmp_path: Path) -> None:
    """The word meant is named, nothing is done, and the exit code says that the input was at fault."""
    (tmp_path / "marit.toml").write_text(MARIT, encoding="utf-8")
    done = tapeline(*shlex.split(typed), cwd=tmp_path)
    assert done.code == 2
    assert answer in " ".join(done.err.split())
    assert done.err.startswith("error: ")
    assert done.out == ""
    assert [path.name for path in tmp_path.iterdir()] == ["marit.toml"]


def test_the_version_is_told(tmp_path: Path) -> None:
    """One line, for a report."""
    done = tapeline("--version", cwd=tmp_path)
    assert re.fullmatch(r"tapeline \d+\.\d+\.\d+\n", done.out)
