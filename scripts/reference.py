"""Makes the reference, the pictures and the tables of the docs from the program itself.

scripts/reference.py            writes them
scripts/reference.py --check    compares them with what is there; exit code 1 when anything differs

So a command, a tape, a problem code or a key of a docket cannot be added without its entry, and no number in a table
or line in a picture is typed.
"""

from __future__ import annotations

import difflib
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "src")]

# Found only now that the path is set.
from scripts.pages import commands, data, docket, frames, pictures, problems, python, sizes, styles, tapes  # noqa: E402 - see above

DOCS = ROOT / "docs"
REFERENCE = {
    "commands.md": commands.page,
    "data.md": data.page,
    "docket.md": docket.page,
    "problems.md": problems.page,
    "python.md": python.page,
    "sizes.md": sizes.page,
    "styles.md": styles.page,
    "tapes.md": tapes.page,
}
TABLES = {"explanation/frames.md": ("rule and survey", frames.text)}
"""Pages written by hand that have a table in them, between two marks."""
NUMBER = re.compile(r"-?\d+\.\d+")
DRAWN_ALIKE = 0.02
"""Millimetres by which a number in a picture may differ: another processor rounds otherwise."""


def made() -> dict[Path, str]:
    """Every file that is made, and what it holds."""
    files = {DOCS / "reference" / name: _ended(page()) for name, page in REFERENCE.items()}
    files |= {DOCS / "images" / name: text for name, text in pictures.pictures().items()}
    for name, (mark, table) in TABLES.items():
        path = DOCS / name
        files[path] = _between(path.read_text(encoding="utf-8"), mark, table())
    return files


def _ended(text: str) -> str:
    return text.rstrip("\n") + "\n"


def _between(text: str, mark: str, table: str) -> str:
    """A page with its table put in anew."""
    begin, end = f"<!-- made: {mark} -->\n", f"<!-- made: end of {mark} -->\n"
    before, found, rest = text.partition(begin)
    _, closed, after = rest.partition(end)
    if not (found and closed):
        raise SystemExit(f"reference: the marks for {mark} are not in the page")
    return f"{before}{begin}\n{table}\n{end}{after}"


def same(one: str, other: str) -> bool:
    """Whether two files hold the same; the numbers of a picture may differ by less than can be seen."""
    if one == other:
        return True
    if not one.lstrip().startswith(("<svg", "<?xml")):
        return False
    ours, theirs = (list(map(float, NUMBER.findall(text))) for text in (one, other))
    if NUMBER.sub("#", one) != NUMBER.sub("#", other) or len(ours) != len(theirs):
        return False
    return all(abs(a - b) < DRAWN_ALIKE for a, b in zip(ours, theirs, strict=True))


def check() -> int:
    """Compares; 1 when anything differs."""
    old = 0
    for path, text in made().items():
        there = path.read_text(encoding="utf-8") if path.exists() else ""
        if same(text, there):
            continue
        old += 1
        print(f"{path.relative_to(ROOT)} is not what the program says now:")
        if path.suffix == ".md":
            lines = difflib.unified_diff(there.splitlines(), text.splitlines(), "there", "made now", lineterm="", n=1)
            print("\n".join(list(lines)[:40]))
    print(f"{old} differ; scripts/reference.py writes them anew" if old else "the reference is up to date")
    return 1 if old else 0


def write() -> int:
    """Writes what has changed."""
    for path, text in made().items():
        if path.exists() and same(text, path.read_text(encoding="utf-8")):
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        new = path.with_name(f"{path.name}.new")
        new.write_text(text, encoding="utf-8")
        new.replace(path)
        print(f"wrote {path.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    if sys.argv[1:] not in ([], ["--check"]):
        raise SystemExit("reference: scripts/reference.py [--check]")
    raise SystemExit(check() if sys.argv[1:] else write())
