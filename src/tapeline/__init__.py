"""Tapeline: from a tape measure to a cut line."""

__version__ = "0.1.0"
