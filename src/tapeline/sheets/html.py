"""The few pieces of HTML that every part of a page is put together from; whatever is passed in as words is escaped."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

__all__ = ["heading", "paragraph", "part", "table", "words"]


def words(text: str) -> str:
    """Plain words, safe in an element and in a quoted attribute.

    >>> words('Marit & "Co" <3')
    'Marit &amp; &quot;Co&quot; &lt;3'
    """
    return escape("".join(c if c.isprintable() or c in "\t\n" else " " for c in text))


def paragraph(text: str, kind: str = "") -> str:
    """One paragraph of plain words."""
    return f'<p class="{kind}">{words(text)}</p>' if kind else f"<p>{words(text)}</p>"


def heading(text: str, level: int = 3) -> str:
    """A heading inside a part."""
    return f"<h{level}>{words(text)}</h{level}>"


def part(name: str, title: str, *inside: str) -> str:
    """One part of the page, with its heading and a name that can be linked to."""
    body = "\n".join(piece for piece in inside if piece)
    return (
        f'<section id="{words(name)}" aria-labelledby="{words(name)}-title">\n'
        f'<h2 id="{words(name)}-title">{words(title)}</h2>\n{body}\n</section>'
    )


def table(caption: str, head: Sequence[str], rows: Sequence[Sequence[str]], numbers: Sequence[int] = ()) -> str:
    """A table of plain words; the first cell of a row names the row, columns in `numbers` line up on the right.

    A table that is wider than the screen scrolls by itself, also from the keyboard.

    >>> print(table("Seams", ["seam", "cm"], [["side", "41.2"]], numbers=[1]))
    <div class="wide" role="region" aria-label="Seams" tabindex="0"><table><caption>Seams</caption>
    <thead><tr><th scope="col">seam</th><th scope="col" class="number">cm</th></tr></thead>
    <tbody>
    <tr><th scope="row">side</th><td class="number">41.2</td></tr>
    </tbody></table></div>
    """

    def cell(tag: str, column: int, text: str) -> str:
        number = ' class="number"' if column in numbers else ""
        return f"<{tag}{number}>{words(text)}</{tag.split(maxsplit=1)[0]}>"

    top = "".join(cell('th scope="col"', column, text) for column, text in enumerate(head))
    lines = [
        "<tr>"
        + "".join(cell('th scope="row"' if column == 0 else "td", column, text) for column, text in enumerate(row))
        + "</tr>"
        for row in rows
    ]
    region = f'<div class="wide" role="region" aria-label="{words(caption)}" tabindex="0">'
    return "\n".join(
        [
            f"{region}<table><caption>{words(caption)}</caption>",
            f"<thead><tr>{top}</tr></thead>",
            "<tbody>",
            *lines,
            "</tbody></table></div>",
        ]
    )
