"""Sheets to read: the report page of a garment."""

from tapeline.sheets.report import report

__all__ = ["report"]
