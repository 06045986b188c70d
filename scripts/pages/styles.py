"""docs/reference/styles.md: the styles, and every example docket with its picture."""

from __future__ import annotations

from pathlib import Path

from scripts.pages.markdown import NOTICE, table
from tapeline.docket import read_docket
from tapeline.project import draft
from tapeline.styles import STYLES

__all__ = ["EXAMPLES", "page"]

EXAMPLES = tuple(sorted((Path(__file__).resolve().parents[2] / "examples").glob("*.toml")))
"""Each is a docket that can be drafted as it is."""
FIRST = "# "


def page() -> str:
    """What each style is, and how each example looks."""
    lines = [
        NOTICE,
        "# Styles and examples",
        "",
        "A docket names its style with `style` below `[garment]`.",
        "What can be chosen of each stands in [the docket](docket.md).",
        "",
        table(("style", "title", "what it is"), [(s.name, s.title, s.says) for s in STYLES.values()]),
        "Every example drafts and trues as it is; its wearer is invented.",
    ]
    for path in EXAMPLES:
        lines += ["", f"## {path.stem.replace('-', ' ').capitalize()}", "", *_about(path)]
    return "\n".join(lines)


def _about(path: Path) -> list[str]:
    """The remark at the head of a docket, where it is, and its pieces."""
    remarks = [line.removeprefix(FIRST) for line in path.read_text(encoding="utf-8").splitlines()]
    head = remarks[: next(n for n, line in enumerate(remarks) if not line or line.startswith("["))]
    pieces = ", ".join(piece.title.lower() for piece in draft(read_docket(path)).garment.pieces)
    return [
        *head,
        f"[{path.name}](../../examples/{path.name}) drafts: {pieces}.",
        "",
        f"![Pieces of {path.stem.replace('-', ' ')}: {pieces}](../images/style-{path.stem}.svg)",
    ]
