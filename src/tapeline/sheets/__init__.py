"""Sheets to read: the report page of a garment, that of a run of sizes, and the hand sheet to draw along."""

from tapeline.sheets.hand_sheet import HandSheet, hand_sheet
from tapeline.sheets.report import report
from tapeline.sheets.run_page import run_page

__all__ = ["HandSheet", "hand_sheet", "report", "run_page"]
