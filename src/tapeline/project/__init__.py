"""The one place that strings the stages together: a docket in, every product out.

The command line, the page and Python callers all go through these functions.
"""

from tapeline.project.date import today
from tapeline.project.drafted import Drafted, draft, draw_garment
from tapeline.project.explain import Explanation, Mover, explain, explainable
from tapeline.project.lay import LayTask, compared, lay_plans, lay_tasks
from tapeline.project.loosening import two_ways
from tapeline.project.products import (
    curve_file,
    cutter_files,
    document,
    drawing,
    exchange_file,
    finished,
    hand_sheet,
    plotter_files,
    print_pdf,
    printed,
    projection,
    report,
)
from tapeline.project.received_file import read_pieces, received_data, received_drawing

__all__ = [
    "Drafted",
    "Explanation",
    "LayTask",
    "Mover",
    "compared",
    "curve_file",
    "cutter_files",
    "document",
    "draft",
    "draw_garment",
    "drawing",
    "exchange_file",
    "explain",
    "explainable",
    "finished",
    "hand_sheet",
    "lay_plans",
    "lay_tasks",
    "plotter_files",
    "print_pdf",
    "printed",
    "projection",
    "read_pieces",
    "received_data",
    "received_drawing",
    "report",
    "today",
    "two_ways",
]
