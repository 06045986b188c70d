"""What is made of a drafted garment: finished pieces, print, drawing, JSON, report."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import tapeline
from tapeline.finish import Finished, Title, finish
from tapeline.problems import InputError, Problem, Severity
from tapeline.project.drafted import Drafted, draw_garment
from tapeline.project.loosening import two_ways

if TYPE_CHECKING:
    from tapeline.alter import TwoWays
    from tapeline.export import CutDrawing, Exchanged, Plot, Print, Projection, Written

__all__ = [
    "curve_file",
    "cutter_files",
    "document",
    "drawing",
    "exchange_file",
    "finished",
    "hand_sheet",
    "plotter_files",
    "print_pdf",
    "printed",
    "projection",
    "report",
]


USUAL_ROLL = "roll 914 mm"
"""A usual width of plotter rolls (from memory)."""


def finished(drafted: Drafted, date: str = "") -> Finished:
    """Allowances, notches, words, cutting list.

    Raises `InputError` when an allowance cannot be cut; its problems stand at their lines of the docket.
    """
    docket = drafted.docket
    try:
        return finish(drafted.garment, docket.finish, _title(drafted, date))
    except InputError as error:
        raise InputError(docket.placed(error.problems)) from error


def _title(drafted: Drafted, date: str) -> Title:
    docket = drafted.docket
    return Title(docket.name, docket.wearer.name, docket.style.name, date, tapeline.__version__)


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


def exchange_file(drafted: Drafted, date: str = "", release: str = "R12") -> Exchanged:
    """The pieces as DXF by the open layer convention of garment patterns; `release` is `R12` or `R2000`."""
    from tapeline.export import Release, exchange

    return exchange([finished(drafted, date)], drafted.docket.unit, Release(release))


def curve_file(drafted: Drafted) -> bytes:
    """The lines as DXF with true curves, for general drawing programs."""
    from tapeline.export import curves

    return curves(finished(drafted), drafted.docket.unit)


def cutter_files(drafted: Drafted, bed_mm: float = 1400.0) -> tuple[CutDrawing, ...]:
    """The pieces as SVG for a cutter: a drawing for each cloth, a colour for each tool of the docket.

    Raises:
        InputError: a piece does not fit the bed.
    """
    from tapeline.export import cutter_drawings

    return cutter_drawings(finished(drafted), drafted.docket.tools, bed_mm)


def plotter_files(drafted: Drafted, roll: str = "", *, narrow: bool = False, second: bool = False) -> Plot:
    """The pieces on a roll as HP-GL or HP-GL/2.

    Args:
        drafted: What was drafted.
        roll: `roll 914 mm`, `roll 36 in`; empty for the docket's paper, where that is a roll, or `USUAL_ROLL`.
        narrow: For plotters that hold 16 bits: several files, each for a part of the roll.
        second: As HP-GL/2, for current plotters.

    Raises:
        InputError: no such roll, or the pieces do not fit it.
    """
    from tapeline.export import paper, plotted

    on = paper(roll or drafted.docket.paper)
    return plotted(finished(drafted), on if roll or on.is_roll else paper(USUAL_ROLL), narrow=narrow, second=second)


def projection(drafted: Drafted, look: Projection | None = None, date: str = "") -> Print:
    """All pieces at true size on one page, for a projector; `look` is its width, line and colours."""
    from tapeline.export import projected

    return projected(finished(drafted, date), look, drafted.docket.unit)


def hand_sheet(drafted: Drafted, date: str = "", *, scale: float | None = None, blank: bool = False) -> Written:
    """The construction to draw along on paper, as PDF on A4 (Letter where the docket prints on it).

    Where the docket makes the block looser a page at the end shows that in its two ways, over each other.

    Args:
        drafted: What was drafted.
        date: Written at the top of every page.
        scale: How many times smaller than the pattern the drawings are; None for 4, or more where 4 does not fit.
        blank: For a class: formulas with empty boxes, and nothing of the wearer.

    Raises:
        InputError: `drawing-too-large` when a drawing at that scale does not fit on the paper.
    """
    from tapeline.export import letters_width, paper, written
    from tapeline.sheets import hand_sheet as laid_out

    docket, title = drafted.docket, _title(drafted, date)
    on = paper("Letter" if docket.paper.casefold() == "letter" else "A4")
    size = (on.width_mm, on.height_mm or on.width_mm)
    ways, notes = _ways(drafted)
    made = laid_out(
        drafted.garment, title, letters_width, unit=docket.unit, scale=scale, blank=blank, ways=ways, paper_mm=size
    )
    subject = f"{title.style}, class sheet" if blank else f"{title.style} for {title.wearer}, hand sheet"
    file = written(made.pages, made.paper_mm, title, subject)
    return replace(file, problems=(*file.problems, *notes))


def _ways(drafted: Drafted) -> tuple[tuple[TwoWays, ...], list[Problem]]:
    """The looseness in its two ways; or why it is not shown."""
    try:
        return two_ways(drafted.docket), []
    except InputError as error:
        says = "this looseness is not shown in its two ways: " + error.problems[0].says
        hint = "the construction is whole; the page at its end is left out"
        return (), [Problem("looseness-not-spread", Severity.NOTE, says, "garment.looseness", hint)]


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
