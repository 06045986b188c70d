"""One file for each thing a finished garment is written to: print, drawing, data."""

from tapeline.export.curves import curves
from tapeline.export.cutter import CutDrawing, cutter_drawings
from tapeline.export.dxf import Release
from tapeline.export.exchange import Exchanged, exchange
from tapeline.export.json import document, schema, text
from tapeline.export.lay_files import LayFile, lay_dxf, lay_pdf, lay_plot
from tapeline.export.lay_picture import lay_picture, lay_table
from tapeline.export.nest import Nest, nest
from tapeline.export.nest_print import nest_printed, nest_projected
from tapeline.export.nest_svg import nest_svg
from tapeline.export.paper import Paper, paper
from tapeline.export.pdf import Print, pdf, printed
from tapeline.export.plotter import Plot, plotted
from tapeline.export.projector import Projection, projected
from tapeline.export.received_picture import received_picture
from tapeline.export.run_pages import RunTable
from tapeline.export.size_line import MOST_SIZES
from tapeline.export.svg import svg
from tapeline.export.write import writable, write_all, write_whole
from tapeline.export.written import Written, letters_width, written

__all__ = [
    "MOST_SIZES",
    "CutDrawing",
    "Exchanged",
    "LayFile",
    "Nest",
    "Paper",
    "Plot",
    "Print",
    "Projection",
    "Release",
    "RunTable",
    "Written",
    "curves",
    "cutter_drawings",
    "document",
    "exchange",
    "lay_dxf",
    "lay_pdf",
    "lay_picture",
    "lay_plot",
    "lay_table",
    "letters_width",
    "nest",
    "nest_printed",
    "nest_projected",
    "nest_svg",
    "paper",
    "pdf",
    "plotted",
    "printed",
    "projected",
    "received_picture",
    "schema",
    "svg",
    "text",
    "writable",
    "write_all",
    "write_whole",
    "written",
]
