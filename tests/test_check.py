"""The checks themselves: what they say when a tool is not there, and what the lock of the page's type checker holds."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

import pytest

from scripts import check

LOCK = json.loads((check.PAGE_TYPES / "package-lock.json").read_text(encoding="utf-8"))
PROJECT = json.loads((check.PAGE_TYPES / "package.json").read_text(encoding="utf-8"))


def test_a_step_that_is_not_known_is_refused_with_the_names_of_the_others(capsys: pytest.CaptureFixture[str]) -> None:
    """A mistyped name does not pass as a check that was done."""
    with pytest.raises(SystemExit) as stopped:
        check.main(["page-type"])
    assert stopped.value.code == 2
    assert "no step is called page-type; steps are format," in capsys.readouterr().err


@pytest.mark.parametrize(("there", "lacking"), [((), "node"), (("node",), "npm")])
def test_without_node_or_npm_the_page_is_not_taken_for_checked(
    there: tuple[str, ...], lacking: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is not there is named, and the step has failed."""
    for name in there:
        (tmp_path / name).write_text("#!/bin/sh\n", encoding="utf-8")
        (tmp_path / name).chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    outcome = check.page_types("quick")
    assert outcome.word == "FAILED"
    assert outcome.says.startswith(f"{lacking} is not there")


def npm(folder: Path, does: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Puts an npm on the PATH that counts its calls and does this."""
    (folder / "bin").mkdir()
    (folder / "bin" / "npm").write_text(f'#!/bin/sh\necho "$@" >>"{folder}/asked"\n{does}\n', encoding="utf-8")
    (folder / "bin" / "npm").chmod(0o755)
    monkeypatch.setenv("PATH", f"{folder}/bin:/usr/bin:/bin")


def test_typescript_is_installed_once_for_a_lock(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second time nothing is asked of npm, so a machine without a network passes too."""
    npm(
        tmp_path,
        "mkdir -p node_modules/typescript/bin && cp package-lock.json node_modules/typescript/bin/tsc",
        monkeypatch,
    )
    first = check.typescript(tmp_path)
    assert first.read_bytes() == (check.PAGE_TYPES / "package-lock.json").read_bytes()
    assert check.typescript(tmp_path) == first
    assert (tmp_path / "asked").read_text(encoding="utf-8") == "ci\n"


def test_another_lock_is_installed_apart(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """After a change of the lock what was installed before is not used."""
    npm(tmp_path, "mkdir -p node_modules", monkeypatch)
    first = check.typescript(tmp_path)
    other = tmp_path / "page_types"
    other.mkdir()
    for name in (".npmrc", "package.json", "package-lock.json"):
        (other / name).write_bytes((check.PAGE_TYPES / name).read_bytes() + b"\n")
    monkeypatch.setattr(check, "PAGE_TYPES", other)
    assert check.typescript(tmp_path) != first
    assert (tmp_path / "asked").read_text(encoding="utf-8") == "ci\nci\n"


def test_an_install_that_failed_is_not_taken_for_a_whole_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When npm fails half-way nothing is left, and the next run tries again."""
    npm(tmp_path, "mkdir -p node_modules/typescript; exit 7", monkeypatch)
    for _ in range(2):
        with pytest.raises(subprocess.CalledProcessError):
            check.typescript(tmp_path)
    assert list(tmp_path.glob("page-types-*")) == []
    assert (tmp_path / "asked").read_text(encoding="utf-8") == "ci\nci\n"


def test_the_page_has_one_tool_from_npm_and_it_is_locked_to_the_byte() -> None:
    """TypeScript in an exact release with a hash, under a licence that the tests of the project allow."""
    assert list(PROJECT["devDependencies"]) == ["typescript"]
    assert "dependencies" not in PROJECT
    assert re.fullmatch(r"\d+\.\d+\.\d+", PROJECT["devDependencies"]["typescript"])
    assert set(LOCK["packages"]) == {"", "node_modules/typescript"}
    held = LOCK["packages"]["node_modules/typescript"]
    assert held["version"] == PROJECT["devDependencies"]["typescript"]
    assert held["integrity"].startswith("sha512-")
    assert held["license"] == "Apache-2.0"


def test_the_lock_says_no_address() -> None:
    """Packages come from wherever a machine takes them."""
    text = (check.PAGE_TYPES / "package-lock.json").read_text(encoding="utf-8")
    assert "resolved" not in text
    assert "://" not in text


def test_every_module_of_the_page_is_checked_strictly() -> None:
    """All of the page's modules are read, with every strict rule, and nothing is written."""
    settings = json.loads((check.PAGE_TYPES / "tsconfig.json").read_text(encoding="utf-8"))
    assert {"checkJs", "strict", "noEmit"} <= {name for name, on in settings["compilerOptions"].items() if on is True}
    modules = [
        path for pattern in settings["include"] for path in check.PAGE_TYPES.glob(pattern) if path.suffix == ".js"
    ]
    assert {path.resolve() for path in modules} == set((check.ROOT / "src/tapeline/web/static").rglob("*.js"))
    silenced = re.compile(r"@ts-(nocheck|ignore|expect-error)")
    assert [path.name for path in modules if silenced.search(path.read_text(encoding="utf-8"))] == []
