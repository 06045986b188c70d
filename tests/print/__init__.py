"""Tests of the print, read back as pictures."""
