"""Pieces from other programs."""
