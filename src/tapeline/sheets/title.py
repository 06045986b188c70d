"""The top of the report: what was drafted for whom, and whether it may be cut."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.finish import Title
from tapeline.pattern import Cloth
from tapeline.problems import Problem, Severity
from tapeline.sheets.html import words
from tapeline.units import Unit

__all__ = ["headline", "title_block", "verdict"]


def headline(title: Title) -> str:
    """What the page is called."""
    return f"{title.style.capitalize()} for {title.wearer}"


def verdict(problems: Sequence[Problem]) -> tuple[str, str]:
    """A word for how things stand, and a sentence that says so.

    >>> verdict([])
    ('note', 'Nothing was found against cutting.')
    """
    errors, doubts = (sum(p.severity is s for p in problems) for s in (Severity.ERROR, Severity.DOUBT))
    if errors:
        return "error", f"Do not cut yet: {_count(errors, 'error')} to mend" + (
            f", and {_count(doubts, 'doubt')} to look at." if doubts else "."
        )
    if doubts:
        return "doubt", f"Look again before cutting: {_count(doubts, 'doubt')}."
    return "note", "Nothing was found against cutting."


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def title_block(title: Title, problems: Sequence[Problem], frame: str, cloth: Cloth, unit: Unit) -> str:
    """Heading, the docket's own data, the verdict."""
    stretch = f"{cloth.kind}, stretches {cloth.stretch_across:g} % across"
    rows = {
        "Docket": title.docket,
        "Wearer": title.wearer,
        "Style": title.style,
        "Frame": frame,
        "Cloth": stretch,
        "Lengths in": "centimetres" if unit is Unit.CM else "inches",
        "Date": title.date,
        "Drafted by": f"Tapeline {title.version}",
    }
    block = "\n".join(f"<div><dt>{words(k)}</dt><dd>{words(v)}</dd></div>" for k, v in rows.items() if v)
    kind, says = verdict(problems)
    return (
        f"<header>\n<h1>{words(headline(title))}</h1>\n"
        f'<p class="verdict {kind}">{words(says)}</p>\n<dl class="title-block">\n{block}\n</dl>\n</header>'
    )
