"""Allowances, notches, words and the cutting list."""
