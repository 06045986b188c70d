"""Tapes, the survey, doubts and sizes."""
