"""The one place that strings the stages together: a docket in, every product out.

The command line, the page and Python callers all go through these functions.
"""

from tapeline.project.date import today
from tapeline.project.drafted import Drafted, draft, draw_garment
from tapeline.project.drape_views import drape_data, drape_legend, drape_maps, drape_picture, drape_solid
from tapeline.project.draped import drape_document, drape_findings, drape_garment
from tapeline.project.explain import Explanation, Mover, explain, explainable
from tapeline.project.form import form, form_document, form_glb, form_png
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
from tapeline.project.received_lay import received_tasks
from tapeline.project.run_products import (
    RunFile,
    nested_drawing,
    nested_print,
    nested_projection,
    run_exchange,
    run_file,
    run_report,
)
from tapeline.project.run_tables import chart_csv, grade_csv, run_document, run_tables
from tapeline.project.size_run import RunSize, SizeRun, size_run, standard_sizes, table_sizes, wearers_of

__all__ = [
    "Drafted",
    "Explanation",
    "LayTask",
    "Mover",
    "RunFile",
    "RunSize",
    "SizeRun",
    "chart_csv",
    "compared",
    "curve_file",
    "cutter_files",
    "document",
    "draft",
    "drape_data",
    "drape_document",
    "drape_findings",
    "drape_garment",
    "drape_legend",
    "drape_maps",
    "drape_picture",
    "drape_solid",
    "draw_garment",
    "drawing",
    "exchange_file",
    "explain",
    "explainable",
    "finished",
    "form",
    "form_document",
    "form_glb",
    "form_png",
    "grade_csv",
    "hand_sheet",
    "lay_plans",
    "lay_tasks",
    "nested_drawing",
    "nested_print",
    "nested_projection",
    "plotter_files",
    "print_pdf",
    "printed",
    "projection",
    "read_pieces",
    "received_data",
    "received_drawing",
    "received_tasks",
    "report",
    "run_document",
    "run_exchange",
    "run_file",
    "run_report",
    "run_tables",
    "size_run",
    "standard_sizes",
    "table_sizes",
    "today",
    "two_ways",
    "wearers_of",
]
