"""What is made of a drafted garment: finished pieces, print, drawing, JSON, report."""

from __future__ import annotations

from typing import Any

import tapeline
from tapeline.finish import Finished, Title, finish
from tapeline.project.drafted import Drafted

__all__ = ["document", "drawing", "finished", "print_pdf", "report"]


def finished(drafted: Drafted, date: str = "") -> Finished:
    """Allowances, notches, words, cutting list."""
    docket = drafted.docket
    title = Title(docket.name, docket.wearer.name, docket.style.name, date, tapeline.__version__)
    return finish(drafted.garment, docket.finish, title)


def document(drafted: Drafted) -> dict[str, Any]:
    """Everything as one JSON object; the schema is in `tapeline.export`."""
    from tapeline.export import document as written

    return written(finished(drafted), drafted.truing, drafted.problems, drafted.docket.table)


def drawing(drafted: Drafted, date: str = "") -> str:
    """The pieces as an SVG drawing, each line with its reason."""
    from tapeline.export import svg

    return svg(finished(drafted, date), drafted.docket.unit)


def print_pdf(drafted: Drafted, paper: str = "", date: str = "") -> bytes:
    """The pieces true to scale on paper, as PDF."""
    from tapeline.export import paper as paper_of
    from tapeline.export import pdf

    return pdf(finished(drafted, date), paper_of(paper or drafted.docket.paper), drafted.docket.unit)


def report(drafted: Drafted, date: str = "") -> str:
    """One page to read: pieces, girths, seams, findings, cutting list, the construction."""
    from tapeline.sheets import report as page

    return page(drafted, finished(drafted, date))
