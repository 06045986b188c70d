"""One file for each thing a finished garment is written to: print, drawing, data."""

from tapeline.export.json import document, schema, text
from tapeline.export.paper import Paper, paper
from tapeline.export.pdf import Print, pdf, printed
from tapeline.export.svg import svg
from tapeline.export.write import write_all, write_whole
from tapeline.export.written import Written, letters_width, written

__all__ = [
    "Paper",
    "Print",
    "Written",
    "document",
    "letters_width",
    "paper",
    "pdf",
    "printed",
    "schema",
    "svg",
    "text",
    "write_all",
    "write_whole",
    "written",
]
