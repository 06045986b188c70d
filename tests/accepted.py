"""Texts that are compared with accepted ones; a change is looked at, and accepted with TAPELINE_ACCEPT=1."""

from __future__ import annotations

import difflib
import os
from pathlib import Path

import pytest

__all__ = ["compare"]

MOST_LINES = 120


def compare(path: Path, text: str) -> None:
    """Fail with the difference where a text is not the accepted one; with TAPELINE_ACCEPT=1 accept it.

    With TAPELINE_NEW=FOLDER the text is written there instead, for `scripts/golden_report.py` to look at.
    """
    if folder := os.environ.get("TAPELINE_NEW"):
        (Path(folder) / path.name).write_text(text, encoding="utf-8")
        return
    if os.environ.get("TAPELINE_ACCEPT") == "1":
        new = path.with_suffix(".new")
        new.write_text(text, encoding="utf-8")
        new.replace(path)
        return
    before = path.read_text(encoding="utf-8") if path.exists() else ""
    if text != before:
        lines = list(difflib.unified_diff(before.splitlines(), text.splitlines(), "accepted", "now", n=1, lineterm=""))
        more = f"\n... and {len(lines) - MOST_LINES} lines more" if len(lines) > MOST_LINES else ""
        shown = "\n".join(lines[:MOST_LINES])
        pytest.fail(f"{path.name} has changed; if it should, run with TAPELINE_ACCEPT=1\n{shown}{more}", pytrace=False)
