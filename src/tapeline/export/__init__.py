"""One file for each thing a finished garment is written to: print, drawing, data."""

from tapeline.export.curves import curves
from tapeline.export.cutter import CutDrawing, cutter_drawings
from tapeline.export.dxf import Release
from tapeline.export.exchange import Exchanged, exchange
from tapeline.export.json import document, schema, text
from tapeline.export.lay_picture import lay_picture, lay_table
from tapeline.export.paper import Paper, paper
from tapeline.export.pdf import Print, pdf, printed
from tapeline.export.plotter import Plot, plotted
from tapeline.export.projector import Projection, projected
from tapeline.export.received_picture import received_picture
from tapeline.export.svg import svg
from tapeline.export.write import write_all, write_whole
from tapeline.export.written import Written, letters_width, written

__all__ = [
    "CutDrawing",
    "Exchanged",
    "Paper",
    "Plot",
    "Print",
    "Projection",
    "Release",
    "Written",
    "curves",
    "cutter_drawings",
    "document",
    "exchange",
    "lay_picture",
    "lay_table",
    "letters_width",
    "paper",
    "pdf",
    "plotted",
    "printed",
    "projected",
    "received_picture",
    "schema",
    "svg",
    "text",
    "write_all",
    "write_whole",
    "written",
]
