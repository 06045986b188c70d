"""The project itself: its licence and those of what it stands on, its locks, and what its files may not say."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

import pytest

import tapeline

ROOT = Path(__file__).resolve().parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))

ALLOWED = {
    "0BSD",
    "Apache License",
    "Apache-2.0",
    # The exception only gives more: what is compiled with it need not carry the notice.
    "Apache-2.0 WITH LLVM-exception",
    "BSD License",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "CC0-1.0",
    "MIT",
    "MIT License",
    "MIT-CMU",
    "PSF-2.0",
    "Zlib",
    # Weak copyleft by file: its own files stay under it; a program that calls them may have any licence
    # (Mozilla Public License 2.0, section 3.3, "Distribution of a Larger Work").
    "MPL-2.0",
}
"""Licences that go with a program given away under MIT: SPDX names, classifiers, or titles of the text."""

NOT_ON_THIS_MACHINE = {"colorama"}
"""Locked for other systems only."""


def pins(name: str) -> dict[str, str]:
    """The releases that a lock file holds, by package."""
    text = (ROOT / "requirements" / f"{name}.txt").read_text(encoding="utf-8")
    return dict(re.findall(r"^([a-z0-9][a-z0-9._-]*)==([^ ;\\]+)", text, flags=re.MULTILINE))


def licences(package: str) -> set[str]:
    """What an installed package says of its licence: an expression, else classifiers, a field, or the text's title."""
    found = distribution(package)
    said = found.metadata.json
    if expression := said.get("license_expression"):
        return set(re.split(r" AND | OR ", str(expression).replace("(", "").replace(")", "")))
    if kinds := {line.rpartition(" :: ")[2] for line in said.get("classifier", ()) if line.startswith("License ::")}:
        return kinds
    if field := said.get("license"):
        return {str(field)}
    texts = [file for file in found.files or () if file.name.startswith("LICENSE")]
    return {next(line.strip() for line in file.read_text().splitlines() if line.strip()) for file in texts}


def tracked() -> Iterator[tuple[str, str]]:
    """Each text file under version control, with its text."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    for name in filter(None, listed.split("\0")):
        path = ROOT / name
        if path.suffix in {".npz", ".png", ".pdf", ".ttf"} or not path.is_file():
            continue
        yield name, path.read_text(encoding="utf-8")


def test_the_licence_is_mit() -> None:
    """The text is that of the MIT licence, and the package says the same."""
    text = " ".join((ROOT / "LICENSE").read_text(encoding="utf-8").split())
    assert text.startswith("MIT License Copyright (c)")
    assert "Tapeline contributors" in text
    assert "without restriction, including without limitation the rights to use, copy, modify, merge" in text
    assert PROJECT["project"]["license"] == "MIT"


@pytest.mark.parametrize("package", sorted(pins("run")))
def test_a_dependency_may_be_used_by_a_program_under_mit(package: str) -> None:
    """Every package that is installed with Tapeline names a licence, and only such as go with MIT."""
    try:
        found = licences(package)
    except PackageNotFoundError:
        assert package in NOT_ON_THIS_MACHINE
        return
    assert found
    assert found <= ALLOWED


def test_the_version_is_said_once() -> None:
    """The package and its metadata agree on the version."""
    assert tapeline.__version__ == PROJECT["project"]["version"]


@pytest.mark.parametrize(
    ("lock", "wanted"),
    [
        ("run", PROJECT["project"]["dependencies"]),
        ("check", PROJECT["project"]["dependencies"] + PROJECT["dependency-groups"]["check"]),
    ],
)
def test_the_lock_holds_every_dependency(lock: str, wanted: list[str]) -> None:
    """After a change of dependencies the locks were made again (scripts/lock)."""
    held = pins(lock)
    for line in wanted:
        name, _, floor = line.partition(">=")
        assert name in held
        assert numbers(held[name]) >= numbers(floor or "0"), f"{line} is asked for, {held[name]} is locked"


def numbers(version: str) -> tuple[int, ...]:
    """A release number as it sorts."""
    return tuple(int(part) for part in re.findall(r"\d+", version))


def test_both_locks_hold_the_same_releases() -> None:
    """What is tested is what is run: `check` holds all of `run`, in the same releases."""
    assert pins("run").items() <= pins("check").items()


@pytest.mark.parametrize("lock", ["run", "check"])
def test_every_locked_release_has_a_hash(lock: str) -> None:
    """A file that was changed on its way here is not installed."""
    text = (ROOT / "requirements" / f"{lock}.txt").read_text(encoding="utf-8")
    entries = re.split(r"^(?=[a-z0-9])", text, flags=re.MULTILINE)[1:]
    assert len(entries) == len(pins(lock))
    assert [entry.split("==")[0] for entry in entries if "--hash=sha256:" not in entry] == []


def test_no_file_names_a_registry_or_the_place_it_was_made_at() -> None:
    """Packages come from wherever a machine takes them, and no path of somebody's machine is left in a file."""
    # Put together here, so that this file does not say them either.
    hosts = ["py" + "pi.org", "python" + "hosted.org", "npm" + "js.org", "debian" + ".org/debian"]
    places = ["/wo" + "rk/", "/ho" + "me/", "/tm" + "p/team", "sha" + "red/"]
    found = [f"{name}: {word}" for name, text in tracked() for word in hosts + places if word in text]
    assert found == []


def test_the_interpreter_is_one_that_the_package_promises() -> None:
    """The floor in the metadata, the linter's and the type checker's are the same, and this run is not below it."""
    assert PROJECT["project"]["requires-python"] == ">=3.11"
    assert PROJECT["tool"]["ruff"]["target-version"] == "py311"
    assert PROJECT["tool"]["mypy"]["python_version"] == "3.11"
    assert sys.version_info >= (3, 11)
