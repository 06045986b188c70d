"""The rule of layers: which package may import what, and where each foreign library lives."""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
SOURCE = ROOT / "src" / "tapeline"
LINTER = Path(sys.executable).with_name("lint-imports")

HOMES = {
    "click": {"cli"},
    "rich": {"cli"},
    "reportlab": {"export"},
    "ezdxf": {"export"},
    "PIL": {"export"},
    "pikepdf": {"export"},
    "kurbopy": {"geometry"},
    "scipy": {"geometry"},
    "shapely": {"geometry"},
    # Arrays are a language more than a library: geometry, survey model and the arrangement on paper all speak it.
    "numpy": {"geometry", "measures", "export", "sheets", "form", "drape"},
    "numba": {"drape"},
    "spyrrow": {"lay"},
    "jinja2": {"web"},
    "starlette": {"web"},
    "uvicorn": {"web"},
    "tomlkit": {"docket"},
}
"""The packages of Tapeline that may import a foreign library; no other may, and no other library may be imported."""


def imports() -> Iterator[tuple[str, str, str]]:
    """Each import as the file, the package of Tapeline it stands in, and the name that is imported."""
    for path in sorted(SOURCE.rglob("*.py")):
        inside = path.relative_to(SOURCE)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom):
                assert node.level == 0, f"{inside}: imports are written in full, not relative"
                names = [f"{node.module}.{alias.name}" for alias in node.names]
            for name in names:
                yield str(inside), inside.parts[0].removesuffix(".py"), name


def test_each_foreign_library_is_imported_in_its_home_only() -> None:
    """A library that is not in the table, or is imported outside its home, is a decision that somebody has to take."""
    strangers = [
        f"{file} imports {name}"
        for file, package, name in imports()
        if (top := name.partition(".")[0]) != "tapeline"
        and top not in sys.stdlib_module_names
        and package not in HOMES.get(top, set())
    ]
    assert strangers == []


def test_textbook_pages_speak_only_the_drafting_language() -> None:
    """A method page or a style that reaches past the drafting language into geometry does not read like a textbook."""
    deep = [
        f"{file} imports {name}"
        for file, package, name in imports()
        if package in {"blocks", "styles"} and name.split(".")[:2] == ["tapeline", "geometry"]
    ]
    assert deep == []


def test_every_dependency_has_a_home() -> None:
    """What is installed with Tapeline is what Tapeline may import: nothing more, nothing less."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert {line.partition(">=")[0] for line in project["dependencies"]} == {
        "pillow" if name == "PIL" else name
        for name in HOMES  # its package has another name than what is imported
    }


@pytest.mark.slow
@pytest.mark.parametrize(
    ("package", "line"),
    [
        pytest.param("zz_without_a_layer", "", id="a package without a layer"),
        pytest.param("problems", "import tapeline.units", id="an import that goes up"),
        pytest.param("problems", "import click", id="click outside cli"),
        pytest.param("units", "import scipy.optimize", id="scipy outside geometry"),
    ],
)
def test_the_linter_sees_a_fault_that_was_planted(tmp_path: Path, package: str, line: str) -> None:
    """The contracts are not empty words: in a copy of the sources with one bad line they do not hold."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    copy = tmp_path / "src" / "tapeline"
    shutil.copytree(SOURCE, copy, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("units", package):
        if not (copy / name).is_dir():
            (copy / f"{name}.py").touch()
    target = copy / package / "__init__.py" if (copy / package).is_dir() else copy / f"{package}.py"
    target.write_text(target.read_text(encoding="utf-8") + f"\n{line}\n", encoding="utf-8")
    done = subprocess.run(
        [LINTER, "--no-cache"],
        cwd=tmp_path,
        env={"PYTHONPATH": str(tmp_path / "src"), "PATH": "/usr/bin:/bin"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert "1 broken" in done.stdout or "2 broken" in done.stdout
