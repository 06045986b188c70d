"""The report: one page with everything there is to read about a drafted garment.

The page stands alone: no script, no outside request, so it can be sent on, kept with the pattern, and printed.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files

from tapeline.finish import Finished
from tapeline.measures import Wearer
from tapeline.pattern import Cloth
from tapeline.problems import Problem
from tapeline.sheets.construction import construction
from tapeline.sheets.cutting import cautions, cutting
from tapeline.sheets.drawing import drawing
from tapeline.sheets.findings import findings
from tapeline.sheets.girths import girths
from tapeline.sheets.html import words
from tapeline.sheets.seams import seams
from tapeline.sheets.sizes import FRAMES, sizes
from tapeline.sheets.tapes import tapes
from tapeline.sheets.title import headline, title_block
from tapeline.sheets.wearing import wearing
from tapeline.truing import Truing
from tapeline.units import Unit

__all__ = ["POLICY", "report", "style"]

POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
"""What a browser may fetch for the page: nothing."""
_PARTS = {
    "pieces": "Pieces",
    "findings": "Findings",
    "girths": "Round the body",
    "wearing": "Putting it on",
    "seams": "Seams",
    "tapes": "Tapes",
    "sizes": "Sizes",
    "cutting": "Cutting list",
    "cautions": "Cautions",
    "construction": "Construction",
}


def report(
    finished: Finished,
    truing: Truing,
    wearer: Wearer,
    problems: Sequence[Problem],
    svg: str,
    *,
    cloth: Cloth,
    surveyed: bool,
    other_frame: Mapping[str, float] | None = None,
    unit: Unit = Unit.CM,
) -> str:
    """The page as HTML.

    Args:
        finished: The garment with its allowances, its title and its cutting list.
        truing: What was measured on it.
        wearer: Whose tapes it was drafted from.
        problems: Everything found, about tapes and garment; shown worst first.
        svg: The drawing of the pieces, as the export writes it.
        cloth: What the docket says it is cut from.
        surveyed: Whether the frame follows the survey or the rule.
        other_frame: Sizes in mm by name that the other frame would have given; None where there is none.
        unit: In which lengths are shown.
    """
    garment = finished.garment
    made = {
        "pieces": drawing(svg),
        "findings": findings(problems),
        "girths": girths(truing.girths, wearer, unit),
        "wearing": wearing(truing, unit),
        "seams": seams(truing, unit),
        "tapes": tapes(wearer),
        "sizes": sizes(garment, other_frame, unit, surveyed=surveyed),
        "cutting": cutting(finished, unit),
        "cautions": cautions(),
        "construction": construction(garment.steps, unit),
    }
    links = "".join(f'<li><a href="#{name}">{_PARTS[name]}</a></li>' for name, text in made.items() if text)
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{words(headline(finished.title))}</title>",
            '<link rel="icon" href="data:,">',
            f"<style>{style()}</style>",
            "</head>",
            "<body>",
            title_block(finished.title, problems, FRAMES[surveyed], cloth, unit),
            f'<nav aria-label="Parts of this page"><ul>{links}</ul></nav>',
            "<main>",
            *(text for text in made.values() if text),
            "</main>",
            "</body>",
            "</html>",
            "",
        ]
    )


@cache
def style() -> str:
    """The style sheet of the pages."""
    return files("tapeline.sheets").joinpath("report.css").read_text(encoding="utf-8")
