"""Tests of the project: docket in, products out."""
