"""Tests of the lay plan."""
