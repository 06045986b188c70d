"""Runs the checks one after the other, times them, and sums up; called by ./check, which sets up what they need.

Every step runs even when one before it failed, so that one run shows all there is to mend.
Exit code 0: all passed; 1: at least one failed; 2: a step of that name is not known.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PYTHON = (sys.executable, "-m")
TYPED = tuple(name for name in ("src", "tests", "scripts", "benchmarks") if any((ROOT / name).rglob("*.py")))
PAGE_TYPES = ROOT / "scripts" / "page_types"
"""What is checked in the page's modules, and the lock of the one tool from npm that checks it."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one step came to."""

    word: str
    """`ok` or `FAILED`."""
    says: str = ""
    """One line for the summary."""


@dataclass(frozen=True, slots=True)
class Step:
    """One check."""

    name: str
    about: str
    run: Callable[[str], Outcome]
    """Told how thorough to be: `quick` or `full`."""


def command(*arguments: str) -> Outcome:
    """Runs a command in the checkout; its exit code is the answer."""
    code = subprocess.run(arguments, cwd=ROOT, check=False, stdin=subprocess.DEVNULL).returncode
    return Outcome("ok") if code == 0 else Outcome("FAILED", f"exit code {code}")


def layers(_depth: str) -> Outcome:
    """Runs import-linter, which is a command and not a module."""
    return command(str(Path(sys.executable).with_name("lint-imports")), "--no-cache")


def page_types(_depth: str) -> Outcome:
    """Lets TypeScript read the types that the page's modules say in their comments; nothing is made from them."""
    for tool in ("node", "npm"):
        if shutil.which(tool) is None:
            return Outcome("FAILED", f"{tool} is not there: the page's modules were not checked (Node.js, with npm)")
    try:
        compiler = typescript(Path(sys.prefix))
    except subprocess.CalledProcessError as error:
        return Outcome("FAILED", f"npm did not install TypeScript (exit code {error.returncode})")
    return command("node", str(compiler), "--project", str(PAGE_TYPES), "--pretty", "false")


def typescript(environment: Path) -> Path:
    """The locked TypeScript, installed into a folder of the environment that is named after its lock.

    It is installed aside and renamed when whole, so what has its name need not be looked into, or fetched, again.

    Raises:
        CalledProcessError: when npm cannot install it.
    """
    files = [PAGE_TYPES / name for name in (".npmrc", "package.json", "package-lock.json")]
    key = hashlib.sha256(b"".join(file.read_bytes() for file in files)).hexdigest()[:12]
    home = environment / f"page-types-{key}"
    if not home.exists():
        with tempfile.TemporaryDirectory(prefix="page-types-", dir=environment) as folder:
            whole = Path(folder) / "whole"
            whole.mkdir()
            for file in files:
                shutil.copy(file, whole)
            subprocess.run(("npm", "ci"), cwd=whole, check=True, stdin=subprocess.DEVNULL)
            # Another run may have been quicker: what it laid there is the same.
            with contextlib.suppress(OSError):
                whole.rename(home)
    return home / "node_modules" / "typescript" / "bin" / "tsc"


def tests(depth: str) -> Outcome:
    """Runs pytest, passes on what it prints as it comes, and keeps its closing line, which has the count.

    A run in which no test passed has failed, whatever pytest says.
    """
    arguments = [*PYTHON, "pytest", "-q", "-n", str(min(2, os.cpu_count() or 1)), f"--hypothesis-profile={depth}"]
    if depth == "quick":
        arguments += ["-m", "not slow"]
    closing = ""
    with subprocess.Popen(
        arguments, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, text=True, errors="replace"
    ) as process:
        for line in process.stdout or ():
            print(line, end="", flush=True)
            closing = line.strip(" =\n") or closing
    passed = re.search(r"\b[1-9]\d* passed\b", closing)
    return Outcome("ok" if process.returncode == 0 and passed else "FAILED", closing)


def reference(_depth: str) -> Outcome:
    """Makes the generated pages of the reference anew and compares them with those in docs/."""
    return command(sys.executable, str(ROOT / "scripts" / "reference.py"), "--check")


def main_job(_depth: str) -> Outcome:
    """Does what `./run` does, into a folder of its own, and sees that every file has something in it."""
    docket = ROOT / "examples" / "tee.toml"
    with tempfile.TemporaryDirectory(prefix="a main job ") as folder:
        outcome = command(str(ROOT / "run"), "make", str(docket), "--out", folder)
        made = {path.name: path.stat().st_size for path in Path(folder).rglob("*") if path.is_file()}
    if outcome.word == "ok" and (len(made) < 3 or not all(made.values())):
        return Outcome("FAILED", f"print, drawing and report were expected; made was {made or 'nothing'}")
    return outcome


STEPS = (
    Step(
        "format",
        "every file is laid out as the formatter would",
        lambda _: command(*PYTHON, "ruff", "format", "--check", "."),
    ),
    Step("lint", "the linter has nothing to say", lambda _: command(*PYTHON, "ruff", "check", ".")),
    Step("types", "strict types", lambda _: command(*PYTHON, "mypy", *TYPED)),
    Step("page-types", "strict types in the page's modules", page_types),
    Step("layers", "no import goes up, across or round", layers),
    Step("tests", "tests, the examples in docstrings and in docs", tests),
    Step("reference", "the generated reference is up to date", reference),
    Step("main-job", "`./run` makes its files", main_job),
)


def chosen(words: Sequence[str]) -> tuple[Step, ...]:
    """The steps of these names, in their usual order; all of them for no name.

    Raises:
        SystemExit: with code 2, for a name that is not known.
    """
    unknown = sorted(set(words) - {step.name for step in STEPS})
    if unknown:
        names = ", ".join(step.name for step in STEPS)
        print(f"check: no step is called {', '.join(unknown)}; steps are {names}", file=sys.stderr)
        raise SystemExit(2)
    return tuple(step for step in STEPS if step.name in words or not words)


def summary(lines: Sequence[tuple[Step, Outcome, float]]) -> bool:
    """Prints what each step came to; true when all may land."""
    print("\n--- summary " + "-" * 60)
    for step, outcome, seconds in lines:
        again = f"   alone: ./check {step.name}" if outcome.word == "FAILED" else ""
        print(f"{outcome.word:8}{step.name:12}{seconds:6.1f} s  {outcome.says}{again}".rstrip())
    failed = [step.name for step, outcome, _ in lines if outcome.word == "FAILED"]
    total = sum(seconds for *_, seconds in lines)
    print(f"{'failed: ' + ', '.join(failed) if failed else 'all passed'}, in {total:.1f} s")
    return not failed


def main(words: Sequence[str]) -> int:
    """Runs what was asked for and gives the exit code."""
    if words == ["--list"]:
        for step in STEPS:
            print(f"{step.name:12}{step.about}")
        return 0
    if words == ["fix"]:
        command(*PYTHON, "ruff", "check", "--fix", "--quiet", ".")
        return command(*PYTHON, "ruff", "format", ".").word != "ok"
    depth = "quick" if "quick" in words else "full"
    lines = []
    for step in chosen([word for word in words if word != "quick"]):
        print(f"\n--- {step.name}: {step.about}", flush=True)
        start = time.monotonic()
        outcome = step.run(depth)
        lines.append((step, outcome, time.monotonic() - start))
        if outcome.word != "ok":
            print(f"{step.name}: {outcome.word}; {outcome.says}", flush=True)
    return 0 if summary(lines) else 1


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
