"""Tests of allowances, notches, words and the cutting list."""
