"""Whole drafts as text: what changes in them is seen line by line."""
