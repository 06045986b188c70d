"""The one place that strings the stages together: a docket in, every product out.

The command line, the page and Python callers all go through these functions.
"""

from tapeline.project.date import today
from tapeline.project.drafted import Drafted, draft, draw_garment
from tapeline.project.explain import Explanation, Mover, explain, explainable
from tapeline.project.products import document, drawing, finished, hand_sheet, print_pdf, printed, report

__all__ = [
    "Drafted",
    "Explanation",
    "Mover",
    "document",
    "draft",
    "draw_garment",
    "drawing",
    "explain",
    "explainable",
    "finished",
    "hand_sheet",
    "print_pdf",
    "printed",
    "report",
    "today",
]
