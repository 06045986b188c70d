"""Runs of sizes, their chart, their grade table and their steps."""
