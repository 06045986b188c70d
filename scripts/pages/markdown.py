"""Small pieces of Markdown."""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["NOTICE", "entry_name", "table"]

NOTICE = "<!-- Made by scripts/reference.py; changes belong there, or in the program. -->\n"


def table(head: Sequence[str], rows: Sequence[Sequence[str]], numbers: Sequence[int] = ()) -> str:
    """A table; columns in `numbers` line up on the right."""
    rule = ["---:" if column in numbers else "---" for column in range(len(head))]
    lines = [head, rule, *rows]
    return "\n".join("| " + " | ".join(cell.replace("|", "\\|") for cell in line) + " |" for line in lines) + "\n"


def entry_name(heading: str) -> str:
    """How a heading is linked to: `tape-doubt` for `## tape-doubt`.

    >>> entry_name("`tapeline new`")
    'tapeline-new'
    """
    kept = "".join(letter for letter in heading.lower() if letter.isalnum() or letter in " -_")
    return kept.replace(" ", "-")
