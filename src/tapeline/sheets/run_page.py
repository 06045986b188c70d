"""The report of a run of sizes: one page with the nest, what was found, and every table."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Protocol

from tapeline.finish import Title
from tapeline.problems import Problem
from tapeline.sheets.cutting import cautions
from tapeline.sheets.findings import findings
from tapeline.sheets.html import paragraph, part, table, words
from tapeline.sheets.report import POLICY, style
from tapeline.sheets.title import verdict

__all__ = ["run_page"]

NEST = "The sizes on each other"
_PROLOGUE = re.compile(r"\s*<\?xml[^>]*\?>\s*")


class _Table(Protocol):
    @property
    def title(self) -> str: ...
    @property
    def says(self) -> tuple[str, ...]: ...
    @property
    def head(self) -> tuple[str, ...]: ...
    @property
    def rows(self) -> tuple[tuple[str, ...], ...]: ...
    @property
    def left(self) -> int: ...


def run_page(title: Title, whom: str, tables: Sequence[_Table], problems: Sequence[Problem], svg: str) -> str:
    """The page as HTML; it stands alone, without script or outside request.

    Args:
        title: Docket, style, date and version; its wearer is not shown.
        whom: `sizes 84 to 100`, or names.
        tables: Each becomes a part.
        problems: Everything found, each saying which sizes it is about.
        svg: The nested drawing; empty where there are too many sizes for one.
    """
    parts = {"nest": (NEST, _nest(svg))}
    parts["findings"] = ("Findings", findings(problems))
    for number, one in enumerate(tables, 1):
        inside = [paragraph(said) for said in one.says]
        if one.rows:
            inside.append(table(one.title, one.head, one.rows, numbers=range(one.left, len(one.head))))
        parts[f"table-{number}"] = (one.title, part(f"table-{number}", one.title, *inside))
    parts["cautions"] = ("Cautions", cautions())
    links = "".join(f'<li><a href="#{name}">{words(said)}</a></li>' for name, (said, _) in parts.items())
    headline = f"{title.style.capitalize()}, {whom}"
    kind, says = verdict(problems)
    rows = {"Docket": title.docket, "For": whom, "Date": title.date, "Drafted by": f"Tapeline {title.version}"}
    block = "\n".join(f"<div><dt>{words(k)}</dt><dd>{words(v)}</dd></div>" for k, v in rows.items() if v)
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{words(headline)}</title>",
            '<link rel="icon" href="data:,">',
            f"<style>{style()}</style>",
            "</head>",
            "<body>",
            f'<header>\n<h1>{words(headline)}</h1>\n<p class="verdict {kind}">{words(says)}</p>',
            f'<dl class="title-block">\n{block}\n</dl>\n</header>',
            f'<nav aria-label="Parts of this page"><ul>{links}</ul></nav>',
            "<main>",
            *(text for _, text in parts.values()),
            "</main>",
            "</body>",
            "</html>",
            "",
        ]
    )


def _nest(svg: str) -> str:
    if not svg:
        says = "There are more sizes than kinds of lines to tell them apart, so they are not drawn on each other."
        return part("nest", NEST, paragraph(says))
    inside = _PROLOGUE.sub("", svg, count=1)
    return part(
        "nest",
        NEST,
        f'<div class="nest" role="region" aria-label="{NEST}" tabindex="0">{inside}</div>',
        paragraph("Cut lines; each size is drafted from its own tapes.", "legend"),
    )
