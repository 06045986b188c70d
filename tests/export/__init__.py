"""Tests of the drawing, the data, papers and files."""
