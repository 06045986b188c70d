"""docs/reference/problems.md: every code that the program uses, with what it means and what to do.

The codes are found in the sources; the sentences stand in problems.toml beside this file. A code without sentences, or
sentences without a code, stop the page from being made.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

from scripts.pages.markdown import NOTICE

__all__ = ["codes", "page", "sentences"]

ROOT = Path(__file__).resolve().parents[2]
CODE = re.compile(r"[a-z]+(-[a-z]+)+")
NO_CODES = frozenset(
    {
        *("cut-line", "fold-ground", "fold-line", "grain-line", "mark-line", "seam-line", "sew-line"),
        "cut-out",
        *("drawing-title", "drawing-words", "title-block"),
        *("by-cloth", "light-knit", "heavy-knit", "light-woven", "heavy-woven"),
        "cut-in-one",
        "high-low",
        "one-piece",
        "size-run",
        *("three-quarter", "two-panel", "three-panel"),
        *("by-garment", "face-to-face", "one-way", "two-way"),
    }
)
"""Words of the same shape that name something else: lines, parts of a page and of garments, ways of cloth, commands."""


def codes() -> set[str]:
    """Every problem code in the sources."""
    return set(_words()) - NO_CODES


def _words() -> Iterator[str]:
    sources = ROOT / "src" / "tapeline"
    for path in sorted(sources.rglob("*.py")):
        if path.is_relative_to(sources / "web"):
            continue  # the page shows problems and makes none; its words of that shape are the web's
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and CODE.fullmatch(node.value):
                yield node.value


def sentences() -> dict[str, dict[str, str]]:
    """By code: what it means, and what to do."""
    table: dict[str, dict[str, str]] = tomllib.loads(
        Path(__file__).with_name("problems.toml").read_text(encoding="utf-8")
    )
    return table


def page() -> str:
    """The page."""
    said, used = sentences(), codes()
    if missing := sorted(used - said.keys()):
        raise SystemExit(f"reference: scripts/pages/problems.toml says nothing about {', '.join(missing)}")
    if left := sorted(said.keys() - used):
        raise SystemExit(f"reference: scripts/pages/problems.toml speaks of codes that nothing uses: {', '.join(left)}")
    entries = [f"## {code}\n\n{said[code]['means']}\n{said[code]['do']}\n" for code in sorted(used)]
    return "\n".join(
        [
            NOTICE,
            "# Problems\n",
            (
                "Every finding has a code, in square brackets at the end of its first line.\n"
                "An error stops: nothing is drafted, or the garment may not be cut.\n"
                "A doubt asks to look again before cutting.\n"
                "A note is worth knowing.\n"
                'Some may be let pass by name, at the top of the docket: `allow = ["tape-unlikely:waist"]`.\n'
            ),
            *entries,
        ]
    )
