"""What is made of a drafted garment: finished pieces, print, drawing, JSON, report."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import tapeline
from tapeline.finish import Finished, Title, finish
from tapeline.problems import InputError
from tapeline.project.drafted import Drafted, draw_garment

if TYPE_CHECKING:
    from tapeline.export import Print

__all__ = ["document", "drawing", "finished", "print_pdf", "printed", "report"]


def finished(drafted: Drafted, date: str = "") -> Finished:
    """Allowances, notches, words, cutting list.

    Raises `InputError` when an allowance cannot be cut; its problems stand at their lines of the docket.
    """
    docket = drafted.docket
    title = Title(docket.name, docket.wearer.name, docket.style.name, date, tapeline.__version__)
    try:
        return finish(drafted.garment, docket.finish, title)
    except InputError as error:
        raise InputError(docket.placed(error.problems)) from error


def document(drafted: Drafted) -> dict[str, Any]:
    """Everything as one JSON object; the schema is in `tapeline.export`."""
    from tapeline.export import document as written

    return written(finished(drafted), drafted.truing, drafted.problems, drafted.docket.table, drafted.docket.unit)


def drawing(drafted: Drafted, date: str = "") -> str:
    """The pieces as an SVG drawing, each line with its reason."""
    from tapeline.export import svg

    return svg(finished(drafted, date), drafted.docket.unit)


def printed(drafted: Drafted, paper: str = "", date: str = "") -> Print:
    """The pieces true to scale on paper: the PDF's bytes, how the sheets lie, and what is worth knowing about it.

    `paper` is a paper's name or a roll; empty for the docket's own.
    """
    from tapeline.export import paper as paper_of
    from tapeline.export import printed as print_it

    return print_it(finished(drafted, date), paper_of(paper or drafted.docket.paper), drafted.docket.unit)


def print_pdf(drafted: Drafted, paper: str = "", date: str = "") -> bytes:
    """The bytes of `printed`."""
    return printed(drafted, paper, date).data


def report(drafted: Drafted, date: str = "") -> str:
    """One page to read: pieces, findings, girths, seams, tapes, both frames, cutting list, the construction."""
    from tapeline.sheets import report as page

    docket = drafted.docket
    return page(
        finished(drafted, date),
        drafted.truing,
        docket.wearer,
        drafted.problems,
        drawing(drafted, date),
        cloth=docket.cloth,
        surveyed=docket.surveyed,
        other_frame=_other_frame(drafted),
        unit=docket.unit,
    )


def _other_frame(drafted: Drafted) -> dict[str, float] | None:
    """Sizes in mm that the other frame gives the same wearer; None where there is no other, or it cannot be drawn."""
    docket = drafted.docket
    if not docket.wearer.figure.has_survey:
        return None
    try:
        garment, _ = draw_garment(replace(docket, surveyed=not docket.surveyed))
    except InputError:
        return None
    return {size.name: size.length.mm for size in garment.sizes}
