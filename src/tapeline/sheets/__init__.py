"""Sheets to read: the report page of a garment, and the hand sheet to draw along."""

from tapeline.sheets.hand_sheet import HandSheet, hand_sheet
from tapeline.sheets.report import report

__all__ = ["HandSheet", "hand_sheet", "report"]
