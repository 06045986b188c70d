"""Lays the golden drawings as they are drafted now on those that were accepted, on one page.

scripts/golden_report.py                      against the last commit
scripts/golden_report.py --against main       against another one
scripts/golden_report.py --against accepted   against the files as they lie in tests/golden
scripts/golden_report.py --out changed.html   where the page goes; out/goldens.html unless said

Says by how many millimetres each piece moved. Exit code 0 whether or not anything did; 1 when nothing could be drafted.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "src")]

from scripts.goldens.page import Golden, page  # noqa: E402 - the path is set only now

GOLDEN = Path("tests/golden")
ACCEPTED = "accepted"


def main(arguments: list[str]) -> int:
    """Drafts, compares, writes the page."""
    parser = argparse.ArgumentParser(description="Old and new golden drawings on each other.")
    parser.add_argument("--against", default="HEAD", help=f"a commit, or `{ACCEPTED}` for the files as they lie there")
    parser.add_argument("--out", type=Path, default=ROOT / "out" / "goldens.html", help="the page's file")
    told = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory(prefix="tapeline goldens ") as folder:
        new = drafted(Path(folder))
    if not new:
        print("no golden drawing could be drafted: run the tests in tests/golden to see why", file=sys.stderr)
        return 1
    old = accepted() if told.against == ACCEPTED else committed(told.against)
    goldens = [Golden(name, old.get(name), new.get(name)) for name in sorted(old | new)]
    told.out.parent.mkdir(parents=True, exist_ok=True)
    whole = told.out.with_suffix(".new")
    whole.write_text(page(goldens, told.against), encoding="utf-8")
    whole.replace(told.out)
    for line in said(goldens):
        print(line)
    print(f"wrote {told.out}")
    return 0


def drafted(folder: Path) -> dict[str, str]:
    """The texts as they are now: the tests that compare them write them into a folder instead."""
    command = (sys.executable, "-m", "pytest", "-q", "-p", "no:randomly", "-p", "no:cacheprovider", str(GOLDEN))
    environment = os.environ | {"TAPELINE_NEW": str(folder), "PYTHONPATH": f"{ROOT / 'src'}{os.pathsep}{ROOT}"}
    subprocess.run(command, cwd=ROOT, env=environment, check=False, capture_output=True)
    return texts_in(folder)


def accepted() -> dict[str, str]:
    """The texts as they lie in the checkout."""
    return texts_in(ROOT / GOLDEN)


def committed(commit: str) -> dict[str, str]:
    """The texts of a commit."""
    names = git("ls-tree", "--name-only", f"{commit}:{GOLDEN.as_posix()}").splitlines()
    texts = (name for name in names if name.endswith(".txt"))
    return {name.removesuffix(".txt"): git("show", f"{commit}:{GOLDEN.as_posix()}/{name}") for name in texts}


def texts_in(folder: Path) -> dict[str, str]:
    """The texts of a folder by their names."""
    return {path.stem: path.read_text(encoding="utf-8") for path in folder.glob("*.txt")}


def git(*arguments: str) -> str:
    """What git says."""
    done = subprocess.run(("git", *arguments), cwd=ROOT, check=True, capture_output=True, text=True, encoding="utf-8")
    return done.stdout


def said(goldens: list[Golden]) -> Iterator[str]:
    """One line for each that changed."""
    for golden in goldens:
        if golden.old is None or golden.new is None:
            yield f"{golden.name}: {'new' if golden.old is None else 'gone'}"
        elif golden.changed:
            moved = [f"{name} {far.mm:.2f} mm" for name, _, _, far in golden.pieces if far and far.moved]
            yield f"{golden.name}: {', '.join(moved) or 'only its words'}"


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
